#pragma once

#include "planner/quantities/leg_number.h"

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

/// What could be done where packs are heavier than their bearers' limits, each with its price.
namespace tumpline::planner {

/// A member's packs over the limit, on walks.
struct Overloaded {
    std::string member;
    double limit_kg = 0.0;
    double worst_kg = 0.0;       ///< heaviest pack
    double over_kg = 0.0;        ///< worst_kg - limit_kg
    std::vector<int> days;       ///< on which a pack is over
    PlanLegNumber plan_leg = {}; ///< of the worst
};

/// Limits raised by one factor for everybody: the packs are shared out in proportion to the limits,
/// so that the sharing stays as it is.
struct RaisedLimits {
    double factor = 1.0;
    std::vector<double> limits_kg; ///< per member, party order
};

/// Things that stay at home.
struct LeftThings {
    double mass_kg = 0.0;            ///< that must go at least, whatever is chosen
    std::vector<std::string> things; ///< each of which alone would do; or all of them together
    bool together = false;
    double heaviest_of_limit = 0.0; ///< afterwards: of the first, or of all
};

/// A resupply or cache at a night's place where none was.
struct EarlierSupply {
    std::string place;
    int after_day = 0;       ///< the night of that day
    double lighter_kg = 0.0; ///< the whole party's packs when the trip sets off
    double heaviest_of_limit = 0.0;
    bool enough = false;
};

/// Two walks, each with half the pack, over every leg on which one is too heavy.
struct RelayedWalks {
    std::vector<PlanLegNumber> plan_legs;
    double more_s = 0.0;         ///< moving time of the party on top
    double more_on_foot_m = 0.0; ///< walked by each person on top
    std::vector<int> dark_days;  ///< on which the arrival would fall past dusk
    double heaviest_of_limit = 0.0;
    bool enough = true;
};

/// `heaviest_of_limit` is the heaviest pack over its limit on any walk with that remedy, `enough`
/// whether no pack is over its limit then.
struct Remedies {
    std::vector<Overloaded> overloaded; ///< party order; empty: there is nothing to mend
    int most_plans = 0;                 ///< made for each remedy at most (`plans_to_spend`)
    bool all_tried = true; ///< false: there were more things or nights to try than that
    std::optional<RaisedLimits> raise;
    std::optional<LeftThings> leave;     ///< empty if things alone cannot mend it
    std::optional<EarlierSupply> supply; ///< empty if none makes any pack lighter
    std::optional<RelayedWalks> relay;
};

} // namespace tumpline::planner
