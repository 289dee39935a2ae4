#include "planner/journey/darkness.h"

#include "geo/light/sun.h"
#include "planner/conditions/calendar.h"
#include "planner/quantities/quantities.h"

#include <algorithm>
#include <optional>

namespace tumpline::planner {

namespace {

constexpr double civil_deg = -6.0; // as geo::daylight's twilight

} // namespace

double Darkness::next_change_s(double after_midnight_s) const {
    for (const double change_s : {dawn_s, dusk_s, next_dawn_s})
        if (change_s > after_midnight_s)
            return change_s;
    return HUGE_VAL;
}

Darkness darkness_on(const Assumed& assumed, int day, const geo::Position& place) {
    const geo::SunCrossings light = geo::sun_crossings(
        {.date = date_of(assumed, day), .zone = assumed.time_zone}, place, civil_deg);
    const double set_off_s = day == 1 ? assumed.times.first_set_off_s : assumed.times.set_off_s;
    const geo::sys_seconds set_off = instant(assumed, {day, set_off_s});
    const auto clock_s = [&](geo::sys_seconds moment) {
        return set_off_s + static_cast<double>((moment - set_off).count());
    };
    Darkness dark;
    if (light.day == geo::SunDay::always_below)
        dark.dawn_s = HUGE_VAL;
    if (light.rise)
        dark.dawn_s = clock_s(*light.rise);
    if (light.set) {
        dark.dusk_s = clock_s(*light.set);
        if (light.rise && *light.set < *light.rise) // that of the evening before
            dark.dusk_s += s_per_day;
    }
    if (light.rise && light.set)
        dark.next_dawn_s = dark.dawn_s + s_per_day;
    return dark;
}

Walked walked(const Walk& walk, const Darkness& darkness) {
    double at_s = walk.start_s;
    double left_s = walk.by_day_s;
    double moved_s = walk.moved_before_s;
    double dark_s = 0.0;
    double paused_s = 0.0;
    while (left_s > 0.0) {
        if (walk.pause.at(at_s)) {
            paused_s += walk.pause.to_s - at_s;
            at_s = walk.pause.to_s;
        }
        const bool dark = darkness.at(at_s);
        const double factor = dark ? walk.dark_factor : 1.0;
        const double to_rest_s = s_per_h * (std::floor(moved_s / s_per_h) + 1.0) - moved_s;
        const double step_s =
            std::min({left_s * factor,
                      to_rest_s,
                      darkness.next_change_s(at_s) - at_s,
                      at_s < walk.pause.from_s ? walk.pause.from_s - at_s : HUGE_VAL});
        dark_s += dark ? step_s : 0.0;
        at_s += step_s + (step_s == to_rest_s ? walk.rest_per_hour_s : 0.0);
        moved_s = step_s == to_rest_s ? std::round((moved_s + step_s) / s_per_h) * s_per_h
                                      : moved_s + step_s;
        left_s = step_s == left_s * factor ? 0.0 : left_s - step_s / factor;
    }
    return {walk.by_day_s + dark_s * (1.0 - 1.0 / walk.dark_factor), dark_s, paused_s};
}

} // namespace tumpline::planner
