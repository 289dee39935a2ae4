#pragma once

#include "planner/plan.h"
#include "planner/route/alternatives.h"

#include <vector>

namespace tumpline::planner {

[[nodiscard]] WayFigures way_figures(const Plan& plan);

/// Plans the trip by each of the other routes, by no more than `most_plans` of them; what is left
/// says so.
[[nodiscard]] OtherWays
other_ways(const Plan& plan, const std::vector<OtherRoute>& others, int most_plans);

} // namespace tumpline::planner
