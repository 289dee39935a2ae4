#pragma once

#include "planner/plan/verdict.h"
#include "planner/results/assembly.h"

namespace tumpline::planner {

/// Weighs `plan.cautions`: groups them, worst first, and says what was not given.
[[nodiscard]] Verdict verdict_of(const Assembly& draft, const Plan& plan);

} // namespace tumpline::planner
