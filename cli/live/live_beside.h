#pragma once

#include "cli/live/live_maker.h"
#include "cli/live/loopback_server.h"
#include "cli/words/json_values.h"
#include "planner/decisions/compare.h"
#include "planner/decisions/nights_compared.h"
#include "planner/decisions/odds.h"

#include <string>

/// What the live page asks beside the plan: odds, nights, plans side by side.
namespace tumpline::cli {

/// Odds, told while they are drawn: lines of {"done", "draws"}, at last {"seen", "odds", "view"}.
[[nodiscard]] Reply odds_reply(LiveMaker& maker, const std::string& body);
[[nodiscard]] Reply nights_reply(LiveMaker& maker, const std::string& body);
[[nodiscard]] Reply compare_reply(LiveMaker& maker, const std::string& body);

/// The same as the page shows them.
[[nodiscard]] Json odds_view(const planner::Odds& odds, const Figures& shown);
[[nodiscard]] Json nights_view(const planner::NightsPlan& nights, const Figures& shown);
[[nodiscard]] Json compare_view(const planner::Comparison& comparison, const Figures& shown);

} // namespace tumpline::cli
