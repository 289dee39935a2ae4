#pragma once

#include "cli/commands/trip_options.h"
#include "cli/console.h"

namespace tumpline::cli {

enum class PackFormat { text, json };

struct PackOptions {
    TripOptions trip;
    PackFormat format = PackFormat::text;
};

/// Plans the trip and prints who carries what, leg by leg, how the bags of each craft balance, and
/// what stays at home. Answers ExitCode::no_plan if the plan cannot be done.
[[nodiscard]] ExitCode pack(const PackOptions& options, Console console);

} // namespace tumpline::cli
