#pragma once

#include "planner/results/assembly.h"

#include <vector>

namespace tumpline::planner {

/// Rivers that rise in the direction in which they are taken to flow.
[[nodiscard]] std::vector<Caution> upstream_cautions(const Assembly& draft, const Plan& plan);

} // namespace tumpline::planner
