#pragma once

#include "planner/plan.h"
#include "planner/results/assembly.h"

#include <vector>

namespace tumpline::planner {

/// What each has to bring to the start, party order, and the party as a whole last: one pack each,
/// things that lie in no pack when setting off each a piece of its own, boats that do not roll up
/// as well. Common practice, no source.
[[nodiscard]] std::vector<Luggage> plan_luggage(const Assembly& draft,
                                                const std::vector<PackedItem>& items,
                                                const std::vector<StartLoad>& start_loads);

} // namespace tumpline::planner
