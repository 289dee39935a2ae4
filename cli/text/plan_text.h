#pragma once

#include "cli/words/reader.h"
#include "planner/plan.h"

#include <string>

namespace tumpline::cli {

/// The plan for people, at most `Reader::columns` wide: the verdict and what makes it, then what a
/// leader decides by on one screen, or the sections that the reader asked for; in these, cautions
/// stand beside what they concern, once each.
[[nodiscard]] std::string plan_text(const planner::Plan& plan, const Reader& reader);

/// Who carries what, leg by leg; how the bags of each craft balance; what stays at home and why.
[[nodiscard]] std::string pack_text(const planner::Plan& plan, const Reader& reader);

} // namespace tumpline::cli
