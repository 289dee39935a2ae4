#pragma once

#include "planner/plan.h"

/// Changes to a plan written by hand (and through it to its route), for whoever shows plans.
namespace tumpline::test {

/// The plan's days `times` over, one after the other along the route and the calendar.
[[nodiscard]] planner::Plan repeated(const planner::Plan& plan, int times);

/// Names that would break out of a document that does not keep them in: markup, quotes, line ends,
/// text from right to left, control characters, bytes that are no UTF-8, 200 letters without a gap.
[[nodiscard]] planner::Plan with_hostile_names(planner::Plan plan);

/// One person on foot on the plan's first leg; no boat, no appointment, nothing left at home.
[[nodiscard]] planner::Plan one_leg(planner::Plan plan);

/// A mark in the names of `with_hostile_names` that must come out as text.
inline constexpr const char* hostile_mark = "<script>window.broken=1</script>";

} // namespace tumpline::test
