#pragma once

#include "planner/results/assembly.h"

#include <vector>

namespace tumpline::planner {

/// What is to be said of what people bear.
[[nodiscard]] std::vector<Caution> load_cautions(const Assembly& draft, const Plan& plan);

} // namespace tumpline::planner
