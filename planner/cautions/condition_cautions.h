#pragma once

#include "planner/results/assembly.h"

#include <vector>

namespace tumpline::planner {

/// What is to be said of air and water: heat, ice, conditions of things that are missed narrowly,
/// and what is not known on a leg where it matters.
[[nodiscard]] std::vector<Caution> condition_cautions(const Assembly& draft, const Plan& plan);

} // namespace tumpline::planner
