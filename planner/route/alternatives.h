#pragma once

#include "planner/route/place_snap.h"
#include "planner/route/route.h"

#include <string>
#include <vector>

namespace tumpline::planner {

/// The trip and its route with alternatives in place of the legs for which they stand.
struct OtherRoute {
    std::vector<std::string> instead_of; ///< names of legs, in order
    std::vector<std::string> by;         ///< names of the alternatives in their place
    bool without_boats = false; ///< no water is left to paddle: boats and their gear stay at home
    double left_home_kg = 0.0;  ///< their mass
    std::string refused;        ///< why it cannot be planned, in words; empty if it can
    Trip trip;
    Route route;
};

/// Takes boats, and what is of use only in them, out of a trip; answers their mass in kilograms.
[[nodiscard]] double leave_boats(Trip& trip);

/// The route once more for each alternative (`instead_of`), laid in place of the leg for which it
/// stands, and for all of them together where there are several. Alternatives to one leg that
/// follow on each other are one way. Nights and appointments that lie off such a way are told in
/// `refused`.
[[nodiscard]] std::vector<OtherRoute>
other_routes(const Trip& trip, const Route& route, const KnownPlaces& places);

} // namespace tumpline::planner
