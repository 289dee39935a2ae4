#pragma once

#include "planner/results/assembly.h"

#include <vector>

namespace tumpline::planner {

/// A ride that leaves no night before the next day sets off.
[[nodiscard]] std::vector<Caution> ride_cautions(const Plan& plan);

} // namespace tumpline::planner
