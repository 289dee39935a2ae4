#pragma once

#include "planner/models/model_entry.h"

#include <optional>
#include <span>
#include <string_view>

/// Cold air in wind, and cold water.
namespace tumpline::planner {

struct ColdWind {
    double air_c;
    double wind_mps; ///< at 10 m
};

/// Index of wind chill: 13.12 + 0.6215 T - 11.37 V^0.16 + 0.3965 T V^0.16, V in km/h; the air's own
/// temperature below 4.8 km/h and where the index would be above it. Source: [WindChill2001].
/// Covers: air of 10 C and colder, dry skin of a face, walking pace. Known bias: wet skin freezes
/// sooner; says nothing of things or water.
[[nodiscard]] double wind_chill(const ColdWind& cold);

/// Minutes after which bare skin may freeze.
struct Frostbite {
    double from_min;
    double to_min;
};

/// Empty where the printed bands speak of a low risk (above -27.5). Source: [FrostbiteBands].
[[nodiscard]] std::optional<Frostbite> frostbite_in(double chill);

/// From this index on frostbite is a risk at all, a low one. Source: [FrostbiteBands].
inline constexpr double least_chill = -9.5;

/// What water of a temperature does to whoever falls in; empty from 25 C on. Source: [CWSafety].
[[nodiscard]] std::optional<std::string_view> cold_water_stage(double water_c);

[[nodiscard]] std::span<const ModelEntry> cold_entries();

} // namespace tumpline::planner
