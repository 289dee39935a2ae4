#pragma once

#include "cli/commands/trip_options.h"
#include "cli/console.h"

namespace tumpline::cli {

enum class PlanFormat { text, json, csv };

struct PlanOptions {
    TripOptions trip;
    PlanFormat format = PlanFormat::text;
};

/// Computes the plan and prints it: days, legs, portages, loads, cautions.
/// Answers ExitCode::no_plan, with the plan printed, if it cannot be done, and where `strict` also
/// if it breaks what was asked.
[[nodiscard]] ExitCode plan(const PlanOptions& options, Console console);

} // namespace tumpline::cli
