#pragma once

#include "planner/journey/energy.h"
#include "planner/loads/loads.h"

namespace tumpline::planner {

/// What everyone bears, as the energy asks for it.
[[nodiscard]] Burdens burdens_of(const Stretches& stretches, const Loads& loads);

} // namespace tumpline::planner
