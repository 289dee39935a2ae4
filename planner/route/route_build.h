#pragma once

#include "planner/route/alternatives.h"
#include "planner/route/route.h"

#include <vector>

namespace tumpline::planner {

/// The route as drawn, and with alternatives laid in place of legs.
struct BuiltRoute {
    Route route;
    std::vector<OtherRoute> others;
};

/// Reads the trip's tracks and rasters and lays its legs end to end.
/// Throws: geo::InputError with every problem found: a track or place that is not there, a place
/// without a position, a file that cannot be read.
[[nodiscard]] BuiltRoute build_routes(const Trip& trip);

/// The same without the alternatives.
[[nodiscard]] Route build_route(const Trip& trip);

} // namespace tumpline::planner
