#pragma once

#include "geo/position.h"

#include <cstddef>
#include <optional>
#include <vector>

namespace tumpline::planner {

/// Where a track begins and ends, and what it rises by if it is a water.
struct TrackEnds {
    geo::Position start;
    geo::Position end;
    std::optional<double> water_rises_m; ///< empty on foot, or where no height is known
};

/// Tracks in the order in which they are travelled.
struct TrackOrder {
    std::vector<std::size_t> order; ///< indices of the tracks
    std::vector<bool> turned;       ///< in that order: travelled backwards, as a route's legs are
};

/// How to lay tracks end to end. As they stand, if each begins where the one before ends. Else of
/// the ways in which they meet (in another order, some of them turned round as they stand, and
/// either from its end to its start) the one in which least water rises; of equals the one in which
/// fewest are turned. As they stand as well if they do not meet at all.
[[nodiscard]] TrackOrder track_order(const std::vector<TrackEnds>& tracks);

} // namespace tumpline::planner
