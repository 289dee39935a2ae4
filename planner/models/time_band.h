#pragma once

#include <cmath>
#include <string_view>

namespace tumpline::planner {

/// Factors on a time: most parties are between `low` and `high` times the model's.
struct TimeBand {
    double low;
    double high;
    std::string_view basis; ///< where they come from, in a few words
};

/// Of a pace that is known, from the standard deviations of the logarithms by which it is off from
/// one trip to the next and from one day to the next: one of them either way, two times of three.
[[nodiscard]] inline TimeBand learned_time_band(double trip_to_trip, double day_to_day) {
    const double spread = std::hypot(trip_to_trip, day_to_day);
    return {.low = std::exp(-spread),
            .high = std::exp(spread),
            .basis = "two times of three of a pace that is known: its \"spread\" from trip to trip "
                     "and from day to day"};
}

} // namespace tumpline::planner
