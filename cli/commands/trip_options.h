#pragma once

#include "planner/quantities/quantities.h"
#include "planner/trip/trip.h"
#include "planner/trip/trip_file.h"

#include <filesystem>
#include <vector>

namespace tumpline::cli {

/// What every command that reads a trip takes.
struct TripOptions {
    std::filesystem::path trip;
    std::vector<planner::Setting> settings; ///< --set POINTER=VALUE, in their order
    planner::UnitSystem units = planner::UnitSystem::metric;
};

/// Reads the trip with its settings. Throws as planner::read_trip does.
[[nodiscard]] inline planner::Trip read_trip(const TripOptions& options) {
    return planner::read_trip(options.trip, options.settings);
}

} // namespace tumpline::cli
