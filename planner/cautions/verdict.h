#pragma once

#include "planner/plan.h"
#include "planner/plan/verdict.h"

#include <vector>

namespace tumpline::planner {

/// Weighs `plan.cautions` and groups them, worst first; with what was not given.
[[nodiscard]] Verdict verdict_of(const Plan& plan, std::vector<NotJudged> unknown);

} // namespace tumpline::planner
