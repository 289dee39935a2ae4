#pragma once

#include "cli/words/reader.h"
#include "planner/decisions/nights_compared.h"
#include "planner/solution/nights.h"

#include <nlohmann/json_fwd.hpp>

#include <string>
#include <string_view>

namespace tumpline::cli {

/// The best nights, the next two and those that the trip lists, day by day with what each costs.
[[nodiscard]] std::string nights_text(const planner::NightsPlan& nights, const Reader& reader);

/// The same for programs: docs/commands.md.
[[nodiscard]] std::string nights_json(const planner::NightsPlan& nights, std::string_view version);
[[nodiscard]] nlohmann::ordered_json nights_json_value(const planner::NightsPlan& nights,
                                                       std::string_view version);

} // namespace tumpline::cli
