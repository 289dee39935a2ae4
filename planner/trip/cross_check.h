#pragma once

#include "planner/trip/trip.h"
#include "planner/trip/value_reader.h"

namespace tumpline::planner {

/// What no single value shows: names that must exist, be given once, or fit each other. Names of
/// places in legs and appointments may be waypoints of the tracks; the route's builder knows them.
void check_trip(const Trip& trip, Problems& problems);

} // namespace tumpline::planner
