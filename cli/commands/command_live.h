#pragma once

#include "cli/console.h"
#include "planner/quantities/quantities.h"

#include <filesystem>
#include <optional>

namespace tumpline::cli {

struct LiveOptions {
    std::filesystem::path trip;
    int port = 0;      ///< 0: any free one
    bool open = false; ///< also start the desktop's browser
    std::optional<planner::UnitSystem> units;
};

/// Serves the live page of a trip on 127.0.0.1 until it is told to end (docs/live.md), and prints
/// its address. A trip that cannot be read yet is shown with its problems.
/// Throws: geo::InputError if there is no such file or the port is taken.
[[nodiscard]] ExitCode live(const LiveOptions& options, Console console);

} // namespace tumpline::cli
