#pragma once

#include <string_view>

namespace tumpline::planner {

/// Factors on a time: most parties are between `low` and `high` times the model's.
struct TimeBand {
    double low;
    double high;
    std::string_view basis; ///< where they come from, in a few words
};

} // namespace tumpline::planner
