#pragma once

#include "cli/words/reader.h"
#include "planner/plan.h"

#include <string>

namespace tumpline::cli {

/// The plan for people, at most `line_columns` wide: first whether it can be carried out, where the
/// packs are heaviest and whether the days end in daylight; then days, legs, carries, boats,
/// supplies, appointments, exits; cautions beside what they concern, once each.
[[nodiscard]] std::string plan_text(const planner::Plan& plan, const Reader& reader);

/// Who carries what, leg by leg; how the bags of each craft balance; what stays at home and why.
[[nodiscard]] std::string pack_text(const planner::Plan& plan, const Reader& reader);

} // namespace tumpline::cli
