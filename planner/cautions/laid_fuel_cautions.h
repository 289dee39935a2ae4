#pragma once

#include "planner/caution.h"
#include "planner/results/assembly.h"

#include <vector>

namespace tumpline::planner {

/// Fuel that is to be left and is not there, days that lack it because it lies elsewhere, and the
/// container that it needs.
[[nodiscard]] std::vector<Caution> laid_fuel_cautions(const Assembly& draft);

} // namespace tumpline::planner
