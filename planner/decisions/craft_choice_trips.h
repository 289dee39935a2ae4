#pragma once

#include "planner/route/alternatives.h"
#include "planner/route/route.h"
#include "planner/trip/trip.h"

#include <optional>
#include <string>
#include <vector>

namespace tumpline::planner {

/// Whose boats a trip is planned with.
enum class Boats {
    own,    ///< as the trip has them
    choice, ///< one of `craft_choices` in place of them
    none    ///< no leg is afloat, and they stay at home
};

/// The trip with other boats.
struct OtherBoats {
    Boats boats = Boats::own;
    bool paddle = false;               ///< the choice is a paddle, and boats are the trip's own
    std::string name;                  ///< of the choice; empty for the others
    std::vector<std::string> replaces; ///< boats or paddles of the trip that it takes the place of
    int count = 0;                     ///< how many of it are taken
    std::vector<std::string> by;       ///< alternative legs on which no water is left
    std::string refused;               ///< why it cannot be planned; empty if it can
    std::optional<double> price;       ///< of all that are taken; 0 for own and none
    Trip trip;
    Route route;
};

/// The trip as it stands; with each of its choices, in the order of the file; and without a boat
/// where none of its legs, or none of a way by its alternatives, is afloat.
///
/// A choice takes the place of the boats that it names ("replaces"), else of each boat with as many
/// aboard as it has seats; it gets their crews. Where the trip has no boat at all, as many are
/// taken as seat the party, filled in the party's order. A paddle takes the place of the paddles
/// that it names, else of all; whose they are and how they are used stays. What is left on the way
/// of what is replaced is left of what replaces it.
[[nodiscard]] std::vector<OtherBoats>
other_boats(const Trip& trip, const Route& route, const std::vector<OtherRoute>& others);

} // namespace tumpline::planner
