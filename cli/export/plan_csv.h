#pragma once

#include "planner/plan.h"

#include <string>

namespace tumpline::cli {

/// The legs as one table of comma-separated values for spreadsheets: a line per leg and day, three
/// columns per member. SI units in the headings, whatever the reader's units. Source: [RFC4180].
[[nodiscard]] std::string plan_csv(const planner::Plan& plan);

} // namespace tumpline::cli
