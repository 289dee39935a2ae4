#pragma once

#include "planner/caution.h"
#include "planner/results/assembly.h"

#include <vector>

namespace tumpline::planner {

/// Water that is left where the weather says that it may freeze before it is fetched. Where the
/// weather says nothing of the air nothing is said here.
[[nodiscard]] std::vector<Caution> laid_water_cautions(const Assembly& draft);

} // namespace tumpline::planner
