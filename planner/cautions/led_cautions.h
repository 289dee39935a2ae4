#pragma once

#include "planner/caution.h"
#include "planner/plan.h"
#include "planner/results/assembly.h"

#include <vector>

namespace tumpline::planner {

/// What is to be said of boats that are lined, waded with or poled: paces without a source, footing
/// in the water and its cold, rapids that are not run, the current that a pole holds against, and
/// whether somebody is there to lead each boat.
[[nodiscard]] std::vector<Caution> led_cautions(const Assembly& draft, const Plan& plan);

} // namespace tumpline::planner
