#include "planner/cautions/darkness_cautions.h"

#include "planner/cautions/caution_list.h"
#include "planner/quantities/quantities.h"
#include "planner/trip/vocabulary.h"

#include <fmt/format.h>

#include <string>

namespace tumpline::planner {

namespace {

constexpr RiverClass hard_to_read_in_the_dark = 2;
constexpr double shortest_s = 60.0;

} // namespace

std::vector<Caution> darkness_cautions(const Assembly& draft, const Plan& plan) {
    CautionList list;
    for (const PlanLeg& leg : plan.legs) {
        if (!afloat(leg.travel) || leg.dark_s < shortest_s)
            continue;
        const TripLeg& spec = draft.prepared.route.legs[leg.leg.index()].spec;
        const bool river = spec.on_water() == Water::river;
        const RiverClass here = spec.river_class.value_or(0);
        if (river && here < hard_to_read_in_the_dark && !led(leg.travel))
            continue;
        list.at(leg.day, leg.leg);
        const std::string hours = fmt::format(
            "{} of this leg are {} in the dark", show_duration(leg.dark_s), past_word(leg.travel));
        std::string what;
        if (led(leg.travel))
            what =
                ": neither footing, rope nor what comes down the river is seen. Be off the river "
                "by dusk.";
        else if (river)
            what =
                fmt::format(", on water of class {}: neither rocks nor trees in the water are seen "
                            "in time. Be off the river by dusk.",
                            class_word(here));
        else
            what =
                ", on open water: waves, other craft and the landing are not seen, and nobody sees "
                "who swims. Be ashore by dusk.";
        list.add(Level::caution, "after-dusk-afloat", hours + what);
    }
    return list.take();
}

} // namespace tumpline::planner
