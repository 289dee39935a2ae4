#pragma once

#include "planner/plan.h"
#include "planner/results/assembly.h"

#include <vector>

namespace tumpline::planner {

/// A card for every leg that is paddled, where the trip gives the levels of a river. Of `plan` it
/// reads legs, days, appointments, exits and turn-rounds.
[[nodiscard]] std::vector<DecisionCard> decision_cards(const Assembly& draft, const Plan& plan);

} // namespace tumpline::planner
