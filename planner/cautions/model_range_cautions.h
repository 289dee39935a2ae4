#pragma once

#include "planner/results/assembly.h"

#include <vector>

namespace tumpline::planner {

/// Where a model is used outside the range for which it is known to hold: one note for each leg and
/// model with the value and the range, or one for the trip where the value does not change from
/// leg to leg; and what is drunk beyond what a body should take in.
[[nodiscard]] std::vector<Caution> range_cautions(const Assembly& draft, const Plan& plan);

} // namespace tumpline::planner
