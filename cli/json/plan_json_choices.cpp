#include "cli/json/plan_json_parts.h"
#include "cli/words/json_values.h"
#include "planner/quantities/quantities.h"

namespace tumpline::cli {

namespace {

using planner::Plan;

/// Positions in `legs` from 0.
Json plan_legs_json(const std::vector<planner::PlanLegNumber>& legs) {
    return array_of(legs, place_or_null);
}

Json overloaded_json(const planner::Overloaded& one) {
    return {{"member", one.member},
            {"limit_kg", one.limit_kg},
            {"worst_kg", one.worst_kg},
            {"over_kg", one.over_kg},
            {"days", one.days},
            {"plan_leg", place_or_null(one.plan_leg)}};
}

Json figures_json(const planner::WayFigures& figures) {
    return {{"distance_m", figures.distance_m},
            {"on_foot_m", figures.on_foot_m},
            {"paddle_m", figures.paddle_m},
            {"ascent_m", figures.ascent_m},
            {"moving_s", figures.moving_s},
            {"under_way_s", figures.under_way_s},
            {"days", figures.days},
            {"energy_kcal", figures.energy_j / planner::j_per_kcal},
            {"carried_kg_km", figures.carried_kg_km},
            {"heaviest_kg", figures.heaviest_kg},
            {"heaviest_member", name_or_null(figures.heaviest_member)},
            {"heaviest_of_limit", figures.heaviest_of_limit},
            {"stops", array_of(figures.stops, [](const planner::Caution& stop) {
                 return Json(stop.text);
             })}};
}

Json other_way_json(const planner::OtherWay& way) {
    return {{"instead_of", way.instead_of},
            {"by", way.by},
            {"without_boats", way.without_boats},
            {"left_home_kg", way.left_home_kg},
            {"refused", name_or_null(way.refused)},
            {"figures", way.figures ? figures_json(*way.figures) : Json(nullptr)}};
}

} // namespace

Json remedies_json(const Plan& plan) {
    const planner::Remedies& remedies = plan.remedies;
    Json json = {{"overloaded", array_of(remedies.overloaded, overloaded_json)},
                 {"raise_limits", nullptr},
                 {"leave_things", nullptr},
                 {"supply", nullptr},
                 {"relay", nullptr},
                 {"most_plans", remedies.most_plans},
                 {"all_tried", remedies.all_tried}};
    if (remedies.raise) {
        Json limits = Json::object();
        for (std::size_t m = 0; m < remedies.raise->limits_kg.size(); ++m)
            limits[plan.trip.party[m].name] = remedies.raise->limits_kg[m];
        json["raise_limits"] = {{"factor", remedies.raise->factor}, {"limits_kg", limits}};
    }
    if (remedies.leave)
        json["leave_things"] = {{"mass_kg", remedies.leave->mass_kg},
                                {"things", remedies.leave->things},
                                {"together", remedies.leave->together},
                                {"heaviest_of_limit", remedies.leave->heaviest_of_limit}};
    if (remedies.supply)
        json["supply"] = {{"place", remedies.supply->place},
                          {"after_day", remedies.supply->after_day},
                          {"lighter_kg", remedies.supply->lighter_kg},
                          {"heaviest_of_limit", remedies.supply->heaviest_of_limit},
                          {"enough", remedies.supply->enough}};
    if (remedies.relay)
        json["relay"] = {{"plan_legs", plan_legs_json(remedies.relay->plan_legs)},
                         {"more_s", remedies.relay->more_s},
                         {"more_on_foot_m", remedies.relay->more_on_foot_m},
                         {"dark_days", remedies.relay->dark_days},
                         {"heaviest_of_limit", remedies.relay->heaviest_of_limit},
                         {"enough", remedies.relay->enough}};
    return json;
}

Json other_ways_json(const Plan& plan) {
    if (plan.other_ways.ways.empty())
        return nullptr;
    return {{"planned", figures_json(plan.other_ways.planned)},
            {"ways", array_of(plan.other_ways.ways, other_way_json)}};
}

} // namespace tumpline::cli
