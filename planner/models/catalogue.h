#pragma once

#include "planner/models/model_entry.h"

#include <vector>

namespace tumpline::planner {

/// Every model of every family, in the order in which a trip uses them: the tables that stand
/// beside the functions, joined.
[[nodiscard]] std::vector<ModelEntry> model_catalogue();

} // namespace tumpline::planner
