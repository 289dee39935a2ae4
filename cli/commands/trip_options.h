#pragma once

#include "cli/words/sections.h"
#include "planner/quantities/quantities.h"
#include "planner/trip/river_flow.h"
#include "planner/trip/trip.h"
#include "planner/trip/trip_file.h"

#include <filesystem>
#include <optional>
#include <vector>

namespace tumpline::cli {

/// What every command that reads a trip takes.
struct TripOptions {
    std::filesystem::path trip;
    std::vector<planner::Setting> settings{};   ///< --set POINTER=VALUE, in their order
    std::optional<planner::UnitSystem> units{}; ///< --units; else the trip file's
    Show show{};                                ///< --show, where the command has sections
    std::optional<planner::FlowLevel> flow{};   ///< --flow; else what the rivers carry now
    bool strict = false;                        ///< a plan that breaks what was asked is none
};

/// The units for whoever reads `trip`.
[[nodiscard]] inline planner::UnitSystem units_of(const TripOptions& options,
                                                  const planner::Trip& trip) {
    return options.units.value_or(trip.units.value_or(planner::UnitSystem::metric));
}

/// Reads the trip with its settings, its rivers as asked. Throws as planner::read_trip does.
[[nodiscard]] inline planner::Trip read_trip(const TripOptions& options) {
    planner::Trip trip = planner::read_trip(options.trip, options.settings);
    if (options.flow)
        planner::ask_flow(trip, *options.flow);
    return trip;
}

} // namespace tumpline::cli
