#pragma once

#include "planner/trip/name_references.h"
#include "planner/trip/trip.h"

namespace tumpline::planner {

/// Legs and places: keys that mean nothing for a way of travel, what a leg without a track says of
/// itself, carts, fords, distances along legs, alternatives.
void check_route_keys(const Trip& trip, References& references, Problems& problems);

} // namespace tumpline::planner
