#pragma once

#include "geo/light/sun.h"
#include "planner/defaults/defaults.h"
#include "planner/trip/trip.h"

#include <optional>

/// Days of the trip as dates, and times on them as instants.
namespace tumpline::planner {

/// The date of a day of the trip (from 1).
[[nodiscard]] Date date_of(const Assumed& assumed, int day);

/// A time on a day of the trip (from 1).
struct DayTime {
    int day;
    double after_midnight_s;
};

/// The instant, counted from the day's setting off by the clock so that a change of the clocks
/// within the day moves nothing.
[[nodiscard]] geo::sys_seconds instant(const Assumed& assumed, const DayTime& time);

/// The dusk that ends a day, if it has one; a dusk just after midnight is that of the evening
/// before.
[[nodiscard]] std::optional<geo::sys_seconds> evening_dusk(const geo::Daylight& light);

/// Whether a place is closed on a date.
[[nodiscard]] bool is_closed(const TripPlace& place, Date date);

} // namespace tumpline::planner
