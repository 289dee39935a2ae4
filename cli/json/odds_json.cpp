#include "cli/json/odds_json.h"

#include "cli/words/json_values.h"
#include "cli/words/words.h"
#include "geo/light/time_zone.h"

#include <utility>

namespace tumpline::cli {

namespace {

using planner::Odds;

Json quantiles(const planner::Quantiles& q) {
    return {{"q05", q.q05}, {"q10", q.q10}, {"q50", q.q50}, {"q90", q.q90}, {"q95", q.q95}};
}

Json instants(const planner::InstantQuantiles& q, const std::string& zone) {
    const auto show = [&](planner::sys_seconds at) { return geo::rfc3339(at, zone); };
    return {{"q05", show(q.q05)},
            {"q10", show(q.q10)},
            {"q50", show(q.q50)},
            {"q90", show(q.q90)},
            {"q95", show(q.q95)}};
}

Json days(const Odds& odds) {
    const std::string& zone = odds.plan.trip.time_zone;
    Json array = Json::array();
    for (const planner::OddsDay& one : odds.days) {
        const planner::PlanDay& day = odds.plan.days[static_cast<std::size_t>(one.day - 1)];
        array.push_back(
            {{"day", one.day},
             {"to", day.to},
             {"plan", geo::rfc3339(day.arrive, zone)},
             {"arrive", instants(one.arrive, zone)},
             {"after_dusk", one.after_dusk ? Json(*one.after_dusk) : Json(nullptr)},
             {"stopped", one.held_up},
             {"leading", one.leading ? Json(planner::name_of(*one.leading)) : Json(nullptr)},
             {"leading_correlation", one.leading_correlation}});
    }
    return array;
}

Json appointments(const Odds& odds) {
    const std::string& zone = odds.plan.trip.time_zone;
    Json array = Json::array();
    for (const planner::OddsAppointment& one : odds.appointments) {
        const planner::PlanAppointment& meet = odds.plan.appointments[one.appointment];
        array.push_back({{"what", meet.what},
                         {"at", meet.at},
                         {"day", meet.day},
                         {"by", geo::rfc3339(meet.by, zone)},
                         {"margin_s", meet.margin_s},
                         {"hard", meet.hard},
                         {"plan", geo::rfc3339(meet.arrive, zone)},
                         {"arrive", instants(one.arrive, zone)},
                         {"missed", one.missed},
                         {"within_margin", one.within_margin}});
    }
    return array;
}

Json departures(const Odds& odds) {
    Json array = Json::array();
    for (const planner::OddsDeparture& one : odds.departures) {
        const planner::PlanConnection& connection = odds.plan.connections[one.connection];
        array.push_back({{"what", connection.what},
                         {"at", connection.place},
                         {"departs", geo::rfc3339(one.at, odds.plan.trip.time_zone)},
                         {"planned", one.planned},
                         {"chance", one.chance}});
    }
    return array;
}

Json rivers(const Odds& odds) {
    Json array = Json::array();
    for (const planner::OddsRiver& one : odds.rivers)
        array.push_back({{"leg", one.leg},
                         {"name", one.name},
                         {"plan_mps", one.plan_mps},
                         {"current_mps", quantiles(one.current_mps)},
                         {"not_runnable", or_null(one.not_runnable)},
                         {"harder", or_null(one.harder)}});
    return array;
}

Json food(const Odds& odds) {
    Json array = Json::array();
    for (const planner::OddsStage& one : odds.stages) {
        const planner::Stage& stage = odds.plan.stages[one.stage];
        array.push_back({{"from", stage.from},
                         {"to", stage.to},
                         {"first_day", stage.first_day},
                         {"last_day", stage.last_day},
                         {"left_kg", quantiles(one.left_kg)},
                         {"runs_out", one.runs_out}});
    }
    return array;
}

Json water(const Odds& odds) {
    Json array = Json::array();
    for (const planner::OddsWater& one : odds.water) {
        const planner::WaterStretch& stretch = odds.plan.water[one.stretch];
        array.push_back({{"from", stretch.from},
                         {"to", stretch.to},
                         {"first_day", stretch.first_day},
                         {"last_day", stretch.last_day},
                         {"uses_reserve", one.uses_reserve},
                         {"needs_more", one.needs_more}});
    }
    return array;
}

Json legs(const Odds& odds) {
    Json array = Json::array();
    for (const planner::OddsLeg& one : odds.legs) {
        const planner::PlanLeg& leg = odds.plan.legs[one.plan_leg.index()];
        Json packs = Json::array();
        for (const planner::OddsPack& pack : one.packs)
            packs.push_back({{"member", pack.member},
                             {"plan_kg", pack.plan_kg},
                             {"start_kg", quantiles(pack.start_kg)},
                             {"over_limit", pack.over_limit}});
        array.push_back({{"plan_leg", place_or_null(one.plan_leg)},
                         {"leg", leg.leg},
                         {"day", leg.day},
                         {"name", leg.name},
                         {"travel", word(leg.travel)},
                         {"packs", std::move(packs)}});
    }
    return array;
}

Json influences(const Odds& odds) {
    Json array = Json::array();
    for (const planner::Influence& one : odds.influences)
        array.push_back({{"assumption", planner::name_of(one.assumption)},
                         {"spread", one.spread},
                         {"time_correlation", one.time},
                         {"time_share", one.time_share},
                         {"food_correlation", one.food},
                         {"food_share", one.food_share},
                         {"water_correlation", one.water},
                         {"water_share", one.water_share}});
    return array;
}

Json defaults(const Odds& odds) {
    Json array = Json::array();
    for (const planner::DefaultUsed& used : odds.spread.defaults)
        array.push_back({{"key", used.key}, {"value", used.value}, {"source", used.source}});
    return array;
}

} // namespace

Json odds_json_value(const Odds& odds, std::string_view version) {
    return {{"trip", odds.plan.trip.name},
            {"version", version},
            {"file", odds.plan.trip.file.string()},
            {"can_be_carried_out", odds.plan.can_be_carried_out()},
            {"verdict", planner::verdict_word(odds.plan.verdict.level)},
            {"draws", odds.options.draws},
            {"seed", odds.options.seed},
            {"under_way_s", quantiles(odds.under_way_s)},
            {"days", days(odds)},
            {"appointments", appointments(odds)},
            {"departures", departures(odds)},
            {"no_departure", odds.no_departure},
            {"connection_missed", or_null(odds.connection_missed)},
            {"rivers", rivers(odds)},
            {"food", food(odds)},
            {"water", water(odds)},
            {"legs", legs(odds)},
            {"influences", influences(odds)},
            {"defaults", defaults(odds)},
            {"remarks", odds.remarks}};
}

std::string odds_json(const Odds& odds, std::string_view version) {
    return in_lines(odds_json_value(odds, version));
}

} // namespace tumpline::cli
