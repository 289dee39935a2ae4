#include "planner/cautions/camp_cautions.h"

#include "planner/quantities/quantities.h"
#include "planner/solution/night_costs.h"

#include <fmt/format.h>

namespace tumpline::planner {

std::vector<Caution> camp_cautions(const Assembly& draft) {
    std::vector<Caution> reported;
    const Prepared& prepared = draft.prepared;
    const std::vector<DaySpan>& days = draft.settled.timeline.days;
    // Nights by hours are points on the way, where one sleeps beside a camp as well.
    const bool chosen = prepared.trip.days.nights_auto || !prepared.trip.days.nights.empty();
    const Level level = chosen ? Level::stop : Level::caution;
    for (std::size_t d = 0; d + 1 < days.size(); ++d) {
        const DaySpan& day = days[d];
        const NightLimits broken = camp_limits(prepared, day.last, {day.day, 0});
        const std::string name = boundary_name(draft, day.last);
        const auto add = [&](std::string code, std::string text) {
            reported.push_back({.level = level,
                                .code = std::move(code),
                                .day = day.day,
                                .leg = {},
                                .text = std::move(text),
                                .source = "common practice, no source"});
        };
        if ((broken & bit(NightLimit::camp_closed)) != 0)
            add("camp-closed",
                fmt::format("The camp at {} is closed on the night of {}.",
                            name,
                            show_date(date_of(draft, day.day))));
        if ((broken & bit(NightLimit::camp_full)) != 0)
            add("camp-too-small",
                fmt::format("The camp at {} holds fewer than the {} of the party.",
                            name,
                            prepared.trip.party.size()));
    }
    return reported;
}

} // namespace tumpline::planner
