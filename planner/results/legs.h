#pragma once

#include "planner/results/assembly.h"

#include <vector>

namespace tumpline::planner {

/// The legs, each cut where a night cuts it, with loads, boats and portages.
[[nodiscard]] std::vector<PlanLeg> plan_legs(const Assembly& draft);

} // namespace tumpline::planner
