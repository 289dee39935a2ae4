#pragma once

#include "planner/results/assembly.h"

#include <vector>

namespace tumpline::planner {

/// Connections that do not run when they are needed, waiting for them, and permits that cannot be
/// had as the plan needs them.
[[nodiscard]] std::vector<Caution> calendar_cautions(const Assembly& draft, const Plan& plan);

} // namespace tumpline::planner
