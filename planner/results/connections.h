#pragma once

#include "planner/results/assembly.h"

#include <vector>

namespace tumpline::planner {

/// Each connection of the trip file as the plan meets it (docs/connections.md); `legs` are the
/// plan's, with the hours at which the wind rises on them.
[[nodiscard]] std::vector<PlanConnection> plan_connections(const Assembly& draft,
                                                           const std::vector<PlanLeg>& legs);

} // namespace tumpline::planner
