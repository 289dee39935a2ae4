#pragma once

#include "geo/light/sun.h"
#include "planner/trip/trip.h"

#include <optional>
#include <string_view>
#include <vector>

/// When what runs by a timetable runs.
namespace tumpline::planner {

/// How long one waits for a departure at most before the plan says that there is none.
inline constexpr int longest_wait_days = 30;

/// A span of time, both ends included.
struct TimeSpan {
    geo::sys_seconds from;
    geo::sys_seconds until;
};

/// Every hour of a timetable within a span, in order, each once. Hours are local ones; one that a
/// change of the clocks leaves out is taken as the moment of the change.
[[nodiscard]] std::vector<geo::sys_seconds> departures(const std::vector<TimetableHour>& times,
                                                       const TimeSpan& span,
                                                       std::string_view time_zone);

/// The first of them; none within the span.
[[nodiscard]] std::optional<geo::sys_seconds> first_departure(
    const std::vector<TimetableHour>& times, const TimeSpan& span, std::string_view time_zone);

/// A day's first moment in a zone.
[[nodiscard]] geo::sys_seconds midnight_of(Date date, std::string_view time_zone);

/// The arrival with which a party comes to the start of its trip.
struct ArrivalAtStart {
    geo::sys_seconds at{};
    bool moves_set_off = false; ///< with its margin it is later than the trip wants to set off
};

/// On the day of the start the last arrival that leaves its margin until the set-off; else the
/// first one of that day. None: nothing arrives on that day.
[[nodiscard]] std::optional<ArrivalAtStart> arrival_at_start(const Connection& connection,
                                                             Date start,
                                                             geo::sys_seconds set_off,
                                                             std::string_view time_zone);

} // namespace tumpline::planner
