#pragma once

#include "planner/caution.h"
#include "planner/results/assembly.h"

#include <vector>

namespace tumpline::planner {

/// What is to be said of each ford that the route passes.
[[nodiscard]] std::vector<Caution> ford_cautions(const Assembly& draft);

} // namespace tumpline::planner
