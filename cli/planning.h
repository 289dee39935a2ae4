#pragma once

#include "cli/console.h"
#include "cli/trip_options.h"
#include "planner/plan.h"

namespace tumpline::cli {

/// Reads the trip and its files and plans it, progress shown to whoever waits.
/// Throws: geo::InputError with every problem found.
[[nodiscard]] planner::Plan planned(const TripOptions& options, Console console);

} // namespace tumpline::cli
