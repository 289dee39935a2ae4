#pragma once

#include "planner/models/ford.h"
#include "planner/trip/trip.h"

#include <string>

namespace tumpline::planner {

struct Wading {
    std::string name;
    Wader wader;
};

/// Whoever of the party loses footing first. A height that is not given is taken as 1.6 m, common
/// practice, no source.
[[nodiscard]] Wading smallest_wader(const Trip& trip);

} // namespace tumpline::planner
