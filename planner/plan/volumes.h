#pragma once

#include "planner/quantities/leg_number.h"

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

/// What goes into backpacks and into the food's container, in litres, where their volumes are
/// given.
namespace tumpline::planner {

/// A backpack where most must go into it on foot.
struct PackVolume {
    std::string member;
    double holds_l = 0.0;
    double needs_l = 0.0; ///< as far as volumes are known
    int day = 1;
    PlanLegNumber plan_leg = {};      ///< none: never on foot
    std::vector<std::string> unknown; ///< things in it whose volume nobody gave
    std::vector<std::string>
        left_out; ///< things that must come out for the rest to go in; neither food nor water

    [[nodiscard]] bool fits() const { return needs_l <= holds_l; }
};

/// What the container must hold over one night.
struct ContainerNight {
    int day = 1; ///< the night after it; 0: before setting off
    std::string place;
    double food_kg = 0.0;
    double needs_l = 0.0; ///< food, and the things that lie in it
    bool fits = true;
};

/// The container of the food, of one piece with what has the same "in".
struct ContainerVolume {
    std::string name;
    double holds_l = 0.0;
    std::vector<ContainerNight> nights; ///< setting off, then every night
    std::optional<int> fits_from_day; ///< the first night from which on all fits; 0: from the start
    std::vector<std::string> unknown; ///< "food" and things in it whose volume nobody gave
};

struct PlanVolumes {
    std::vector<PackVolume> packs;            ///< of those who gave a volume, party order
    std::optional<ContainerVolume> container; ///< where the trip file gives its litres
};

} // namespace tumpline::planner
