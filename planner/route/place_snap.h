#pragma once

#include "geo/position.h"
#include "planner/route/route.h"

#include <map>
#include <string>
#include <vector>

namespace tumpline::planner {

/// Further off the line a place is a caution, and no place to sleep at or to be on time.
inline constexpr double far_off_m = 500.0;

/// Where the places of a trip are.
struct KnownPlaces {
    std::map<std::string, geo::Position> of_trip; ///< by name
    std::map<std::string, geo::Position> met_at;  ///< waypoints that only appointments name

    /// Puts each place on the route at every pass of the line by it, in order along the route, and
    /// the waypoints into `met_at`. A place further than `far_off_m` from the line gets its nearest
    /// point and a caution.
    void snap(Route& route, const std::vector<TripPlace>& places) const;
};

} // namespace tumpline::planner
