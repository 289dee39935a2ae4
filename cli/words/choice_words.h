#pragma once

#include "planner/plan.h"
#include "planner/quantities/quantities.h"

#include <string>
#include <vector>

/// What one could do otherwise, in words: the same on paper and on the terminal.
namespace tumpline::cli {

/// Whose packs are over their limits, and what would mend it, a sentence or two each; nothing if
/// none is.
[[nodiscard]] std::vector<std::string> remedy_lines(const planner::Plan& plan,
                                                    planner::UnitSystem units);

/// The trip by its alternatives: a row of figures each, and what letters stand for.
struct WaysTable {
    struct Row {
        std::string name; ///< "as planned", else a letter
        std::string length, on_foot, ascent, under_way;
        int days = 0;
        std::string energy, heaviest, of_limit, borne;
    };

    std::vector<Row> rows;
    std::vector<std::string> remarks; ///< what the letters stand for
};

/// Empty without alternatives.
[[nodiscard]] WaysTable ways_table(const planner::Plan& plan, planner::UnitSystem units);

} // namespace tumpline::cli
