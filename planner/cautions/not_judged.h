#pragma once

#include "planner/plan/verdict.h"
#include "planner/results/assembly.h"

#include <vector>

namespace tumpline::planner {

/// What matters on this trip and could not be judged, because the trip file does not give it.
[[nodiscard]] std::vector<NotJudged> not_judged(const Assembly& draft, const Plan& plan);

} // namespace tumpline::planner
