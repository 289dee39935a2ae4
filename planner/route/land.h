#pragma once

#include "planner/route/route.h"
#include "planner/trip/trip.h"

namespace tumpline::planner {

/// Reads the layers of the trip's map around `route`, and says of them what the route passes.
/// Nothing happens where the trip names none.
/// Throws: geo::InputError with every layer that cannot be used.
void read_land(const Trip& trip, Route& route);

} // namespace tumpline::planner
