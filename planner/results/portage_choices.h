#pragma once

#include "planner/results/assembly.h"

#include <cstddef>
#include <vector>

namespace tumpline::planner {

/// The ways of doing the portage of a stretch, as their times fall by the clock of its day: each
/// begins when the portage does, and goes at the night's pace after dusk and before dawn. Empty
/// where the stretch is no portage.
[[nodiscard]] std::vector<CarryChoice> choices_by_clock(const Assembly& draft, std::size_t stretch);

} // namespace tumpline::planner
