#pragma once

#include "planner/plan.h"
#include "planner/quantities/leg_number.h"
#include "planner/route/route.h"

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace tumpline::planner {

/// What is left of a limit where least is left of it, over all boats and all that is paddled.
struct CraftMargin {
    bool asked = false;               ///< something is paddled that it could bind
    std::optional<double> left;       ///< the least that is known; negative: over the limit
    std::string craft;                ///< of which boat that is
    PlanLegNumber plan_leg = {};      ///< and where
    std::vector<std::string> missing; ///< whose limit or leg's class is not given, each once

    /// Whether nothing is missing that could make it worse.
    [[nodiscard]] bool known() const { return missing.empty(); }
};

/// The wind over open water in which the first boat must be off it.
struct CraftWind {
    double ceiling_mps = 0.0;
    std::string craft;
    bool assumed = false; ///< by the kind of boat; the file gives none
};

/// What each boat is meant for, less the class of the water, on every leg afloat whose water has a
/// class or is a river; lakes and the sea have none unless the file gives one.
[[nodiscard]] CraftMargin class_margin(const Plan& plan, const Route& route);

/// What each boat may bear less what lies in it, at the leg's heaviest moment.
[[nodiscard]] CraftMargin payload_margin(const Plan& plan);

/// Of the boat that must leave open water first; none where nothing is paddled.
[[nodiscard]] std::optional<CraftWind> wind_that_stops(const Plan& plan);

} // namespace tumpline::planner
