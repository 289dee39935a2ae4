#pragma once

#include "geo/tracks/track.h"

#include <filesystem>
#include <string>
#include <string_view>

namespace tumpline::geo {

/// Reads GPX 1.0 or 1.1 as a stream: tracks, routes, waypoints, with names, types, heights, times.
/// Elements are known by their local names, whatever the namespace is called; those of foreign
/// prefixes and everything inside `extensions` are passed over.
/// Throws: InputError with the line. Entity declarations are refused; depth, the size of one tag
/// and the number of points are bounded (docs/tracks.md).
[[nodiscard]] TrackFile read_gpx(const std::filesystem::path& file);

/// The same for a text in memory; `name` stands for the file in messages.
[[nodiscard]] TrackFile read_gpx_text(std::string_view text, const std::string& name);

} // namespace tumpline::geo
