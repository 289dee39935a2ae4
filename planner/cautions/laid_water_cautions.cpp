#include "planner/cautions/laid_water_cautions.h"

#include "planner/cautions/laid_stores.h"
#include "planner/quantities/quantities.h"

#include <fmt/format.h>

#include <algorithm>
#include <cstddef>
#include <optional>

namespace tumpline::planner {

namespace {

/// The coldest that the weather says of the place where it lies, on the days until the fetching.
std::optional<double> coldest_c(const Assembly& draft, const LaidDown& laid) {
    const std::vector<StretchTime>& times = draft.settled.timeline.stretches;
    const std::size_t left_at = *laid.left_at;
    const int first = times[left_at].day;
    const int last = laid.fetched_at ? times[*laid.fetched_at - 1].day : times.back().day;
    const RouteLeg& leg =
        draft.prepared.route.legs[draft.prepared.stretches.stretches[left_at].leg.index()];
    std::optional<double> coldest;
    for (int day = first; day <= last; ++day)
        for (const WeatherSpell& spell : draft.prepared.assumed.forecast.spells({leg, day}))
            for (const std::optional<double>& air_c : {spell.weather.low_c, spell.weather.high_c})
                if (air_c && (!coldest || *air_c < *coldest))
                    coldest = air_c;
    return coldest;
}

} // namespace

std::vector<Caution> laid_water_cautions(const Assembly& draft) {
    CautionList list;
    const std::vector<LaidDown>& all = draft.settled.loads.laid;
    for (std::size_t l = 0; l < all.size(); ++l) {
        const Leave& leave = draft.prepared.trip.leaves[l];
        if (!leave.water_l || !all[l].left_at)
            continue;
        const std::optional<double> cold_c = coldest_c(draft, all[l]);
        if (!cold_c || *cold_c >= 0.0)
            continue;
        at_leave(list, draft, l);
        Caution& caution = list.add(
            Level::caution,
            "laid-water-freezes",
            format_both("{} of water lie at {} in air down to {}: it freezes and bursts what "
                        "it is in, and the way from there counts on it. Bury or wrap it, "
                        "leave room in the vessel, or fill elsewhere.",
                        in_both(show_volume, *leave.water_l),
                        leave.at,
                        in_both(show_temperature, *cold_c)),
            common_practice);
        set_figure(caution, in_both(show_temperature, *cold_c), -*cold_c);
    }
    return list.take();
}

} // namespace tumpline::planner
