#pragma once

#include "planner/models/model_entry.h"

#include <span>
#include <string_view>

/// How climb is read from heights that are wrong. The functions are those of
/// geo/profiles/height_cleaning.h, which know nothing of trips; here is what people should know of
/// them. Covers: summits 500 m and more apart (1 km by a receiver's heights), errors of 1.5 to 5 m.
/// Known bias: shorter ground is lost, and errors that drift over hundreds of metres are counted, 3
/// m/km for a receiver's of 5 m (docs/models/elevation.md).
namespace tumpline::planner {

/// The family's name.
inline constexpr std::string_view elevation_family = "elevation";

inline constexpr std::string_view raster_swings = "raster-swings";
inline constexpr std::string_view receiver_swings = "receiver-swings";
inline constexpr std::string_view barometer_swings = "barometer-swings";
inline constexpr std::string_view lake_median = "lake-median";
inline constexpr std::string_view river_fall = "river-fall";

[[nodiscard]] std::span<const ModelEntry> elevation_entries();

} // namespace tumpline::planner
