#pragma once

#include "planner/plan.h"
#include "planner/results/assembly.h"

#include <vector>

namespace tumpline::planner {

/// What goes into backpacks and the food's container. A pack is looked at as every walk begins:
/// what its bearer has in it, food by its litres per kilogram, water a litre each, a rolled boat by
/// its `rolled`. Over portages loads are made anew, and nobody knows in what. What nobody gave a
/// volume is named and counts nothing.
[[nodiscard]] PlanVolumes plan_volumes(const Assembly& draft, const std::vector<PlanDay>& days);

} // namespace tumpline::planner
