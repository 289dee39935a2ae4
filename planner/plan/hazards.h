#pragma once

#include "planner/quantities/leg_number.h"
#include "planner/trip/trip.h"

#include <cstddef>
#include <optional>
#include <string>

namespace tumpline::planner {

/// A hazard, or a note of a place or a leg, where it comes up along the way.
struct PlanHazard {
    bool hazard = false;                 ///< a place of kind "hazard"; else a note only
    std::optional<PlaceKind> place = {}; ///< empty: a leg's note
    std::string name = {};               ///< of the place or the leg
    std::string note = {};               ///< as the trip file has it; may be empty
    int day = 1;                         ///< on which one comes there
    LegNumber leg = {};                  ///< of the route
    double along_m = 0.0;                ///< along the route
};

} // namespace tumpline::planner
