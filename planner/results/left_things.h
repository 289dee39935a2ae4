#pragma once

#include "planner/plan/left_things.h"
#include "planner/results/assembly.h"

#include <vector>

namespace tumpline::planner {

/// What is left on the way and fetched, in the order in which it is left; masses by the ledger.
[[nodiscard]] std::vector<LaidThings> plan_left(const Assembly& draft);

} // namespace tumpline::planner
