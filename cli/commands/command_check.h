#pragma once

#include "cli/commands/trip_options.h"
#include "cli/console.h"

namespace tumpline::cli {

struct CheckOptions {
    TripOptions trip;
};

/// Reads the trip, its tracks and its rasters, and prints every problem with its place; plans
/// nothing. Without a problem it says what it read, with the cautions of the route.
[[nodiscard]] ExitCode check(const CheckOptions& options, Console console);

} // namespace tumpline::cli
