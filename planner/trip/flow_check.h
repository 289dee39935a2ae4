#pragma once

#include "planner/trip/trip.h"
#include "planner/trip/value_reader.h"

namespace tumpline::planner {

/// Flows whose figures do not fit each other, or that do not tell a current.
void check_flows(const Trip& trip, Problems& problems);

} // namespace tumpline::planner
