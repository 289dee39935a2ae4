#pragma once

#include "planner/caution.h"
#include "planner/plan.h"
#include "planner/results/assembly.h"

#include <vector>

namespace tumpline::planner {

/// What is wrong with leaving things on the way: never left, never fetched, needed while it lies
/// elsewhere; and that it lies unwatched.
[[nodiscard]] std::vector<Caution> left_cautions(const Assembly& draft, const Plan& plan);

} // namespace tumpline::planner
