#pragma once

#include "geo/ground/elevation.h"
#include "planner/route/route.h"

namespace tumpline::planner {

/// Whether a trip speaks of snow on the ground at all.
[[nodiscard]] bool speaks_of_snow(const Trip& trip);

/// Looks along every leg on foot for ground from which avalanches start (planner/models/avalanche):
/// on the line, and above it as far as they may run, up to 3 km away and 20 m or more higher, with
/// no higher ground between. Cells of the raster hide what is steep for less than their width.
[[nodiscard]] SteepGround steep_ground(const Route& route, geo::Elevation& elevation);

} // namespace tumpline::planner
