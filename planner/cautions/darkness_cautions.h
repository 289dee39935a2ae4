#pragma once

#include "planner/results/assembly.h"

#include <vector>

namespace tumpline::planner {

/// Moving water and open water after dusk or before dawn.
[[nodiscard]] std::vector<Caution> darkness_cautions(const Assembly& draft, const Plan& plan);

} // namespace tumpline::planner
