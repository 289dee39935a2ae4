#pragma once

#include "cli/commands/trip_options.h"
#include "cli/console.h"
#include "cli/text/plan_text.h"
#include "planner/decisions/choices.h"
#include "planner/plan.h"

#include <filesystem>
#include <vector>

namespace tumpline::cli {

/// Reads the trip and its files and plans it, progress shown to whoever waits.
/// Throws: geo::InputError with every problem found.
[[nodiscard]] planner::Plan
planned(const TripOptions& options, const planner::Choices& choices, Console console);

/// What it takes further plans to know, as far as a reader will see it.
[[nodiscard]] inline planner::Choices choices_shown(const Show& show) {
    return {.remedies = show.wants(Section::remedies),
            .other_ways = show.wants(Section::alternatives),
            .flows = show.first_screen() || show.wants(Section::flow)};
}

/// Who reads a plan of `trip` on this console.
[[nodiscard]] inline Reader
reader_of(const TripOptions& options, const planner::Trip& trip, const Console& console) {
    return {.units = units_of(options, trip),
            .colour = console.colour,
            .columns = console.columns,
            .show = options.show};
}

/// Done, or no plan if it cannot be done, or, where asked to be `strict`, breaks what was asked.
[[nodiscard]] ExitCode exit_code(const planner::Plan& plan, bool strict);

/// Every file that is read for the trip: what an output must never replace.
[[nodiscard]] std::vector<std::filesystem::path> files_read(const TripOptions& options,
                                                            const planner::Trip& trip);

/// What a command that writes a plan to files answers; what stops the plan goes to standard error.
[[nodiscard]] ExitCode
answer_of(const planner::Plan& plan, planner::UnitSystem units, Console console);

} // namespace tumpline::cli
