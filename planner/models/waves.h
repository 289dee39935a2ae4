#pragma once

#include "planner/models/model_entry.h"

#include <span>

/// Waves that a steady wind raises on open water.
namespace tumpline::planner {

/// A mean wind 10 m above the water, and the open water to windward of a point.
struct WindOverFetch {
    double wind_mps;
    double fetch_m;
};

struct Waves {
    double height_m; ///< significant: the mean of the highest third
    double period_s; ///< of the peak
};

/// Hm0 = (u*^2/g) min(0.0413 X^(1/2), 211.5), Tp = (u*/g) min(0.651 X^(1/3), 239.8), where
/// X = g F/u*^2, u*^2 = CD U^2, CD = 0.001 (1.1 + 0.035 U). No waves without wind or fetch.
/// Source: [CEM2015].
/// Covers: mean winds of 3 to 25 m/s, deep water (half a wave's length), straight-line fetch.
/// Known bias: 15 to 25 % either way, more in gusts, near shores and in narrows; too high in
/// shallow water and where the wind has not blown for `waves_grow_s` yet.
[[nodiscard]] Waves waves_of(const WindOverFetch& over);

/// How long the wind must have blown for these waves, seconds: 77.23 F^0.67 / (U^0.34 g^0.33).
/// Source: [CEM2015].
[[nodiscard]] double waves_grow_s(const WindOverFetch& over);

/// What we plan by in open and inflatable boats; this project's own, no printed limit was found:
/// below this the shore is hugged, from the second on nobody crosses.
inline constexpr double steep_waves_m = 0.3;
inline constexpr double most_waves_m = 0.5;

[[nodiscard]] std::span<const ModelEntry> waves_entries();

} // namespace tumpline::planner
