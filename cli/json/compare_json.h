#pragma once

#include "planner/decisions/compare.h"

#include <nlohmann/json_fwd.hpp>

#include <string>
#include <string_view>
#include <vector>

namespace tumpline::cli {

/// The comparison as JSON; keys in docs/commands.md, SI units in their suffixes.
[[nodiscard]] std::string compare_json(const planner::Comparison& comparison,
                                       const std::vector<std::string>& labels,
                                       std::string_view version);

/// The same before it is written, for an answer that it is a part of.
[[nodiscard]] nlohmann::ordered_json compare_json_value(const planner::Comparison& comparison,
                                                        const std::vector<std::string>& labels,
                                                        std::string_view version);

} // namespace tumpline::cli
