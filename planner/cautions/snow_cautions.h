#pragma once

#include "planner/caution.h"
#include "planner/plan.h"
#include "planner/results/assembly.h"

#include <vector>

namespace tumpline::planner {

/// Whether snow lies under foot on a leg on its day, as far as anybody says.
[[nodiscard]] bool walks_on_snow(const Assembly& draft, const PlanLeg& leg);

/// Of snow on the ground: how deep one sinks, and where an avalanche may come down.
[[nodiscard]] std::vector<Caution> snow_cautions(const Assembly& draft, const Plan& plan);

} // namespace tumpline::planner
