#pragma once

#include "planner/results/assembly.h"

#include <vector>

namespace tumpline::planner {

/// Every model that the figures of the plan rest on: those that the trip may choose, then the
/// others that this trip made use of.
[[nodiscard]] std::vector<ModelUsed> models_used(const Assembly& draft,
                                                 const std::vector<PlanLeg>& legs);

/// The bands beside the times, with their basis.
[[nodiscard]] std::vector<BandUsed> bands_used(const Assembly& draft,
                                               const std::vector<PlanLeg>& legs);

} // namespace tumpline::planner
