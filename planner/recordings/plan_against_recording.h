#pragma once

#include "planner/plan.h"
#include "planner/quantities/leg_number.h"
#include "planner/recordings/recorded_motion.h"
#include "planner/route/route.h"

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace tumpline::planner {

/// A leg of the plan beside what was recorded on it.
struct LegAgainst {
    PlanLegNumber plan_leg = {};
    double planned_s = 0.0;      ///< moving time of the whole leg
    double recorded_s = 0.0;     ///< moving time on what was recorded of it
    double covered = 0.0;        ///< share of the leg's line that was recorded, at most 1
    std::optional<double> ratio; ///< recorded over planned time of that share; empty below a tenth
};

struct Against {
    std::vector<LegAgainst> legs;  ///< every leg of the plan, in order
    std::optional<double> on_foot; ///< the ratio of all legs on foot together
    std::optional<double> afloat;  ///< and of those afloat
    double off_route_s = 0.0;      ///< on the move further than 150 m from the route
    double other_way_s = 0.0;      ///< on the route, but against the plan's direction: left out
};

/// Lays a recording over its plan: each minute on the move belongs to the pass of the route that is
/// near, goes the same way (on a portage either way) and follows best on the minute before. How
/// much of a leg was recorded is measured on the leg's own line, since lengths of a plan and of a
/// smoothed recording differ. On portages the way is what each person walks, so a recording of one
/// carry covers a part of it.
[[nodiscard]] Against against_plan(const Recorded& recorded, const Plan& plan, const Route& route);

} // namespace tumpline::planner
