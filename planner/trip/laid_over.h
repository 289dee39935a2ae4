#pragma once

#include "planner/trip/trip.h"

namespace tumpline::planner {

/// `over` laid on `under`, key by key. Gusts belong to the wind that they were given with: weaker
/// ones than a later wind are forgotten.
[[nodiscard]] Weather laid_over(Weather under, const Weather& over);

} // namespace tumpline::planner
