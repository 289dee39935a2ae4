#pragma once

#include "planner/plan.h"

namespace tumpline::test {

/// A finished plan written by hand, so that whoever shows plans can be tested without the engine.
/// Three days, two people, two boats: a pass, a lake, a carry, a river that a night cuts in two,
/// and a path out. Route, people and figures are invented; sums and times agree with each other.
[[nodiscard]] planner::Plan hand_built_plan();

} // namespace tumpline::test
