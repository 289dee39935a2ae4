#pragma once

#include "planner/caution.h"
#include "planner/route/route.h"

#include <vector>

namespace tumpline::planner {

/// What the layers around the route say that the trip does not: rapids, falls and weirs that the
/// route passes afloat and no hazard names; how far from shore it leads over lakes; streams that
/// it crosses on foot; where it leaves the paths; and what no layer knows. The absence of a thing
/// in a layer is not its absence on the ground.
[[nodiscard]] std::vector<Caution> land_facts(const Route& route);

} // namespace tumpline::planner
