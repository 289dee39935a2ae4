#pragma once

#include "geo/tracks/track.h"

#include <filesystem>

namespace tumpline::geo {

/// Reads GPX 1.0 and 1.1 (tracks, routes, waypoints), GeoJSON, and the other formats of tracks of
/// gate/gdal_formats.h, in any CRS that PROJ knows; repairs each track (see Repairs).
/// Throws: InputError with file and line where the file cannot be used or holds no line and no
/// point; bounded in time and memory on hostile files.
[[nodiscard]] TrackFile read_tracks(const std::filesystem::path& file);

} // namespace tumpline::geo
