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
        switch (route.stretches[i].travel) {
        case Travel::paddle: {
            // Boats stay inflated for another paddle and for a portage that takes them whole.
            const bool more = i + 1 < route.stretches.size();
            const Travel next = more ? route.stretches[i + 1].travel : Travel::walk;
            afloat[i + 1] = next == Travel::paddle ||
                            (next == Travel::portage && boats[i + 1] == BoatState::whole);
            break;
        }
        case Travel::portage: {
            const bool more = i + 1 < route.stretches.size();
            afloat[i + 1] = afloat[i] && more && route.stretches[i + 1].travel != Travel::walk;
            break;
        }
        case Travel::walk:
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
        if (travel == Travel::paddle) {
            if (!after_portage && !afloat[i])
                time.before = rig;
            else if (morning[i])
                time.before = landing;
            if (evening[i] && afloat[i + 1])
                time.after = landing;
            else if (!before_portage && !afloat[i + 1])
                time.after = stow;
        } else if (travel == Travel::portage) {
            const bool after_water = i > 0 && stretches[i - 1].travel == Travel::paddle;
            const bool to_water =
                i + 1 < stretches.size() && stretches[i + 1].travel == Travel::paddle;
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
            so_far_s += by_day_s[next] * (dark ? stretches.stretches[next].dark_factor : 1.0);
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

void run_clock(Timeline& timeline,
               const Stretches& route,
               const std::vector<Darkness>& darkness,
               const Assumed& assumed) {
    timeline.arrive_s.assign(timeline.days.size(), 0.0);
    for (std::size_t d = 0; d < timeline.days.size(); ++d) {
        const DaySpan& day = timeline.days[d];
        double at_s = day.day == 1 ? assumed.times.first_set_off_s : assumed.times.set_off_s;
        double moved_s = 0.0;
        for (std::size_t i = day.first; i < day.last; ++i) {
            StretchTime& time = timeline.stretches[i];
            time.day = day.day;
            time.start_s = at_s;
            time.moved_before_s = moved_s;
            const Walked moved = walked({.start_s = at_s + time.before.lasts_s,
                                         .by_day_s = time.by_day_s,
                                         .moved_before_s = moved_s,
                                         .rest_per_hour_s = assumed.times.rest_per_hour_s,
                                         .dark_factor = route.stretches[i].dark_factor},
                                        darkness[d]);
            time.moving_s = moved.moving_s;
            time.dark_s = moved.dark_s;
            const double before_h = std::floor(moved_s / s_per_h);
            moved_s += time.moving_s;
            double after_h = std::floor(moved_s / s_per_h);
            if (i + 1 == day.last && after_h * s_per_h == moved_s && after_h > before_h)
                after_h -= 1.0; // nobody rests at the door of the camp
            time.rests = static_cast<int>(after_h - before_h);
            time.rest_s = time.rests * assumed.times.rest_per_hour_s;
            at_s += time.moving_s + time.rest_s + time.change_s();
            time.end_s = at_s;
        }
        timeline.arrive_s[d] = at_s;
    }
}

} // namespace tumpline::planner
