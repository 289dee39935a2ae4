#include "planner/journey/schedule.h"

#include "planner/quantities/quantities.h"

#include <algorithm>
#include <cmath>

namespace tumpline::planner {

namespace {

bool any_rolls_up(const Assumed& assumed) {
    return std::any_of(assumed.craft.begin(), assumed.craft.end(), [](const AssumedCraft& craft) {
        return craft.rolls_up;
    });
}

} // namespace

std::vector<bool> afloat_before(const Stretches& route, const std::vector<BoatState>& boats) {
    std::vector<bool> afloat(route.stretches.size() + 1, false);
    for (std::size_t i = 0; i < route.stretches.size(); ++i) {
        const bool more = i + 1 < route.stretches.size();
        const Travel next = more ? route.stretches[i + 1].travel : Travel::walk;
        switch (route.stretches[i].travel) {
        case Travel::paddle:
        case Travel::line:
        case Travel::wade:
        case Travel::pole:
            // Boats stay inflated on the water and for a portage that takes them whole.
            afloat[i + 1] = planner::afloat(next) ||
                            (next == Travel::portage && boats[i + 1] == BoatState::whole);
            break;
        case Travel::portage:
            afloat[i + 1] = afloat[i] && (planner::afloat(next) || next == Travel::portage);
            break;
        case Travel::walk:
        case Travel::ride: // a boat that does not roll up is landed, and goes along as it is
            afloat[i + 1] = false;
            break;
        }
    }
    return afloat;
}

void set_changes(std::vector<StretchTime>& times,
                 const Stretches& route,
                 const std::vector<DaySpan>& days,
                 const std::vector<BoatState>& boats,
                 const Assumed& assumed) {
    const std::vector<Stretch>& stretches = route.stretches;
    const std::vector<bool> afloat = afloat_before(route, boats);
    const bool soft = any_rolls_up(assumed);
    const Change landing{EventKind::landing, assumed.times.landing_s};
    const Change rig =
        soft ? Change{EventKind::boots_to_boat, assumed.times.boots_to_boat_s} : landing;
    const Change stow =
        soft ? Change{EventKind::boat_to_boots, assumed.times.boat_to_boots_s} : landing;
    std::vector<bool> morning(stretches.size(), false);
    std::vector<bool> evening(stretches.size(), false);
    for (const DaySpan& day : days) {
        if (day.first < day.last) {
            morning[day.first] = true;
            evening[day.last - 1] = true;
        }
    }
    for (std::size_t i = 0; i < stretches.size(); ++i) {
        StretchTime& time = times[i];
        time.before = {};
        time.after = {};
        time.scout_s = stretches[i].scouts * assumed.times.scout_s;
        const Travel travel = stretches[i].travel;
        // What the boats need at the ends of a portage is booked on the portage.
        const bool after_portage = i > 0 && stretches[i - 1].travel == Travel::portage;
        const bool before_portage =
            i + 1 < stretches.size() && stretches[i + 1].travel == Travel::portage;
        if (planner::afloat(travel)) {
            // Out of the boat to lead it, or in again.
            const bool steps_over = i > 0 && planner::afloat(stretches[i - 1].travel) &&
                                    aboard(stretches[i - 1].travel) != aboard(travel);
            if (!after_portage && !afloat[i])
                time.before = rig;
            else if (morning[i] || steps_over)
                time.before = landing;
            if (evening[i] && afloat[i + 1])
                time.after = landing;
            else if (!before_portage && !afloat[i + 1])
                time.after = stow;
        } else if (travel == Travel::portage) {
            const bool after_water = i > 0 && planner::afloat(stretches[i - 1].travel);
            const bool to_water =
                i + 1 < stretches.size() && planner::afloat(stretches[i + 1].travel);
            if (after_water)
                time.before = boats[i] == BoatState::whole ? landing : stow;
            if (to_water)
                time.after = afloat[i + 1] ? landing : rig;
            else if (afloat[i] && !afloat[i + 1])
                time.after = stow; // carried whole to where the walk begins, rolled up there
        }
    }
}

std::vector<DaySpan> days_at(const std::vector<std::size_t>& nights,
                             std::size_t stretches,
                             const std::vector<int>& rest_days_after) {
    std::vector<DaySpan> days;
    const auto rest_after = [&](int day) {
        return std::find(rest_days_after.begin(), rest_days_after.end(), day) !=
               rest_days_after.end();
    };
    std::size_t first = 0;
    int day = 1;
    const auto add = [&](std::size_t last) {
        days.push_back({day, false, first, last});
        first = last;
        // A rest day may follow a rest day; none follows the last arrival.
        while (last < stretches && rest_after(day)) {
            ++day;
            days.push_back({day, true, last, last});
        }
        ++day;
    };
    for (const std::size_t night : nights)
        if (night > first && night < stretches)
            add(night);
    add(stretches);
    return days;
}

std::vector<std::size_t> nights_by_hours(const Route& route,
                                         const Stretches& stretches,
                                         const std::vector<double>& by_day_s,
                                         const HoursWished& wished) {
    std::vector<std::size_t> nights;
    const std::size_t count = stretches.stretches.size();
    const auto is_camp = [&](std::size_t boundary) {
        const std::vector<std::size_t>& places = stretches.boundaries[boundary].places;
        return std::any_of(places.begin(), places.end(), [&](std::size_t place) {
            return route.places[place].kind == PlaceKind::camp;
        });
    };
    const double hours_s = wished.hours_s;
    const auto rests_after = [&](int day) {
        return std::find(wished.rest_days_after.begin(), wished.rest_days_after.end(), day) !=
               wished.rest_days_after.end();
    };
    std::size_t first = 0;
    int day = 1;
    while (first < count) {
        const bool dark = wished.dark_all_day(day, first);
        double so_far_s = 0.0;
        std::size_t sleep = 0;
        std::size_t camp = 0;
        std::size_t next = first;
        for (; next < count; ++next) {
            const Stretch& stretch = stretches.stretches[next];
            so_far_s += stretch.own_effort_s(by_day_s[next]) * (dark ? stretch.dark_factor : 1.0);
            if (so_far_s > hours_s && sleep != 0)
                break;
            if (!stretches.boundaries[next + 1].may_sleep)
                continue;
            sleep = next + 1;
            if (so_far_s >= 0.5 * hours_s && is_camp(sleep))
                camp = sleep;
            if (so_far_s > hours_s)
                break;
        }
        if (next >= count || sleep == 0)
            break; // the finish lies within the day
        first = camp != 0 ? camp : sleep;
        if (first < count)
            nights.push_back(first);
        while (rests_after(day))
            ++day;
        ++day;
    }
    return nights;
}

double through_spells_s(const std::vector<SpellPace>& spells, const Walk& walk) {
    double at_s = walk.start_s;
    double moved_s = 0.0;
    double left = 1.0; // of the stretch
    std::size_t k = 0;
    while (left > 0.0) {
        while (k + 1 < spells.size() && spells[k].until_s <= at_s)
            ++k;
        const double whole_s = spells[k].whole_s;
        if (whole_s <= 0.0)
            break;
        const double day_s = walk.moved_before_s + moved_s;
        const double to_rest_s = s_per_h * (std::floor(day_s / s_per_h) + 1.0) - day_s;
        const double spell_s = k + 1 < spells.size() ? spells[k].until_s - at_s : HUGE_VAL;
        const double step_s = std::min({left * whole_s, std::max(1e-3, to_rest_s), spell_s});
        const bool last = step_s == left * whole_s;
        moved_s += step_s;
        at_s += step_s + (step_s == to_rest_s ? walk.rest_per_hour_s : 0.0);
        left = last ? 0.0 : left - step_s / whole_s;
    }
    return moved_s;
}

namespace {

/// The halt of a day, if one is asked for and the day is as warm as that.
Pause pause_on(const Assumed& assumed, int day) {
    if (!assumed.halt)
        return {};
    const double warmest_c = assumed.forecast.warmest_c(day).value_or(assumed.weather.high_c);
    if (assumed.halt->above_c && warmest_c < *assumed.halt->above_c)
        return {};
    return {assumed.halt->from_s, assumed.halt->to_s};
}

} // namespace

void run_clock(Timeline& timeline,
               const Stretches& route,
               const std::vector<Darkness>& darkness,
               const Assumed& assumed) {
    timeline.arrive_s.assign(timeline.days.size(), 0.0);
    for (std::size_t d = 0; d < timeline.days.size(); ++d) {
        const DaySpan& day = timeline.days[d];
        double at_s = day.day == 1 ? assumed.times.first_set_off_s : assumed.times.set_off_s;
        double moved_s = 0.0;
        const Pause pause = pause_on(assumed, day.day);
        for (std::size_t i = day.first; i < day.last; ++i) {
            StretchTime& time = timeline.stretches[i];
            time.day = day.day;
            time.start_s = at_s;
            time.moved_before_s = moved_s;
            Walk walk{.start_s = at_s + time.before.lasts_s,
                      .by_day_s = time.by_day_s,
                      .moved_before_s = moved_s,
                      .rest_per_hour_s = assumed.times.rest_per_hour_s,
                      .dark_factor = route.stretches[i].dark_factor,
                      .pause = pause};
            const Stretch& stretch = route.stretches[i];
            time.halt_s = 0.0;
            if (stretch.afloat()) { // nobody halts amid the water: one waits on the shore
                time.halt_s = pause.at(walk.start_s) ? pause.to_s - walk.start_s : 0.0;
                time.halt_at_s = walk.start_s;
                walk.start_s += time.halt_s;
                walk.pause = {};
                if (!time.spells.empty()) {
                    time.by_day_s = through_spells_s(time.spells, walk);
                    walk.by_day_s = time.by_day_s;
                }
            }
            // Neither the dark nor the heat of the day changes a ride.
            const Walked moved =
                is_ride(stretch.travel)
                    ? Walked{.moving_s = time.by_day_s, .dark_s = 0.0, .paused_s = 0.0}
                    : walked(walk, darkness[d]);
            time.moving_s = moved.moving_s;
            time.dark_s = moved.dark_s;
            if (moved.paused_s > 0.0) {
                time.halt_at_s = std::max(pause.from_s, walk.start_s);
                time.halt_s = moved.paused_s;
            }
            const double before_h = std::floor(moved_s / s_per_h);
            moved_s += stretch.own_effort_s(time.moving_s);
            double after_h = std::floor(moved_s / s_per_h);
            if (i + 1 == day.last && after_h * s_per_h == moved_s && after_h > before_h)
                after_h -= 1.0; // nobody rests at the door of the camp
            time.rests = static_cast<int>(after_h - before_h);
            time.rest_s = time.rests * assumed.times.rest_per_hour_s;
            at_s += time.moving_s + time.still_s();
            time.end_s = at_s;
        }
        timeline.arrive_s[d] = at_s;
    }
}

} // namespace tumpline::planner
