#pragma once

#include "planner/results/assembly.h"

#include <vector>

namespace tumpline::planner {

/// What children of the party bear, eat and keep up with.
[[nodiscard]] std::vector<Caution> child_cautions(const Assembly& draft, const Plan& plan);

} // namespace tumpline::planner
