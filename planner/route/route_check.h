#pragma once

#include "geo/input_error.h"
#include "planner/route/route.h"
#include "planner/trip/trip.h"

#include <string>
#include <vector>

namespace tumpline::planner {

/// What contradicts itself in a trip once its route is known: nights and appointments at places
/// that lie off the route, appointments before the trip sets off, connections that do not run from
/// the ends of the route.
[[nodiscard]] std::vector<geo::Problem> problems_on_route(const Trip& trip, const Route& route);

/// Names of nights and appointments' places that lie off the route.
[[nodiscard]] std::vector<std::string> places_off_route(const Trip& trip, const Route& route);

} // namespace tumpline::planner
