#pragma once

#include "planner/plan.h"

#include <vector>

namespace tumpline::planner {

/// For each member the day's heaviest pack or carry that is heaviest of all days, the first of
/// equals. A member who bears nothing on foot has none.
[[nodiscard]] std::vector<HeaviestPack> plan_heaviest_packs(const std::vector<PlanDay>& days,
                                                            const std::vector<PlanLeg>& legs);

} // namespace tumpline::planner
