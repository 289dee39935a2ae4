#pragma once

#include "tests/support/level_trip.h"

#include <utility>

namespace tumpline::test {

/// Ada walks 2 km, paddles 3 km of lake and 4 km of a river of class III with a packraft of 2.1 kg
/// and a paddle of 1 kg, without rain.
[[nodiscard]] inline RandomTrip lake_and_rapids(const planner::PaddleSpec& paddle = {}) {
    using planner::Travel;
    RandomTrip made = level_trip({{.length_m = 2e3},
                                  {.travel = Travel::paddle, .length_m = 3e3},
                                  {.travel = Travel::paddle, .length_m = 4e3, .current_mps = 1.0}},
                                 {});
    const auto set = [&](std::size_t leg, planner::Water water, std::optional<int> river_class) {
        planner::TripLeg& spec = made.route.legs[leg].spec;
        spec.water = water;
        spec.river_class = river_class;
        made.trip.route.legs[leg] = spec;
    };
    set(1, planner::Water::lake, std::nullopt);
    set(2, planner::Water::river, 3);
    planner::Craft boat;
    boat.name = "boat";
    boat.kind = planner::CraftKind::packraft;
    boat.mass_kg = 2.1;
    boat.crew = {"Ada"};
    boat.calm_speed_mps = 1.2;
    made.trip.craft = {boat};
    planner::KitItem thing;
    thing.name = "paddle";
    thing.mass_kg = 1.0;
    thing.owner = "Ada";
    thing.afloat = planner::ItemUse::used;
    thing.paddle = paddle;
    made.trip.kit = {thing};
    return made;
}

} // namespace tumpline::test
