#pragma once

#include "planner/route/route.h"
#include "planner/trip/river_flow.h"

#include <optional>
#include <vector>

/// Rivers whose level a dam changes by the hour. All other rooms ask here.
namespace tumpline::planner {

/// What a leg's river carries at an hour; of releases that overlap the last holds. The second day
/// after midnight is like the first. Empty on a leg whose river no dam changes.
[[nodiscard]] std::optional<FlowState> released_at(const RouteLeg& leg, double after_midnight_s);

/// The hours, seconds after a day's midnight and ascending over two days, at which it may change.
[[nodiscard]] std::vector<double> release_changes(const RouteLeg& leg);

[[nodiscard]] bool has_releases(const Route& route);

} // namespace tumpline::planner
