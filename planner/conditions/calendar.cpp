#include "planner/conditions/calendar.h"

#include "geo/light/time_zone.h"

#include <algorithm>
#include <chrono>
#include <cmath>

namespace tumpline::planner {

Date date_of(Date start, int day) {
    return std::chrono::sys_days{start} + std::chrono::days{day - 1};
}

geo::sys_seconds instant(const TripDays& days, const DayTime& time) {
    const double set_off_s = time.day == 1 ? days.first_set_off_s : days.set_off_s;
    const std::chrono::local_days midnight{date_of(days.start, time.day)};
    const geo::sys_seconds set_off =
        geo::to_instant(midnight + std::chrono::seconds{std::llround(set_off_s)}, days.time_zone);
    return set_off + std::chrono::seconds{std::llround(time.after_midnight_s - set_off_s)};
}

std::optional<geo::sys_seconds> evening_dusk(const geo::Daylight& light) {
    const geo::SunCrossings& twilight = light.twilight;
    if (twilight.rise && twilight.set && *twilight.set < *twilight.rise)
        return {};
    return twilight.set;
}

bool is_closed(const TripPlace& place, Date date) {
    if (std::find(place.closed.begin(), place.closed.end(), date) != place.closed.end())
        return true;
    const auto weekday = std::chrono::weekday{std::chrono::sys_days{date}}.iso_encoding();
    return std::find(place.closed_weekdays.begin(),
                     place.closed_weekdays.end(),
                     static_cast<int>(weekday)) != place.closed_weekdays.end();
}

} // namespace tumpline::planner
