#pragma once

#include "planner/results/assembly.h"

#include <vector>

namespace tumpline::planner {

/// What is to be said of boats, wind and rivers.
[[nodiscard]] std::vector<Caution> water_cautions(const Assembly& draft, const Plan& plan);

/// What holds on any water, once.
[[nodiscard]] std::vector<Caution> usual_water_cautions(const Plan& plan);

} // namespace tumpline::planner
