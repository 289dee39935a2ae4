#pragma once

#include "planner/plan.h"

namespace tumpline::planner {

/// Plans `trip` over `route`. Pure: the same input gives the same plan, on every machine.
/// Without `remedies`, `other_ways` and `flows`, which it takes further plans to know
/// (planner/decisions/choices.h).
[[nodiscard]] Plan make_plan(const Trip& trip, const Route& route);

/// The loop with the nights that the trip asks for.
[[nodiscard]] Solved settle_trip(const Prepared& prepared);

/// The plan of a settled loop.
[[nodiscard]] Plan assemble_plan(const Prepared& prepared, const Solved& settled);

} // namespace tumpline::planner
