#pragma once

#include "planner/plan.h"
#include "planner/results/assembly.h"

namespace tumpline::planner {

/// Plans the trip anew, its nights as planned, for each remedy that changes loads: those are
/// checked, not estimated, within a budget of plans that is told. The relay is reckoned from the
/// plan's own stretches.
[[nodiscard]] Remedies remedies(const Assembly& draft, const Plan& plan);

} // namespace tumpline::planner
