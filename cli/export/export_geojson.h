#pragma once

#include "planner/plan.h"
#include "planner/route/route.h"

#include <string>

namespace tumpline::cli {

/// The plan as one collection of features for map programs: a line per leg and day with the leg's
/// figures as properties, a point per night and place. Lines are cut at the 180th meridian; the
/// third coordinate is the height above the ellipsoid, as the format wants it, and left out where
/// the geoid is not at hand. Source: [RFC7946], docs/export.md.
[[nodiscard]] std::string export_geojson(const planner::Plan& plan, const planner::Route& route);

} // namespace tumpline::cli
