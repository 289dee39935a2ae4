#pragma once

#include "planner/models/model_entry.h"

#include <optional>
#include <span>
#include <string_view>

/// The Beaufort scale, and the wind at a paddler's height.
namespace tumpline::planner {

struct BeaufortForce {
    int force;
    double from_mps;
    std::optional<double> to_mps; ///< empty for force 12
    int from_kn;
    std::optional<int> to_kn;
    std::string_view name;
    std::string_view water; ///< what one sees on open water
};

/// Forces 0 to 12. Source: [WMOBeaufort].
[[nodiscard]] std::span<const BeaufortForce> beaufort_scale();

/// Force of a mean wind at 10 m. The scale is printed to 0.1 m/s and is read so.
/// Covers: any wind; below 0 counts as calm. Known bias: says nothing of gusts, which are often
/// half as strong again, nor of the waves that fetch and shoals make.
[[nodiscard]] int beaufort(double wind_mps);

/// "gentle breeze" and the like, for a force from 0 to 12 (others are held to that range).
[[nodiscard]] std::string_view beaufort_name(int force);

/// 0.836 B^1.5: the middle of a force. From memory.
[[nodiscard]] double beaufort_middle_mps(int force);

/// u(z) / u(10 m) over open water by the neutral logarithmic profile with a roughness of 0.2 mm;
/// 0 at or below that height. From memory.
[[nodiscard]] double wind_height_factor(double height_m);

/// What wind at 10 m means for an open crossing, beside a ceiling of the craft or party.
enum class CrossingWind {
    below,  ///< well below the ceiling
    nearly, ///< within a quarter of it: gusts pass it
    above,  ///< wait, follow the shore, or carry
};
[[nodiscard]] CrossingWind crossing_wind(double wind_mps, double ceiling_mps);

[[nodiscard]] std::span<const ModelEntry> wind_entries();

} // namespace tumpline::planner
