#pragma once

#include "planner/results/assembly.h"

#include <vector>

namespace tumpline::planner {

/// What is to be said of food, fuel and water.
[[nodiscard]] std::vector<Caution> supply_cautions(const Assembly& draft, const Plan& plan);

} // namespace tumpline::planner
