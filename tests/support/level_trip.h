#pragma once

#include "tests/support/random_trip.h"

#include <string>
#include <vector>

namespace tumpline::test {

struct LevelLeg {
    planner::Travel travel = planner::Travel::walk;
    double length_m = 0.0;
    double current_mps = 0.0; ///< afloat
};

struct LevelPlace {
    std::string name;
    planner::PlaceKind kind = planner::PlaceKind::camp;
    double along_m = 0.0;
};

/// A trip whose times can be worked out by hand: level ground straight to the east from 47 N, 11 E,
/// one person who walks 1 m/s with whatever load, no rests, no change-overs; one boat without wind
/// where there are legs afloat; 1 kg of food a day without packaging and reserve; set off at 06:00
/// UTC on 7 June 2027.
[[nodiscard]] RandomTrip level_trip(const std::vector<LevelLeg>& legs,
                                    const std::vector<LevelPlace>& places);

} // namespace tumpline::test
