#pragma once

#include "planner/loads/ledger.h"
#include "planner/quantities/leg_number.h"

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace tumpline::planner {

struct LaidThing {
    Part part = Part::kit; ///< kit, craft, food, fuel or water
    std::size_t index = 0; ///< into Trip::kit or Trip::craft; of the others nothing
    std::string what = {};
    int count = 1;
    double mass_kg = 0.0; ///< as it is when left, with the water that clings to it
};

/// What lies at one place until it is fetched.
struct LaidThings {
    std::size_t leave = 0; ///< index into Trip::leaves
    std::string at = {};
    int day = 1;          ///< on which it is left
    LegNumber leg = {};   ///< of the route, the first without it
    double along_m = 0.0; ///< along the route
    std::optional<int> fetch_day = {};
    std::optional<LegNumber> fetch_leg = {}; ///< the last without it
    std::optional<double> fetch_along_m = {};
    double mass_kg = 0.0; ///< of all, as left
    std::vector<LaidThing> things = {};
};

} // namespace tumpline::planner
