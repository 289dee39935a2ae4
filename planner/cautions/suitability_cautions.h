#pragma once

#include "planner/caution.h"
#include "planner/plan.h"

#include <vector>

namespace tumpline::planner {

/// Boats on water that the trip file does not say they are made for.
[[nodiscard]] std::vector<Caution> suitability_cautions(const Plan& plan);

} // namespace tumpline::planner
