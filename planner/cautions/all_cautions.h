#pragma once

#include "planner/results/assembly.h"

#include <vector>

namespace tumpline::planner {

/// Everything the reader must know beside the figures of `plan`, whose other parts are filled.
[[nodiscard]] std::vector<Caution> plan_cautions(const Assembly& draft, const Plan& plan);

} // namespace tumpline::planner
