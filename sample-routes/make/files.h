#pragma once

#include "sample-routes/make/ground.h"
#include "sample-routes/make/lay_out.h"

#include <filesystem>
#include <string>

namespace tumpline::samples {

/// GPX 1.1: the waypoints, then one track per line.
void write_gpx(const std::filesystem::path& file, const std::string& title, const Layout& layout);

/// GeoJSON: a point per waypoint, then a line per leg, with `name` and `type`.
void write_geojson(const std::filesystem::path& file, const Layout& layout);

/// GeoTIFF of whole metres above the geoid in WGS84 longitude and latitude.
/// Throws: std::runtime_error if the file cannot be written.
void write_geotiff(const std::filesystem::path& file, const Raster& raster);

} // namespace tumpline::samples
