#pragma once

#include "planner/route/place_snap.h"
#include "planner/route/route.h"

#include <vector>

namespace tumpline::planner {

/// The route once more for each alternative (`instead_of`), laid in place of the leg for which it
/// stands, and for all of them together where there are several. Alternatives to one leg that
/// follow on each other are one way. Nights and appointments that lie off such a way are told in
/// `refused`.
[[nodiscard]] std::vector<OtherRoute>
other_routes(const Trip& trip, const Route& route, const KnownPlaces& places);

} // namespace tumpline::planner
