#pragma once

#include "planner/results/assembly.h"

#include <vector>

namespace tumpline::planner {

/// Along the route, the time to the nearest exit forward and back.
[[nodiscard]] std::vector<ExitPoint> plan_exits(const Assembly& draft);

} // namespace tumpline::planner
