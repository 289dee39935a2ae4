#pragma once

#include "geo/position.h"
#include "planner/route.h"

#include <map>
#include <string>
#include <vector>

namespace tumpline::planner {

/// Puts each place on the route at every pass of the line by it, in order along the route.
/// A place further than 500 m from the line gets its nearest point and a caution.
void snap_places(Route& route,
                 const std::vector<TripPlace>& places,
                 const std::map<std::string, geo::Position>& positions);

} // namespace tumpline::planner
