#include "cli/json/plan_json_parts.h"
#include "cli/words/json_values.h"
#include "planner/trip/vocabulary.h"

namespace tumpline::cli {

namespace {

using planner::GaugeReading;

Json discharge(const std::optional<GaugeReading>& reading) {
    return reading && !reading->stage ? Json(reading->value) : Json(nullptr);
}

Json stage(const std::optional<GaugeReading>& reading) {
    return reading && reading->stage ? Json(reading->value) : Json(nullptr);
}

Json class_json(const std::optional<planner::RiverClass>& river_class) {
    return river_class ? name_or_null(std::string(planner::class_word(*river_class)))
                       : Json(nullptr);
}

Json flow_leg_json(const planner::FlowLeg& leg) {
    return {{"leg", leg.leg},
            {"name", leg.name},
            {"asked", leg.asked},
            {"current_mps", leg.current_mps},
            {"estimated", leg.estimated},
            {"discharge_m3ps", discharge(leg.reading)},
            {"stage_m", stage(leg.reading)},
            {"class", class_json(leg.river_class)},
            {"runnable", or_null(leg.runnable)},
            {"moving_s", leg.moving_s}};
}

Json flow_plan_json(const planner::FlowPlan& flow) {
    Json dusk = Json::array();
    for (const std::optional<double>& one : flow.before_dusk_s)
        dusk.push_back(or_null(one));
    return {{"level", planner::word(flow.level)},
            {"moving_s", flow.moving_s},
            {"days", flow.days},
            {"legs", array_of(flow.legs, flow_leg_json)},
            {"before_dusk_s", dusk},
            {"appointments",
             array_of(flow.appointments,
                      [](const planner::FlowMargin& one) {
                          return Json{{"what", one.what}, {"spare_s", one.spare_s}};
                      })},
            {"verdict", planner::verdict_word(flow.verdict)},
            {"cautions", flow.titles}};
}

Json level_json(const std::optional<planner::FlowLevel>& level) {
    return level ? Json(planner::word(*level)) : Json(nullptr);
}

} // namespace

Json flow_json(const planner::PlanFlow& flow) {
    return {{"gauge", name_or_null(flow.gauge)},
            {"asked", flow.asked},
            {"states", array_of(flow.states, [](const planner::FlowState& state) {
                 return Json{{"current_mps", state.current_mps},
                             {"estimated", state.estimated},
                             {"beyond", state.beyond},
                             {"discharge_m3ps", discharge(state.reading)},
                             {"stage_m", stage(state.reading)},
                             {"class", class_json(state.river_class)}};
             })}};
}

Json flow_column_json(const planner::PlanFlow& flow) {
    return level_json(flow.now.column);
}

Json flows_json(const planner::Plan& plan) {
    return array_of(plan.flows, flow_plan_json);
}

Json decisions_json(const planner::Plan& plan) {
    return array_of(plan.decisions, [&](const planner::DecisionCard& card) {
        Json by = nullptr;
        if (card.latest)
            by = {{"at", instant(plan, card.latest->at)},
                  {"keeps", card.latest->keeps},
                  {"passed", card.latest->passed}};
        return Json{{"leg", card.leg},
                    {"day", card.day},
                    {"name", card.name},
                    {"at", card.at},
                    {"along_m", card.along_m},
                    {"gauge", name_or_null(card.gauge)},
                    {"below_m3ps", discharge(card.below)},
                    {"below_stage_m", stage(card.below)},
                    {"above_m3ps", discharge(card.above)},
                    {"above_stage_m", stage(card.above)},
                    {"not_at", level_json(card.not_at)},
                    {"above_why", name_or_null(card.above_why)},
                    {"latest", by},
                    {"wind_mps", or_null(card.wind_mps)},
                    {"wind_craft", name_or_null(card.wind_craft)},
                    {"instead", card.instead},
                    {"wait_at", card.wait_at},
                    {"back_to", name_or_null(card.back_to)},
                    {"back_s", or_null(card.back_s)}};
    });
}

} // namespace tumpline::cli
