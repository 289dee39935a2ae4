#pragma once

#include "planner/route/route.h"
#include "planner/trip/trip.h"
#include "tests/support/random_draws.h"

namespace tumpline::test {

/// Where a made-up trip takes place.
struct Region {
    geo::Position start;
    const char* time_zone;
};

/// Lays out legs and places from `region.start`, as `build_route` would lay tracks, and describes
/// them in `trip.route`. Legs meet; a portage lies between two legs afloat.
[[nodiscard]] planner::Route random_route(planner::Trip& trip, const Region& region, Draws& draws);

} // namespace tumpline::test
