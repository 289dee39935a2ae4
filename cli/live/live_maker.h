#pragma once

#include "cli/live/live_ground.h"
#include "cli/live/live_trip.h"
#include "cli/live/one_hand.h"
#include "cli/words/figures.h"
#include "planner/quantities/quantities.h"

#include <atomic>
#include <optional>

namespace tumpline::cli {

/// What plans are made and drawn from.
struct LiveMaker {
    LiveMaker(LiveTrip& of, std::optional<planner::UnitSystem> said) : trip(of), units(said) {}

    [[nodiscard]] Figures figures(const planner::Plan& plan) const {
        return {units.value_or(plan.trip.units.value_or(planner::UnitSystem::metric)),
                plan.trip.time_zone,
                Blank::kept};
    }

    LiveTrip& trip;
    std::optional<planner::UnitSystem> units; ///< as the command line said
    LiveGrounds grounds;
    std::atomic<int> long_questions{0}; ///< under way or waiting
    OneHand hand;                       ///< plans
    OneHand long_hand;                  ///< what takes many plans; ends first
};

} // namespace tumpline::cli
