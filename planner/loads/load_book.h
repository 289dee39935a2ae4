#pragma once

#include "planner/loads/loads.h"

namespace tumpline::planner {

/// Books the whole trip, day by day, and reads off what everyone bears.
[[nodiscard]] Loads book_loads(const LoadInputs& inputs);

} // namespace tumpline::planner
