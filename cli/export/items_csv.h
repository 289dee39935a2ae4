#pragma once

#include "planner/plan.h"

#include <string>

namespace tumpline::cli {

/// The things of the kit and the boats as a table: a line per row of `Plan::items`, in their order;
/// the same as `items[]` of the plan as JSON.
[[nodiscard]] std::string items_csv(const planner::Plan& plan);

} // namespace tumpline::cli
