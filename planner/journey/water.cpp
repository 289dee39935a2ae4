#include "planner/journey/provisions.h"

#include <algorithm>
#include <utility>

namespace tumpline::planner {

namespace {

constexpr double morning_share =
    1.0 / 3.0; // of a camp's litres; [R14]-style supper, night, breakfast
constexpr double carried_where_found_l = 1.0; // where water is taken to be everywhere on the way

} // namespace

double drinking_lps(const Assumed& assumed, Travel travel) {
    switch (travel) {
    case Travel::walk:
        return assumed.water.walking_lps;
    case Travel::portage:
        return assumed.water.carrying_lps;
    case Travel::paddle:
        return assumed.water.paddling_lps;
    }
    return assumed.water.walking_lps;
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
    for (std::size_t d = 0; d < timeline.days.size(); ++d) {
        const DaySpan& day = timeline.days[d];
        const bool slept_out = d > 0;
        const bool last = d + 1 == timeline.days.size();
        const bool dry_morning = slept_out && !wet(day.first);
        const double morning_l = slept_out ? water.camp_l * morning_share : 0.0;
        if (dry_morning) {
            run.need_l += morning_l;
            run.camps_l += morning_l;
        }
        for (std::size_t i = day.first; i < day.last; ++i) {
            if (wet(i) && i != source)
                close(i, day.day);
            const StretchTime& time = timeline.stretches[i];
            const double litres = drinking_lps(assumed, route.stretches[i].travel) *
                                  (time.moving_s + time.rest_s + time.change_s());
            if (route.stretches[i].drinkable) {
                carry.scooped_l[i] = litres;
            } else {
                carry.drunk_l[i] = litres;
                run.need_l += litres;
                run.hours += (time.moving_s + time.rest_s + time.change_s()) / 3600.0;
            }
        }
        const bool dry_evening = !last && !wet(day.last);
        const double evening_l = last ? 0.0 : water.camp_l * (1.0 - morning_share);
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
