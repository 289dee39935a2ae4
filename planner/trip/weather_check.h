#pragma once

#include "planner/trip/trip.h"
#include "planner/trip/value_reader.h"

namespace tumpline::planner {

/// What entries of the weather say together: no low above its high, no gusts below their wind, legs
/// that there are, dates that fall into a trip whose start is known.
void check_weather(const Trip& trip, Problems& problems);

} // namespace tumpline::planner
