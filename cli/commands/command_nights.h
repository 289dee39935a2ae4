#pragma once

#include "cli/commands/trip_options.h"
#include "cli/console.h"
#include "planner/decisions/nights_compared.h"

namespace tumpline::cli {

enum class NightsFormat { text, json };

struct NightsOptions {
    TripOptions trip;
    NightsFormat format = NightsFormat::text;
};

/// Finds the best places to sleep, whatever nights the trip lists, and prints them with the next
/// two and what each costs. Answers ExitCode::no_plan if the best cannot be done.
[[nodiscard]] ExitCode nights(const NightsOptions& options, Console console);

} // namespace tumpline::cli
