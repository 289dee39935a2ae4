#include "planner/cautions/laid_fuel_cautions.h"

#include "planner/cautions/laid_stores.h"
#include "planner/quantities/milligrams.h"
#include "planner/quantities/quantities.h"
#include "planner/quantities/spelling.h"

#include <algorithm>
#include <string>
#include <string_view>

namespace tumpline::planner {

namespace {

constexpr std::string_view fuel_source = "docs/left.md#fuel";

bool lays_fuel(const Leave& leave) {
    return leave.fuel_kg.has_value();
}

} // namespace

std::vector<Caution> laid_fuel_cautions(const Assembly& draft) {
    CautionList list;
    const Loads& loads = draft.settled.loads;
    for (const StoreLaid& laid : loads.fuel_laid) {
        const std::string& at = draft.prepared.trip.leaves[laid.leave].at;
        at_leave(list, draft, laid.leave);
        if (is_too_much(laid))
            list.add(Level::stop,
                     "fuel-not-carried",
                     format_both("{} of fuel are to be left at {}, and the packs hold {} there "
                                 "that is to be burnt; the reserve stays with the party. Leave no "
                                 "more than that.",
                                 in_both(show_mass, mg_to_kg(laid.wanted_mg)),
                                 at,
                                 in_both(show_mass, mg_to_kg(laid.carried_mg))),
                     fuel_source);
        list.add(
            Level::note,
            "fuel-container",
            format_both("{} of fuel are left at {} without a container: those of the stage "
                        "stay in the pack. Bring one for it, and name it among the kit and "
                        "the \"things\".",
                        in_both(show_mass, mg_to_kg(std::min(laid.wanted_mg, laid.carried_mg))),
                        at),
            fuel_source);
    }
    for (const DayShort& day : short_by_day(loads.fuel_short)) {
        at_meal(list, draft, *day.first);
        list.add(Level::stop,
                 "no-fuel",
                 format_both("Day {} lacks {} of fuel for {}: it lies {}. Leave less, or fetch it "
                             "before.",
                             day.first->day,
                             in_both(show_mass, mg_to_kg(day.lacks_mg)),
                             listed(day.meals),
                             where_it_lies(draft, *day.first, lays_fuel)),
                 fuel_source);
    }
    return list.take();
}

} // namespace tumpline::planner
