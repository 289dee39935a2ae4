#pragma once

#include "planner/solution/fixed_point.h"

namespace tumpline::planner {

/// How many times a trip may be planned anew for one question beside the plan: `most` times a trip
/// of usual size, fewer the larger it is, twice the largest. By size and not by the clock, so that
/// every machine answers the same.
[[nodiscard]] int plans_to_spend(const Prepared& prepared, int most);

inline constexpr int most_remedy_plans = 12; ///< for each remedy
inline constexpr int most_other_ways = 60;

} // namespace tumpline::planner
