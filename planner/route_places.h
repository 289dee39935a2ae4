#pragma once

#include "geo/position.h"
#include "planner/route.h"

#include <map>
#include <string>
#include <vector>

namespace tumpline::planner {

/// Further off the line a place is a caution, and no place to sleep at or to be on time.
inline constexpr double far_off_m = 500.0;

/// Puts each place on the route at every pass of the line by it, in order along the route.
/// A place further than `far_off_m` from the line gets its nearest point and a caution.
void snap_places(Route& route,
                 const std::vector<TripPlace>& places,
                 const std::map<std::string, geo::Position>& positions);

/// The same for a waypoint that only an appointment names.
void snap_waypoint(Route& route, const std::string& name, const geo::Position& at);

} // namespace tumpline::planner
