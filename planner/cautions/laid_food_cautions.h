#pragma once

#include "planner/caution.h"
#include "planner/results/assembly.h"

#include <vector>

namespace tumpline::planner {

/// Food that is laid down on the way: more than there is, and meals that it is missing from.
[[nodiscard]] std::vector<Caution> laid_food_cautions(const Assembly& draft);

} // namespace tumpline::planner
