#pragma once

#include "cli/console.h"
#include "planner/quantities/quantities.h"

#include <filesystem>
#include <vector>

namespace tumpline::cli {

struct NewOptions {
    std::vector<std::filesystem::path> tracks;
    std::vector<std::filesystem::path> elevation;
    std::filesystem::path output;
    planner::UnitSystem units = planner::UnitSystem::metric;
};

/// Writes a first trip file from tracks (docs/new.md) and tells what was recognised and from what.
/// Throws: geo::InputError if a file cannot be read, or if the output is there already.
[[nodiscard]] ExitCode new_trip(const NewOptions& options, Console console);

} // namespace tumpline::cli
