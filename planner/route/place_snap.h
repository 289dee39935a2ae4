#pragma once

#include "geo/position.h"
#include "planner/route/route.h"

#include <cstddef>
#include <map>
#include <optional>
#include <string>
#include <vector>

namespace tumpline::planner {

/// Further off the line a place is a caution, and no place to sleep at or to be on time.
inline constexpr double far_off_m = 500.0;

/// A point of a leg.
struct LegDistance {
    std::string leg;        ///< by its name
    std::size_t same_named; ///< legs of that name ahead of it
    double from_start_m;
};

/// Turns a distance as the trip file gives it into one along a leg of `route`; empty if it lies
/// beyond the route's or the leg's end, or no leg has that name.
[[nodiscard]] std::optional<LegDistance> leg_distance(const Route& route,
                                                      const RouteDistance& along);

/// Where the places of a trip are.
struct KnownPlaces {
    std::map<std::string, geo::Position> of_trip = {}; ///< by name
    std::map<std::string, geo::Position> met_at = {};  ///< waypoints that only appointments name
    /// Places by distance along the route, as distances along one leg of it.
    std::map<std::string, LegDistance> by_distance = {};

    /// Puts each place on the route at every pass of the line by it, in order along the route, and
    /// the waypoints into `met_at`. A place that a leg without a line goes from or to stands at
    /// that leg's end; one by distance where its distance ends. A place further than `far_off_m`
    /// from the line gets its nearest point and a caution.
    void snap(Route& route, const std::vector<TripPlace>& places) const;
};

} // namespace tumpline::planner
