#pragma once

#include "planner/results/assembly.h"

#include <vector>

namespace tumpline::planner {

/// Rivers outside their runnable range, and levels that are estimates.
[[nodiscard]] std::vector<Caution> flow_cautions(const Plan& plan);

} // namespace tumpline::planner
