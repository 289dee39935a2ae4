#include "planner/conditions/departures.h"

#include "geo/light/time_zone.h"
#include "planner/trip/timetable.h"

#include <algorithm>
#include <chrono>

namespace tumpline::planner {

using std::chrono::days;

std::vector<geo::sys_seconds> departures(const std::vector<TimetableHour>& times,
                                         const TimeSpan& span,
                                         std::string_view time_zone) {
    std::vector<geo::sys_seconds> found;
    const auto last = std::chrono::floor<days>(geo::to_local(span.until, time_zone));
    for (auto day = std::chrono::floor<days>(geo::to_local(span.from, time_zone)); day <= last;
         day += days{1})
        for (const TimetableHour& hour : times) {
            if (!runs_on(hour, Date{day}))
                continue;
            const geo::sys_seconds at = geo::to_instant(day + hour.at, time_zone);
            if (at >= span.from && at <= span.until)
                found.push_back(at);
        }
    std::sort(found.begin(), found.end());
    found.erase(std::unique(found.begin(), found.end()), found.end());
    return found;
}

std::optional<geo::sys_seconds> first_departure(const std::vector<TimetableHour>& times,
                                                const TimeSpan& span,
                                                std::string_view time_zone) {
    for (geo::sys_seconds from = span.from; from <= span.until;) {
        const Date date{std::chrono::floor<days>(geo::to_local(from, time_zone))};
        const geo::sys_seconds next = midnight_of(std::chrono::sys_days{date} + days{1}, time_zone);
        const std::vector<geo::sys_seconds> of_day = departures(
            times, {from, std::min(span.until, next - std::chrono::seconds{1})}, time_zone);
        if (!of_day.empty())
            return of_day.front();
        from = next;
    }
    return std::nullopt;
}

geo::sys_seconds midnight_of(Date date, std::string_view time_zone) {
    return geo::to_instant(std::chrono::local_days{date}, time_zone);
}

std::optional<ArrivalAtStart> arrival_at_start(const Connection& connection,
                                               Date start,
                                               geo::sys_seconds set_off,
                                               std::string_view time_zone) {
    const geo::sys_seconds midnight = midnight_of(start, time_zone);
    const Date next = std::chrono::sys_days{start} + days{1};
    const std::vector<geo::sys_seconds> all =
        departures(connection.times,
                   {midnight, midnight_of(next, time_zone) - std::chrono::seconds{1}},
                   time_zone);
    if (all.empty())
        return std::nullopt;
    const auto late = std::find_if(all.rbegin(), all.rend(), [&](geo::sys_seconds at) {
        return at + connection.margin <= set_off;
    });
    if (late != all.rend())
        return ArrivalAtStart{.at = *late, .moves_set_off = false};
    return ArrivalAtStart{.at = all.front(), .moves_set_off = true};
}

} // namespace tumpline::planner
