#pragma once

#include "tests/support/level_trip.h"

namespace tumpline::test {

/// Ada walks 2 km to Col, 6 km on and back to it, 2 km home, with a tent of 1900 g, poles of 500 g
/// in hand, a lamp of 100 g and a boat of 3 kg; level, 1 m/s under whatever load, so that times and
/// food are the same whatever lies at Col.
[[nodiscard]] inline RandomTrip out_and_back(planner::Travel middle = planner::Travel::walk) {
    using planner::KitItem;
    RandomTrip made =
        level_trip({{.length_m = 2e3}, {.travel = middle, .length_m = 6e3}, {.length_m = 2e3}},
                   {{"Col", planner::PlaceKind::camp, 2e3}});
    planner::RoutePlace again = made.route.places.front();
    again.along_m = 8e3;
    again.leg = 2;
    made.route.places.push_back(again);
    KitItem tent;
    tent.name = "tent";
    tent.mass_kg = 1.9;
    tent.is = planner::SafetyGear::shelter;
    KitItem poles;
    poles.name = "poles";
    poles.mass_kg = 0.5;
    poles.owner = "Ada";
    poles.ashore = planner::ItemUse::used;
    KitItem lamp;
    lamp.name = "lamp";
    lamp.mass_kg = 0.1;
    lamp.is = planner::SafetyGear::light;
    made.trip.kit = {tent, poles, lamp};
    planner::Craft boat;
    boat.name = "boat";
    boat.kind = planner::CraftKind::packraft;
    boat.mass_kg = 3.0;
    boat.crew = {"Ada"};
    boat.calm_speed_mps = 1.2;
    made.trip.craft = {boat};
    return made;
}

/// One entry of what is left at Col.
[[nodiscard]] inline planner::Leave at_col(std::vector<std::string> things) {
    planner::Leave leave;
    leave.at = "Col";
    leave.things = std::move(things);
    return leave;
}

} // namespace tumpline::test
