#pragma once

#include "cli/words/reader.h"
#include "planner/decisions/odds.h"

#include <string>

namespace tumpline::cli {

/// The odds for people: arrivals day by day, appointments, food and water, packs, what matters
/// most, and what these odds do not cover; at most `line_columns` wide.
[[nodiscard]] std::string odds_text(const planner::Odds& odds, const Reader& reader);

} // namespace tumpline::cli
