#pragma once

#include "cli/commands/trip_options.h"
#include "cli/console.h"
#include "planner/plan.h"

#include <filesystem>
#include <vector>

namespace tumpline::cli {

/// Reads the trip and its files and plans it, progress shown to whoever waits.
/// Throws: geo::InputError with every problem found.
[[nodiscard]] planner::Plan planned(const TripOptions& options, Console console);

/// Every file that is read for the trip: what an output must never replace.
[[nodiscard]] std::vector<std::filesystem::path> files_read(const TripOptions& options,
                                                            const planner::Trip& trip);

/// What a command that writes a plan to files answers; what stops the plan goes to standard error.
[[nodiscard]] ExitCode answer_of(const planner::Plan& plan, Console console);

} // namespace tumpline::cli
