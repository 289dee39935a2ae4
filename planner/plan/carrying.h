#pragma once

#include "planner/loads/portage_loads.h"
#include "planner/quantities/leg_number.h"

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

/// How the portages of a whole trip are carried, in one sentence and with its price.
namespace tumpline::planner {

/// Portages one after the other that are carried in the same way.
struct CarrySpan {
    double carries = 1.0; ///< 1, 1.5, 2, 3
    bool rolled = false;  ///< the boats in the packs
    int first_day = 1, last_day = 1;
    PlanLegNumber first_plan_leg = {}, last_plan_leg = {};
    int portages = 0;
    CarryBy by = CarryBy::hands;
};

/// Portages one after the other over which the same people take a boat.
struct BoatSpan {
    std::string craft;
    std::vector<std::string> members; ///< one; two who relay it
    int first_day = 1, last_day = 1;
    int portages = 0;
    CarryBy by = CarryBy::hands; ///< by two: between them
};

/// All portages done in one way, summed; or as planned.
struct CarryWay {
    std::optional<double> carries; ///< empty: as planned, portage by portage
    bool rolled = false;
    CarryBy by = CarryBy::hands;
    double moving_s = 0.0;
    double changeover_s = 0.0;
    double walked_m = 0.0; ///< by each person
    double more_s = 0.0;   ///< than as planned, change-overs included
    double more_walked_m = 0.0;
    double heaviest_kg = 0.0; ///< heaviest load relative to its limit
    std::string heaviest_member;
    double heaviest_ratio = 0.0;
    int over_limit = 0;                 ///< portages with a load over its limit
    double most_over_kg = 0.0;          ///< by how much, at its worst
    std::optional<int> within_from_day; ///< of the first portage after the last of those, if any
};

/// Empty where the trip has no portage.
struct CarrySummary {
    std::string sentence; ///< "One and a half carries to day 5, single from day 6; Emrik ..."
    int portages = 0;
    double length_m = 0.0; ///< of all of them, one way
    std::vector<CarrySpan> spans;
    std::vector<BoatSpan> boats;
    std::vector<CarryWay> ways; ///< as planned, then those that every portage offers
};

} // namespace tumpline::planner
