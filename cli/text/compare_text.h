#pragma once

#include "cli/words/reader.h"
#include "planner/decisions/compare.h"

#include <string>
#include <vector>

namespace tumpline::cli {

/// Plans side by side for people, under the letters A, B, …: what breaks first, then totals, days,
/// packs and appointments with their differences from A. `labels` say what each plan is.
[[nodiscard]] std::string compare_text(const planner::Comparison& comparison,
                                       const std::vector<std::string>& labels,
                                       const Reader& reader);

} // namespace tumpline::cli
