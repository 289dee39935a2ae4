#include "cli/json/plan_json_parts.h"
#include "cli/words/json_values.h"
#include "cli/words/words.h"
#include "planner/quantities/quantities.h"

#include <optional>
#include <vector>

namespace tumpline::cli {

namespace {

using planner::Plan;

/// A figure of each member under the member's name.
Json by_member(const Plan& plan, const std::vector<double>& figures) {
    Json object = Json::object();
    for (std::size_t i = 0; i < figures.size() && i < plan.trip.party.size(); ++i)
        object[plan.trip.party[i].name] = figures[i];
    return object;
}

Json lost_json(const planner::LostDays& lost) {
    return {{"days", lost.days},
            {"food_short_kg", lost.food_short_kg},
            {"fuel_short_kg", lost.fuel_short_kg},
            {"ends_day", lost.ends_day},
            {"food_ends_day", or_null(lost.food_ends_day)}};
}

Json stage_json(const Plan& plan, const planner::Stage& stage) {
    return {{"from", stage.from},
            {"to", stage.to},
            {"first_day", stage.first_day},
            {"last_day", stage.last_day},
            {"food_kg", stage.food_kg},
            {"packaging_kg", stage.packaging_kg},
            {"meals",
             array_of(stage.meals,
                      [&](const planner::StageMeal& meal) {
                          return Json{{"meal", word(meal.meal)},
                                      {"rations", meal.rations},
                                      {"food_kg", by_member(plan, meal.food_kg)}};
                      })},
            {"member_food_kg", by_member(plan, stage.member_food_kg)},
            {"for_later_kg", stage.for_later_kg},
            {"fetched_kg", stage.fetched_kg},
            {"reserve_kg", stage.reserve_kg},
            {"reserve_put_in_kg", stage.reserve_put_in_kg},
            {"declared_kg", or_null(stage.declared_kg)},
            {"declared_short_kg", stage.declared_short_kg},
            {"food_ends_day", or_null(stage.food_ends_day)},
            {"fuel_kg", stage.fuel_kg},
            {"fuel_for_later_kg", stage.fuel_for_later_kg},
            {"fuel_fetched_kg", stage.fuel_fetched_kg},
            {"containers", stage.containers},
            {"containers_kg", stage.containers_kg},
            {"bearer_share", by_member(plan, stage.bearer_share)},
            {"reached", planner::show_date(stage.reached)},
            {"closed", stage.closed},
            {"closed_dates", array_of(stage.closed_dates, planner::show_date)},
            {"open_later_days", or_null(stage.open_later_days)},
            {"open_earlier_days", or_null(stage.open_earlier_days)},
            {"lost_day_short_kg", stage.lost_day_short_kg},
            {"lost_days", array_of(stage.lost_days, lost_json)}};
}

Json stretch_json(const Plan& plan, const planner::WaterStretch& stretch) {
    return {{"from", stretch.from},
            {"to", stretch.to},
            {"from_m", stretch.from_m},
            {"to_m", stretch.to_m},
            {"first_day", stretch.first_day},
            {"last_day", stretch.last_day},
            {"hours", stretch.hours},
            {"nights", stretch.nights},
            {"dry_nights",
             array_of(stretch.dry_nights,
                      [](const planner::DryNight& night) {
                          return Json{{"day", night.day},
                                      {"place", night.place},
                                      {"each_l", night.litres},
                                      {"too_much", night.too_much}};
                      })},
            {"way_l", stretch.way_l},
            {"camps_l", stretch.camps_l},
            {"laid_l", stretch.laid_l},
            {"fill_l", by_member(plan, stretch.fill_l)},
            {"capacity_l", stretch.capacity_l},
            {"over_capacity", stretch.over_capacity}};
}

/// A position in `legs`, from 0.

Json way_json(const planner::CarryWay& way) {
    return {{"carries", or_null(way.carries)},
            {"rolled", way.carries ? Json(way.rolled) : Json(nullptr)},
            {"by", way.carries ? Json(planner::word(way.by)) : Json(nullptr)},
            {"moving_s", way.moving_s},
            {"changeover_s", way.changeover_s},
            {"walked_m", way.walked_m},
            {"more_s", way.more_s},
            {"more_walked_m", way.more_walked_m},
            {"heaviest_kg", way.heaviest_kg},
            {"heaviest_member", way.heaviest_member},
            {"heaviest_ratio", way.heaviest_ratio},
            {"over_limit", way.over_limit},
            {"most_over_kg", way.most_over_kg},
            {"within_from_day", or_null(way.within_from_day)}};
}

} // namespace

Json stages_json(const Plan& plan) {
    return array_of(plan.stages,
                    [&](const planner::Stage& stage) { return stage_json(plan, stage); });
}

Json water_json(const Plan& plan) {
    return array_of(plan.water, [&](const planner::WaterStretch& stretch) {
        return stretch_json(plan, stretch);
    });
}

Json water_line_json(const Plan& plan) {
    return array_of(plan.litres, [](const planner::Litres& point) {
        return Json{{"along_m", point.along_m},
                    {"day", point.day},
                    {"each_l", point.each_l},
                    {"after", word(point.after)}};
    });
}

Json carrying_json(const Plan& plan) {
    const planner::CarrySummary& carrying = plan.carrying;
    return {{"sentence", carrying.sentence},
            {"portages", carrying.portages},
            {"length_m", carrying.length_m},
            {"spans",
             array_of(carrying.spans,
                      [](const planner::CarrySpan& span) {
                          return Json{{"carries", span.carries},
                                      {"rolled", span.rolled},
                                      {"by", planner::word(span.by)},
                                      {"first_day", span.first_day},
                                      {"last_day", span.last_day},
                                      {"first_leg", place_or_null(span.first_plan_leg)},
                                      {"last_leg", place_or_null(span.last_plan_leg)},
                                      {"portages", span.portages}};
                      })},
            {"boats",
             array_of(carrying.boats,
                      [](const planner::BoatSpan& span) {
                          return Json{{"craft", span.craft},
                                      {"members", span.members},
                                      {"by", planner::word(span.by)},
                                      {"first_day", span.first_day},
                                      {"last_day", span.last_day},
                                      {"portages", span.portages}};
                      })},
            {"ways", array_of(carrying.ways, way_json)}};
}

} // namespace tumpline::cli
