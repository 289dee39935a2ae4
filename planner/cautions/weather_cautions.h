#pragma once

#include "planner/caution.h"
#include "planner/plan.h"
#include "planner/results/assembly.h"

#include <vector>

namespace tumpline::planner {

/// What the weather of each place and hour asks for: waves, a wind that rises, heat by humidity,
/// wind chill, frost, cool water, thunderstorms, and the wish to be in camp before dark.
[[nodiscard]] std::vector<Caution> weather_cautions(const Assembly& draft, const Plan& plan);

} // namespace tumpline::planner
