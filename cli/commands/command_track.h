#pragma once

#include "cli/console.h"
#include "planner/quantities/quantities.h"

#include <filesystem>
#include <vector>

namespace tumpline::cli {

enum class TrackFormat { text, json };

struct TrackOptions {
    std::vector<std::filesystem::path> files;
    std::vector<std::filesystem::path> elevation;
    TrackFormat format = TrackFormat::text;
    planner::UnitSystem units = planner::UnitSystem::metric;
};

/// Prints what is in track files: each track's length, climb, descent, steepness, gaps, times and
/// the repairs made.
[[nodiscard]] ExitCode track(const TrackOptions& options, Console console);

} // namespace tumpline::cli
