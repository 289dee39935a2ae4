#pragma once

#include "planner/plan.h"
#include "planner/results/assembly.h"

#include <vector>

namespace tumpline::planner {

/// In the order in which they come up; a place that is passed twice stands twice.
[[nodiscard]] std::vector<PlanHazard> plan_hazards(const Assembly& draft,
                                                   const std::vector<PlanLeg>& legs);

} // namespace tumpline::planner
