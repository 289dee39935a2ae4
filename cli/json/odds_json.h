#pragma once

#include "planner/decisions/odds.h"

#include <nlohmann/json_fwd.hpp>

#include <string>
#include <string_view>

namespace tumpline::cli {

/// The odds as JSON: every key of docs/odds.md, SI units in the keys' suffixes. The number of
/// threads does not stand in it.
[[nodiscard]] std::string odds_json(const planner::Odds& odds, std::string_view version);

/// The same before it is written, for an answer that it is a part of.
[[nodiscard]] nlohmann::ordered_json odds_json_value(const planner::Odds& odds,
                                                     std::string_view version);

} // namespace tumpline::cli
