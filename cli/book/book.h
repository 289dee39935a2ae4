#pragma once

#include "geo/ground/elevation.h"
#include "planner/plan.h"
#include "planner/quantities/quantities.h"
#include "planner/route/route.h"

#include <string>

namespace tumpline::cli {

/// The printable book of a plan: one HTML document that needs nothing besides itself
/// (docs/book.md). `route` is the one the plan was made over; `elevation` holds the trip's rasters,
/// for contours and relief, or is null. What the maps show shrinks until the book is small.
[[nodiscard]] std::string book(const planner::Plan& plan,
                               const planner::Route& route,
                               planner::UnitSystem units,
                               geo::Elevation* elevation = nullptr);

} // namespace tumpline::cli
