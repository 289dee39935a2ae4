#pragma once

#include "planner/plan/suitability.h"
#include "planner/results/assembly.h"

namespace tumpline::planner {

/// Boats of which the trip file says a deck or the water that they suit, and paddles of the kit,
/// beside each leg that is paddled; and whether the paddles go into the packs (docs/craft.md).
[[nodiscard]] Suitability plan_suitability(const Assembly& draft);

} // namespace tumpline::planner
