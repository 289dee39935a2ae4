#pragma once

#include "planner/results/assembly.h"

#include <vector>

namespace tumpline::planner {

/// Food and fuel from one supply to the next.
[[nodiscard]] std::vector<Stage> plan_stages(const Assembly& draft);

/// From one dependable source of water to the next.
[[nodiscard]] std::vector<WaterStretch> plan_water(const Assembly& draft);

/// What each member's vessels hold along the route.
[[nodiscard]] std::vector<Litres> plan_litres(const Assembly& draft);

/// How well things are shared out where the party carries most.
[[nodiscard]] Sharing plan_sharing(const Assembly& draft, const std::vector<PlanLeg>& legs);

} // namespace tumpline::planner
