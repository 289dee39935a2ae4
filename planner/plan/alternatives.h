#pragma once

#include "planner/caution.h"

#include <optional>
#include <string>
#include <vector>

/// The trip by its alternatives, as data.
namespace tumpline::planner {

/// What one compares two ways by. Sums over a whole plan.
struct WayFigures {
    double distance_m = 0.0;
    double on_foot_m = 0.0; ///< metres really walked, portages included
    double paddle_m = 0.0;
    double ascent_m = 0.0;
    double moving_s = 0.0;
    double under_way_s = 0.0; ///< moving, change-overs and rests
    int days = 0;
    double energy_j = 0.0;          ///< of the whole party
    double carried_kg_km = 0.0;     ///< packs and carries times the way on foot, of all members
    double heaviest_kg = 0.0;       ///< heaviest pack or carry on foot
    std::string heaviest_member;    ///< empty if nobody bears anything on foot
    double heaviest_of_limit = 0.0; ///< heaviest_kg over the limit there; 0 without one
    std::vector<Caution> stops;     ///< why the plan cannot be carried out, if so
};

/// The whole trip with an alternative in place of a leg, or with all of them.
struct OtherWay {
    std::vector<std::string> instead_of; ///< legs left out
    std::vector<std::string> by;         ///< alternatives in their place
    bool without_boats = false;          ///< boats and what is used only afloat stay at home
    double left_home_kg = 0.0;           ///< their mass
    std::string refused;                 ///< why there is no plan of it; empty if there is one
    std::optional<WayFigures> figures;   ///< of that plan
};

/// The way as planned beside the others; `ways` is empty without alternatives.
struct OtherWays {
    WayFigures planned;
    std::vector<OtherWay> ways; ///< in the order of the trip file, all together last
};

} // namespace tumpline::planner
