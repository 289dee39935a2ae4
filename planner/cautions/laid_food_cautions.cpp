#include "planner/cautions/laid_food_cautions.h"

#include "planner/cautions/laid_stores.h"
#include "planner/quantities/milligrams.h"
#include "planner/quantities/quantities.h"
#include "planner/quantities/spelling.h"

#include <string_view>

namespace tumpline::planner {

namespace {

constexpr std::string_view food_source = "docs/left.md#food";

bool lays_food(const Leave& leave) {
    return leave.food_kg.has_value();
}

} // namespace

std::vector<Caution> laid_food_cautions(const Assembly& draft) {
    CautionList list;
    const Loads& loads = draft.settled.loads;
    for (const StoreLaid& laid : loads.food_laid) {
        if (!is_too_much(laid))
            continue;
        at_leave(list, draft, laid.leave);
        list.add(Level::stop,
                 "food-not-carried",
                 format_both("{} of food are to be left at {}, and the packs hold {} there that is "
                             "to be eaten; the reserve stays with the party. Leave no more than "
                             "that.",
                             in_both(show_mass, mg_to_kg(laid.wanted_mg)),
                             draft.prepared.trip.leaves[laid.leave].at,
                             in_both(show_mass, mg_to_kg(laid.carried_mg))),
                 food_source);
    }
    for (const DayShort& day : short_by_day(loads.food_short)) {
        at_meal(list, draft, *day.first);
        list.add(Level::stop,
                 "no-food",
                 format_both("Day {} lacks {} of {} (without packaging) for {}: it lies {}. Leave "
                             "less, or fetch it before.",
                             day.first->day,
                             in_both(show_mass, mg_to_kg(day.lacks_mg)),
                             in_both(show_mass, mg_to_kg(day.needs_mg)),
                             listed(day.meals),
                             where_it_lies(draft, *day.first, lays_food)),
                 food_source);
    }
    return list.take();
}

} // namespace tumpline::planner
