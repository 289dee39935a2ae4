#include "planner/solution/waiting.h"

#include "geo/light/time_zone.h"
#include "planner/conditions/departures.h"

#include <algorithm>
#include <chrono>

namespace tumpline::planner {

bool leaves_by_connection(const Trip& trip) {
    return std::any_of(trip.connections.begin(),
                       trip.connections.end(),
                       [](const Connection& connection) { return !connection.to_start; });
}

geo::sys_seconds end_reached(const Timeline& timeline, const Assumed& assumed) {
    const StretchTime& last = timeline.stretches.back();
    return instant(assumed, {last.day, last.end_s});
}

std::optional<Leaving>
first_leaving(const Trip& trip, const Assumed& assumed, geo::sys_seconds there) {
    std::optional<Leaving> first;
    for (std::size_t c = 0; c < trip.connections.size(); ++c) {
        const Connection& connection = trip.connections[c];
        if (connection.to_start)
            continue;
        const geo::sys_seconds from = there + connection.margin;
        const std::optional<geo::sys_seconds> at =
            first_departure(connection.times,
                            {from, from + std::chrono::days{longest_wait_days}},
                            assumed.time_zone);
        if (at && (!first || *at < first->at))
            first = Leaving{.connection = c, .at = *at};
    }
    return first;
}

int nights_until(const Assumed& assumed, int day, geo::sys_seconds at) {
    const auto local_day =
        std::chrono::floor<std::chrono::days>(geo::to_local(at, assumed.time_zone));
    const auto later = (local_day - std::chrono::local_days{date_of(assumed, day)}).count();
    return std::max(0, static_cast<int>(later));
}

std::optional<Waiting>
waiting_at_end(const Trip& trip, const Assumed& assumed, const Timeline& timeline) {
    if (!leaves_by_connection(trip))
        return std::nullopt;
    const std::optional<Leaving> leaving =
        first_leaving(trip, assumed, end_reached(timeline, assumed));
    if (!leaving)
        return std::nullopt;
    const int arrived = timeline.stretches.back().day;
    Waiting waiting;
    waiting.connection = leaving->connection;
    waiting.days = nights_until(assumed, arrived, leaving->at);
    const int day = arrived + waiting.days;
    const double set_off_s = day == 1 ? assumed.times.first_set_off_s : assumed.times.set_off_s;
    waiting.until_s =
        set_off_s + static_cast<double>((leaving->at - instant(assumed, {day, set_off_s})).count());
    return waiting;
}

void add_waiting(Timeline& timeline, const Waiting& waiting, const Assumed& assumed) {
    const std::size_t end = timeline.stretches.size();
    double awake_s = timeline.arrive_s.back();
    for (int more = 1; more <= waiting.days; ++more) {
        timeline.days.push_back({.day = timeline.days.back().day + 1,
                                 .rest_day = true,
                                 .first = end,
                                 .last = end,
                                 .waiting = true});
        timeline.arrive_s.push_back(assumed.times.set_off_s);
        awake_s = assumed.times.set_off_s;
    }
    if (waiting.days > 0)
        timeline.arrive_s.back() = waiting.until_s;
    timeline.waits_s = std::max(0.0, waiting.until_s - awake_s);
}

} // namespace tumpline::planner
