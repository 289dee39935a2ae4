#pragma once

#include "planner/results/assembly.h"

#include <vector>

namespace tumpline::planner {

/// One row for each thing of the kit, then one for each boat, in the order of the trip file.
[[nodiscard]] std::vector<PackedItem> plan_items(const Assembly& draft,
                                                 const std::vector<PlanLeg>& legs);

/// What each member sets off with, party order.
[[nodiscard]] std::vector<StartLoad> plan_start_loads(const Assembly& draft,
                                                      const std::vector<PlanLeg>& legs);

} // namespace tumpline::planner
