#include "planner/journey/provisions.h"
#include "planner/quantities/quantities.h"

#include <algorithm>
#include <utility>

namespace tumpline::planner {

namespace {

constexpr double morning_share =
    1.0 / 3.0; // of a camp's litres; [R14]-style supper, night, breakfast
constexpr double carried_where_found_l = 1.0; // where water is taken to be everywhere on the way

/// From arriving on a day of the timeline to setting off on the next.
double stay_s(const Timeline& timeline, const Assumed& assumed, std::size_t d) {
    const DaySpan& next = timeline.days[d + 1];
    const double set_off_s =
        next.first < next.last ? timeline.stretches[next.first].start_s : assumed.times.set_off_s;
    return s_per_day + set_off_s - timeline.arrive_s[d];
}

} // namespace

double drunk_under_way_l(const AssumedWater& water, const Stretch& stretch, const UnderWay& time) {
    double moving_lps = water.walking_lps;
    switch (stretch.travel) {
    case Travel::walk:
        moving_lps += stretch.steep_share * (water.climbing_lps - water.walking_lps);
        break;
    case Travel::portage:
        moving_lps = water.carrying_lps;
        break;
    case Travel::paddle:
        moving_lps = water.paddling_lps;
        break;
    }
    return moving_lps * time.moving_s + std::min(water.halting_lps, moving_lps) * time.halts_s;
}

double used_in_camp_l(const AssumedWater& water, double stay_s) {
    return water.camp_l.value_or(water.kitchen_l + std::max(0.0, stay_s) * water.camp_lps);
}

WaterCarry carry_water(const Assumed& assumed, const Stretches& route, const Timeline& timeline) {
    const AssumedWater& water = assumed.water;
    const std::size_t count = route.stretches.size();
    WaterCarry carry{};
    carry.fill_l.assign(count + 1, 0.0);
    carry.drunk_l.assign(count, 0.0);
    carry.scooped_l.assign(count, 0.0);
    carry.held_least_l = water.reserve_l;
    const auto wet = [&](std::size_t boundary) {
        return water.assumed_everywhere || route.boundaries[boundary].water;
    };
    std::size_t source = 0; // where the vessels were last filled
    WaterCarry::Run run{0, 0, 1, 1, 0.0, 0.0, 0, {}, 0.0};
    const auto close = [&](std::size_t boundary, int day) {
        if (run.need_l > 0.0) {
            run.to_boundary = boundary;
            run.last_day = day;
            if (water.assumed_everywhere && run.dry_nights == 0 &&
                run.need_l > carried_where_found_l) {
                // Only so much at a time is carried; the rest is found on the way.
                const double kept = carried_where_found_l / run.need_l;
                for (std::size_t i = source; i < boundary; ++i) {
                    carry.scooped_l[i] += carry.drunk_l[i] * (1.0 - kept);
                    carry.drunk_l[i] *= kept;
                }
                run.need_l = carried_where_found_l;
            }
            carry.fill_l[source] += run.need_l;
            carry.runs.push_back(std::move(run));
        }
        source = boundary;
        run = {boundary, boundary, day, day, 0.0, 0.0, 0, {}, 0.0};
    };
    carry.fill_l[0] = water.reserve_l;
    double night_l = 0.0;
    for (std::size_t d = 0; d < timeline.days.size(); ++d) {
        const DaySpan& day = timeline.days[d];
        const bool last = d + 1 == timeline.days.size();
        const bool dry_morning = d > 0 && !wet(day.first);
        const double morning_l = night_l * morning_share; // of the night before
        night_l = last ? 0.0 : used_in_camp_l(water, stay_s(timeline, assumed, d));
        if (dry_morning) {
            run.need_l += morning_l;
            run.camps_l += morning_l;
        }
        for (std::size_t i = day.first; i < day.last; ++i) {
            if (wet(i) && i != source)
                close(i, day.day);
            const StretchTime& time = timeline.stretches[i];
            const double litres =
                drunk_under_way_l(water, route.stretches[i], {time.moving_s, time.still_s()});
            if (route.stretches[i].drinkable) {
                carry.scooped_l[i] = litres;
            } else {
                carry.drunk_l[i] = litres;
                run.need_l += litres;
                run.hours += (time.moving_s + time.still_s()) / 3600.0;
            }
        }
        const bool dry_evening = !last && !wet(day.last);
        const double evening_l = night_l * (1.0 - morning_share);
        if (dry_evening) {
            run.need_l += evening_l;
            run.camps_l += evening_l;
            ++run.dry_nights;
            run.dry_days.push_back(d);
        }
        carry.dry_camp.push_back(dry_evening);
        carry.camp_l.push_back({morning_l, evening_l});
        carry.camp_from_pack.push_back({dry_morning, dry_evening});
    }
    close(count, timeline.days.empty() ? 1 : timeline.days.back().day);
    return carry;
}

} // namespace tumpline::planner
