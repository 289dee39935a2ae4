#pragma once

#include "cli/commands/trip_options.h"
#include "cli/console.h"

namespace tumpline::cli {

enum class CraftFormat { text, json };

struct CraftOptions {
    TripOptions trip;
    CraftFormat format = CraftFormat::text;
};

/// Plans the trip with each boat that its file offers ("craft_choices") and prints them side by
/// side. Answers ExitCode::no_plan if none of them can be done.
/// Throws: geo::InputError on a trip that offers none.
[[nodiscard]] ExitCode craft(const CraftOptions& options, Console console);

} // namespace tumpline::cli
