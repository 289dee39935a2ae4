#pragma once

#include "planner/caution.h"
#include "planner/plan.h"

#include <vector>

namespace tumpline::planner {

/// What does not go into a backpack or into the food's container.
[[nodiscard]] std::vector<Caution> volume_cautions(const Plan& plan);

} // namespace tumpline::planner
