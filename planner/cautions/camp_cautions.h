#pragma once

#include "planner/results/assembly.h"

#include <vector>

namespace tumpline::planner {

/// Nights at camps that are closed then or too small.
[[nodiscard]] std::vector<Caution> camp_cautions(const Assembly& draft);

} // namespace tumpline::planner
