#pragma once

#include "planner/results/assembly.h"

#include <vector>

namespace tumpline::planner {

/// What rules for a whole day on foot say beside the sums over its steps: Tranter's corrections for
/// members whose fitness the trip file gives, and the course constant for the day's energy on
/// paths.
[[nodiscard]] std::vector<Caution> day_rule_cautions(const Assembly& draft, const Plan& plan);

} // namespace tumpline::planner
