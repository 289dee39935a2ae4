#pragma once

#include "planner/plan.h"
#include "planner/route/route.h"

namespace tumpline::test {

/// A route on the ground that a plan written by hand might have been made over: its legs have the
/// plan's names, lengths and ways of travel, its lines and heights are invented.
[[nodiscard]] planner::Route hand_built_route(const planner::Plan& plan,
                                              const geo::Position& start = {61.5, 13.1});

/// The same without any height.
[[nodiscard]] planner::Route without_heights(planner::Route route);

} // namespace tumpline::test
