#pragma once

#include "cli/words/figures.h"
#include "planner/plan.h"

#include <string>
#include <vector>

/// The levels of rivers and the decision cards, in words for people.
namespace tumpline::cli {

/// The trip at each level of its rivers: a heading and a cell for each level.
struct FlowTable {
    struct Row {
        std::string what;
        std::vector<std::string> cells; ///< by level
    };

    std::vector<std::string> levels;
    std::vector<Row> rows;
    std::vector<std::string> remarks;
};

/// Empty where no river gives levels.
[[nodiscard]] FlowTable flow_table(const planner::Plan& plan, const Figures& shown);

/// What the river of a leg carries: "normal water", "14 m3/s, then 45 m3/s".
[[nodiscard]] std::string level_met(const planner::PlanFlow& flow, const Figures& shown);

/// A decision card: what it is about, and what it says, line by line.
struct CardWords {
    std::string head;
    std::vector<std::string> lines;
};

[[nodiscard]] std::vector<CardWords> card_words(const planner::Plan& plan, const Figures& shown);

} // namespace tumpline::cli
