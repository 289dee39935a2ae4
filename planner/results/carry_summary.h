#pragma once

#include "planner/results/assembly.h"

#include <vector>

namespace tumpline::planner {

/// How the portages of the whole trip are carried, and what other ways would cost.
[[nodiscard]] CarrySummary plan_carries(const Assembly& draft);

} // namespace tumpline::planner
