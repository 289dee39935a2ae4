#include "planner/decisions/alternatives_compared.h"

#include "geo/input_error.h"
#include "planner/decisions/compare.h"
#include "planner/make_plan.h"

#include <fmt/format.h>

#include <utility>

namespace tumpline::planner {

namespace {

/// Packs in the mean of start and end; on portages every carry over its share of the way.
double carried_kg_km(const PlanLeg& leg) {
    const double km = (leg.to_m - leg.from_m) / 1000.0;
    double sum = 0.0;
    for (const MemberLoad& load : leg.loads) {
        if (leg.travel == Travel::walk)
            sum += (load.pack_start_kg + load.pack_end_kg) / 2.0 * km;
        for (const Carry& carry : load.carries)
            sum += carry.pack_kg * carry.share * km;
    }
    return sum;
}

} // namespace

WayFigures way_figures(const Plan& plan) {
    const Totals& totals = plan.totals;
    WayFigures figures;
    figures.distance_m = totals.distance_m;
    figures.on_foot_m = totals.on_foot_m;
    figures.paddle_m = totals.paddle_m;
    figures.ascent_m = totals.ascent_m;
    figures.moving_s = totals.moving_s;
    figures.under_way_s = totals.moving_s + totals.changeover_s + totals.rest_s;
    figures.days = totals.days;
    figures.energy_j = totals.energy_j;
    for (const PlanLeg& leg : plan.legs)
        figures.carried_kg_km += carried_kg_km(leg);
    for (const Member& member : plan.trip.party)
        if (const std::optional<Heaviest> heaviest = heaviest_of(plan, member.name);
            heaviest && heaviest->pack_kg > figures.heaviest_kg) {
            figures.heaviest_kg = heaviest->pack_kg;
            figures.heaviest_member = member.name;
            figures.heaviest_of_limit = heaviest->of_limit;
        }
    for (const Caution& caution : plan.cautions)
        if (caution.level == Level::stop)
            figures.stops.push_back(caution);
    return figures;
}

OtherWays other_ways(const Plan& plan, const std::vector<OtherRoute>& others, int most_plans) {
    OtherWays compared;
    if (others.empty())
        return compared;
    compared.planned = way_figures(plan);
    int plans = most_plans;
    for (const OtherRoute& other : others) {
        OtherWay way{.instead_of = other.instead_of,
                     .by = other.by,
                     .without_boats = other.without_boats,
                     .left_home_kg = other.left_home_kg,
                     .refused = other.refused,
                     .figures = std::nullopt};
        if (way.refused.empty() && --plans < 0)
            way.refused = fmt::format("on a trip of this size only {} other ways are planned; "
                                      "leave out \"instead_of\" of the others",
                                      most_plans);
        if (way.refused.empty()) {
            try {
                way.figures = way_figures(make_plan(other.trip, other.route));
            } catch (const geo::InputError& error) { // nights out of order on this way
                way.refused = error.problems().front().found;
            }
        }
        compared.ways.push_back(std::move(way));
    }
    return compared;
}

} // namespace tumpline::planner
