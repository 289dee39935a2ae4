#pragma once

#include "planner/decisions/craft_compared.h"

#include <string>
#include <string_view>

namespace tumpline::cli {

/// The comparison as JSON; keys in docs/craft.md, SI units in their suffixes.
[[nodiscard]] std::string craft_json(const planner::CraftComparison& compared,
                                     std::string_view version);

} // namespace tumpline::cli
