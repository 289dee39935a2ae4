#pragma once

#include "planner/caution.h"
#include "planner/results/assembly.h"

#include <vector>

namespace tumpline::planner {

/// Water that is left where it may freeze before it is fetched, or where nobody said how cold it
/// is.
[[nodiscard]] std::vector<Caution> laid_water_cautions(const Assembly& draft);

} // namespace tumpline::planner
