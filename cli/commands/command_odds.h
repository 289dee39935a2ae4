#pragma once

#include "cli/commands/trip_options.h"
#include "cli/console.h"

#include <cstddef>
#include <cstdint>

namespace tumpline::cli {

enum class OddsFormat { text, json };

struct OddsCommandOptions {
    TripOptions trip;
    std::size_t draws = 10'000;
    std::uint64_t seed = 1;
    std::size_t threads = 0; ///< 0: as many as the machine runs at once; changes no figure
    OddsFormat format = OddsFormat::text;
};

/// Plans the trip over seeded draws and prints the spread of what comes of it. Answers
/// ExitCode::no_plan, with the odds printed, if the plan itself cannot be done.
[[nodiscard]] ExitCode odds(const OddsCommandOptions& options, Console console);

} // namespace tumpline::cli
