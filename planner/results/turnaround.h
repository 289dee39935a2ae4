#pragma once

#include "planner/results/assembly.h"

#include <vector>

namespace tumpline::planner {

/// Day by day, until when and where the party can still turn around.
[[nodiscard]] std::vector<TurnRound> plan_turn_rounds(const Assembly& draft);

} // namespace tumpline::planner
