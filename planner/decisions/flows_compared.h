#pragma once

#include "planner/plan.h"

#include <vector>

namespace tumpline::planner {

/// `trip` planned at each level that one of its rivers gives: low, normal, high. Empty where
/// none gives any.
[[nodiscard]] std::vector<FlowPlan> flows_compared(const Trip& trip, const Route& route);

} // namespace tumpline::planner
