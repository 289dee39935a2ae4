#pragma once

#include "cli/console.h"
#include "cli/words/sections.h"
#include "planner/quantities/quantities.h"
#include "planner/trip/river_flow.h"
#include "planner/trip/trip_file.h"

#include <filesystem>
#include <optional>
#include <vector>

namespace tumpline::cli {

enum class CompareFormat { text, json };

struct CompareOptions {
    std::vector<std::filesystem::path> trips; ///< one with settings or levels, or 2 to 8
    /// With one trip what the other is like; with several what all of them are like.
    std::vector<planner::Setting> settings;
    /// Levels of the rivers. One: with one trip the other's, with several that of all. More: one
    /// trip, at each of them that its rivers give.
    std::vector<planner::FlowLevel> flows{};
    std::optional<planner::UnitSystem> units{}; ///< --units; else the first trip's
    Show show{};
    bool strict = false; ///< a plan that breaks what was asked is none
    CompareFormat format = CompareFormat::text;
};

/// Plans trips and prints them side by side, or one trip beside itself with other settings or
/// other levels of its rivers.
/// Answers ExitCode::no_plan if one of the plans cannot be done.
/// Throws: geo::InputError on too few or too many trips, or levels that no river gives.
[[nodiscard]] ExitCode compare(const CompareOptions& options, Console console);

} // namespace tumpline::cli
