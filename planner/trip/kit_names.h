#pragma once

#include "planner/trip/trip.h"

#include <string>

namespace tumpline::planner {

/// "tent" of the party's, "Ada's books"; "Ada's boots" where the name says whose they are.
[[nodiscard]] std::string name_with_owner(const KitItem& item);

} // namespace tumpline::planner
