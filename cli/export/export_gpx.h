#pragma once

#include "planner/plan.h"
#include "planner/route/route.h"

#include <string>

namespace tumpline::cli {

/// The plan as GPX 1.1 for receivers and maps: a track per leg and day with its way of travel as
/// type, a waypoint per night and place. No times, so that nobody takes it for a recording; the
/// elements in the order of the schema. Source: [GPX11], docs/export.md.
[[nodiscard]] std::string export_gpx(const planner::Plan& plan, const planner::Route& route);

} // namespace tumpline::cli
