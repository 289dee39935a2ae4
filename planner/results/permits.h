#pragma once

#include "planner/results/assembly.h"

#include <vector>

namespace tumpline::planner {

/// What must be booked and for which dates, and what a lost day does to each: the nights at a
/// camp, the days on a leg or at another place.
[[nodiscard]] std::vector<PlanPermit> plan_permits(const Assembly& draft);

} // namespace tumpline::planner
