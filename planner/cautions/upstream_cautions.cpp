#include "planner/cautions/upstream_cautions.h"

#include "planner/cautions/caution_list.h"
#include "planner/quantities/quantities.h"

#include <set>

namespace tumpline::planner {

std::vector<Caution> upstream_cautions(const Assembly& draft, const Plan& plan) {
    CautionList list;
    std::set<LegNumber> told;
    for (const PlanLeg& leg : plan.legs) {
        const RouteLeg& on_map = draft.prepared.route.legs[leg.leg.index()];
        if (!afloat(leg.travel) || !on_map.water_rises_m || !told.insert(leg.leg).second)
            continue;
        list.at(leg.day, leg.leg);
        const UnitText rises = format_both(
            "By heights {} the water rises {} from the start of this leg to its end, more than "
            "their noise:",
            on_map.profile.source == geo::HeightSource::raster ? "of the raster" : "recorded there",
            in_both(show_height, *on_map.water_rises_m));
        if (leg.current_mps > 0.0)
            list.add(Level::stop,
                     "water-rises",
                     format_both("{} this way one goes up the river, and {} of current are "
                                 "against the boat where the plan counts them with it. Turn the "
                                 "leg round (change its \"from\" and \"to\", or the order of the "
                                 "legs), or give the current as negative.",
                                 rises,
                                 in_both(show_speed, leg.current_mps)),
                     "docs/route.md");
        else
            list.add(Level::caution,
                     "water-rises",
                     format_both("{} this way one paddles up the river. Turn the leg round, or "
                                 "give its \"current\" as negative.",
                                 rises),
                     "docs/route.md");
    }
    return list.take();
}

} // namespace tumpline::planner
