#pragma once

#include "geo/light/sun.h"
#include "planner/trip/trip.h"

#include <optional>
#include <string_view>

/// Days of the trip as dates, and times on them as instants.
namespace tumpline::planner {

/// When the trip's days begin.
struct TripDays {
    Date start;
    std::string_view time_zone;
    double first_set_off_s; ///< local time of day, on day 1
    double set_off_s;       ///< on the others
};

/// The date of a day of the trip (from 1).
[[nodiscard]] Date date_of(Date start, int day);

/// A time on a day of the trip (from 1).
struct DayTime {
    int day;
    double after_midnight_s;
};

/// The instant, counted from the day's setting off by the clock so that a change of the clocks
/// within the day moves nothing.
[[nodiscard]] geo::sys_seconds instant(const TripDays& days, const DayTime& time);

/// The dusk that ends a day, if it has one; a dusk just after midnight is that of the evening
/// before.
[[nodiscard]] std::optional<geo::sys_seconds> evening_dusk(const geo::Daylight& light);

/// Whether a place is closed on a date.
[[nodiscard]] bool is_closed(const TripPlace& place, Date date);

} // namespace tumpline::planner
