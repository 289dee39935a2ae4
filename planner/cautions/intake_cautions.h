#pragma once

#include "planner/results/assembly.h"

#include <vector>

namespace tumpline::planner {

/// Where the trip file plans much less to eat or to drink than the models say is spent.
[[nodiscard]] std::vector<Caution> intake_cautions(const Assembly& draft, const Plan& plan);

} // namespace tumpline::planner
