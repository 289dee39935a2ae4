#pragma once

#include "planner/results/assembly.h"

#include <vector>

namespace tumpline::planner {

/// Each connection of the trip file as the plan meets it (docs/connections.md).
[[nodiscard]] std::vector<PlanConnection> plan_connections(const Assembly& draft);

} // namespace tumpline::planner
