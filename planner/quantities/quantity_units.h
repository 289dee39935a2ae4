#pragma once

#include "planner/quantities/dimension.h"

#include <string_view>
#include <vector>

namespace tumpline::planner {

/// One unit with all its spellings; the first is the one that messages use.
struct Unit {
    std::vector<std::string_view> names;
    double si;                 ///< SI value of one unit
    double zero = 0.0;         ///< SI value of none of it (temperatures)
    bool time_per_way = false; ///< a pace: the SI value is `si` over the number
    bool may_follow = false;   ///< in "7 lb 4 oz" the ounces
};

/// What messages call a dimension, the units they name, and the units there are.
struct Measure {
    std::string_view noun;
    std::string_view fitting;
    std::string_view example;
    std::vector<Unit> units; ///< the first ones are offered for a bare number
};

/// The table of a dimension.
[[nodiscard]] const Measure& measure(Dimension dimension);

} // namespace tumpline::planner
