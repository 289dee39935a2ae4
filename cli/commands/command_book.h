#pragma once

#include "cli/commands/trip_options.h"
#include "cli/console.h"

#include <filesystem>

namespace tumpline::cli {

struct BookOptions {
    TripOptions trip;
    std::filesystem::path output;
    bool overwrite = false; ///< replace also what tumpline did not write
};

/// Plans the trip and writes its book (docs/book.md), whole or not at all and never over an input.
/// A plan that cannot be done gets its book as well, with what stops it on the first page;
/// the answer is then ExitCode::no_plan.
[[nodiscard]] ExitCode book(const BookOptions& options, Console console);

} // namespace tumpline::cli
