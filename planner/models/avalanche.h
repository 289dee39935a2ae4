#pragma once

/// Ground on which avalanches start, and how far they reach.
namespace tumpline::planner {

/// Of more than a thousand avalanches 96 in a hundred were released where the steepest ground had
/// between 30 and 50 degrees. Source: [AvalancheOrgSlope].
inline constexpr double least_release_deg = 30.0;
inline constexpr double most_release_deg = 50.0;

[[nodiscard]] constexpr bool may_release(double slope_deg) {
    return slope_deg >= least_release_deg && slope_deg <= most_release_deg;
}

/// The least angle of reach (from the end of the run-out up to where the snow broke) of those
/// printed for ranges of the United States, 19 to 25 degrees: the furthest runs.
/// Source: [AvalancheReach], at second hand. Elsewhere single avalanches have run further.
inline constexpr double least_reach_deg = 19.0;

/// How far below and away a place lies from steep ground, along the ground's plan.
struct BelowGround {
    double away_m;
    double below_m;
};

/// Whether an avalanche from there may reach the place by the angle alone.
[[nodiscard]] bool may_reach(const BelowGround& place);

} // namespace tumpline::planner
