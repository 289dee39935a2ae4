#pragma once

#include "geo/tracks/track.h"

#include <filesystem>

namespace tumpline::geo {

/// Reads the lines and points of a GeoJSON file, or of one in another format of tracks of
/// gate/gdal_formats.h; coordinates are brought to WGS84.
/// Lines with several parts stay together. Names come from the attribute "name" or "title", types
/// from "type" or "travel". Heights of GeoJSON stand above the ellipsoid [RFC7946] and are made
/// heights above the geoid where PROJ's grid is at hand; other formats' are taken as they are.
/// Throws: InputError.
[[nodiscard]] TrackFile read_vector_file(const std::filesystem::path& file);

} // namespace tumpline::geo
