#include "planner/decisions/craft_margins.h"

#include "planner/defaults/wind_shy.h"

#include <algorithm>
#include <cstddef>

namespace tumpline::planner {

namespace {

void add_missing(CraftMargin& margin, const std::string& name) {
    if (std::find(margin.missing.begin(), margin.missing.end(), name) == margin.missing.end())
        margin.missing.push_back(name);
}

struct Left {
    double left = 0.0;
    const std::string& craft;
    PlanLegNumber plan_leg = {};
};

void take(CraftMargin& margin, const Left& here) {
    if (margin.left && *margin.left <= here.left)
        return;
    margin.left = here.left;
    margin.craft = here.craft;
    margin.plan_leg = here.plan_leg;
}

bool is_afloat(const PlanLeg& leg) {
    return afloat(leg.travel);
}

} // namespace

CraftMargin class_margin(const Plan& plan, const Route& route) {
    CraftMargin margin;
    for (std::size_t i = 0; i < plan.legs.size(); ++i) {
        const PlanLeg& leg = plan.legs[i];
        const TripLeg& spec = route.legs[leg.leg.index()].spec;
        if (!aboard(leg.travel) || (!spec.river_class && spec.on_water() != Water::river))
            continue;
        margin.asked = true;
        if (!spec.river_class)
            add_missing(margin, leg.name);
        for (const Craft& craft : plan.trip.craft) {
            if (!craft.river_class)
                add_missing(margin, craft.name);
            else if (spec.river_class)
                take(margin,
                     {.left = static_cast<double>(*craft.river_class - *spec.river_class),
                      .craft = craft.name,
                      .plan_leg = PlanLegNumber::of_index(i)});
        }
    }
    return margin;
}

CraftMargin payload_margin(const Plan& plan) {
    CraftMargin margin;
    for (std::size_t i = 0; i < plan.legs.size(); ++i) {
        if (!is_afloat(plan.legs[i]))
            continue;
        margin.asked = true;
        for (const CraftLoad& load : plan.legs[i].craft)
            if (load.payload_kg <= 0.0)
                add_missing(margin, load.craft);
            else
                take(margin,
                     {.left = load.payload_kg - load.load_kg,
                      .craft = load.craft,
                      .plan_leg = PlanLegNumber::of_index(i)});
    }
    return margin;
}

std::optional<CraftWind> wind_that_stops(const Plan& plan) {
    if (std::none_of(plan.legs.begin(), plan.legs.end(), is_afloat))
        return {};
    const Assumed assumed = assume(plan.trip);
    const std::optional<std::size_t> first = most_wind_shy(assumed.craft);
    if (!first)
        return {};
    return CraftWind{.ceiling_mps = assumed.craft[*first].wind_ceiling_mps,
                     .craft = plan.trip.craft[*first].name,
                     .assumed = !plan.trip.craft[*first].wind_ceiling_mps};
}

} // namespace tumpline::planner
