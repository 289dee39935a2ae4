#pragma once

#include "geo/light/time_zone.h"
#include "planner/plan.h"
#include "planner/solution/fixed_point.h"

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

/// The steps from a settled loop to the plan that people read. Each fills its own part of the plan
/// and reads only what stands before it.
namespace tumpline::planner {

/// What the steps read.
struct Assembly {
    const Prepared& prepared;
    const Solved& settled;
};

/// The instant `after_midnight_s` into a day of the trip (from 1), counted from its setting off by
/// the clock so that a change of the clocks within the day moves nothing.
[[nodiscard]] sys_seconds instant(const Assembly& draft, int day, double after_midnight_s);

[[nodiscard]] Date date_of(const Assembly& draft, int day);

/// A boundary's name: its place, else the leg that ends or begins there, else "km 12.3".
[[nodiscard]] std::string boundary_name(const Assembly& draft, std::size_t boundary);

} // namespace tumpline::planner
