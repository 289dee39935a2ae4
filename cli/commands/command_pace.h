#pragma once

#include "cli/console.h"
#include "planner/quantities/quantities.h"

#include <filesystem>
#include <string>
#include <vector>

namespace tumpline::cli {

enum class PaceFormat { text, json };

struct PaceOptions {
    std::vector<std::filesystem::path> recorded;
    std::vector<std::filesystem::path> elevation;
    std::string walking;           ///< a walking model's name; empty: the default
    std::string body;              ///< mass of the person, and
    std::string load;              ///< what was carried and worn; both or neither
    std::filesystem::path against; ///< the trip file of the recorded trip; empty: none
    PaceFormat format = PaceFormat::text;
    planner::UnitSystem units = planner::UnitSystem::metric;
};

/// Learns a person's pace from recorded tracks (docs/pace.md) and prints it with its spread, the
/// hours behind each figure and the lines for a trip file.
/// Throws: geo::InputError if a file cannot be read, holds no times, or an option cannot be
/// understood.
[[nodiscard]] ExitCode pace(const PaceOptions& options, Console console);

} // namespace tumpline::cli
