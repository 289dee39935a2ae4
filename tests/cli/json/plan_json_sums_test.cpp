/// Every figure of what the JSON says of the whole trip under its own key: plans in which no two
/// figures of an object are the same.

#include "tests/support/hand_built_parts.h"
#include "tests/support/hand_built_plan.h"
#include "tests/support/json_figures.h"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

namespace tumpline::cli {
namespace {

using nlohmann::json;
using planner::Plan;
using test::clock_minutes;
using test::expect_values;
using test::hand_built_time;
using test::json_of;

TEST(PlanJsonSums, OfAnAppointmentAndWhenToLeaveForIt) {
    Plan plan = test::hand_built_plan();
    planner::PlanAppointment& meet = plan.appointments[0];
    meet.by = hand_built_time(3, clock_minutes(18, 5));
    meet.arrive = hand_built_time(3, clock_minutes(11, 51));
    meet.margin_s = 10.5;
    meet.spare_s = 11.5;
    planner::LeaveBy& leave = meet.leave_by[1];
    leave.along_m = 12.5;
    leave.at = hand_built_time(3, clock_minutes(12, 44));
    leave.planned = hand_built_time(3, clock_minutes(8, 1));
    leave.spare_s = 13.5;
    leave.days_later = 2;
    leave.wind_rises = hand_built_time(3, clock_minutes(13, 30));
    const json shown_meet = json_of(plan)["appointments"][0];
    expect_values(shown_meet,
                  {{"what", "last bus"},
                   {"at", "Road bridge"},
                   {"day", 3},
                   {"by", "2027-06-20T18:05:00+02:00"},
                   {"arrive", "2027-06-20T11:51:00+02:00"},
                   {"margin_s", 10.5},
                   {"spare_s", 11.5}});
    expect_values(shown_meet["leave_by"][1],
                  {{"place", "Gravel bar"},
                   {"day", 3},
                   {"along_m", 12.5},
                   {"at", "2027-06-20T12:44:00+02:00"},
                   {"planned", "2027-06-20T08:01:00+02:00"},
                   {"spare_s", 13.5},
                   {"days_later", 2},
                   {"bound_at", "Road bridge"},
                   {"wind_rises", "2027-06-20T13:30:00+02:00"}});
}

TEST(PlanJsonSums, OfExitsAndWaysBack) {
    Plan plan = test::hand_built_plan();
    plan.exits[1] = {.along_m = 10.5,
                     .forward = "Road bridge",
                     .back = "Road end",
                     .forward_s = 11.5,
                     .back_s = 12.5,
                     .no_return = false};
    plan.turn_rounds[0].back_to_m = 13.5;
    plan.turn_rounds[0].along_m = 14.5;
    plan.turn_rounds[0].back_s = 15.5;
    const json shown_plan = json_of(plan);
    expect_values(shown_plan["exits"][1],
                  {{"along_m", 10.5},
                   {"forward", "Road bridge"},
                   {"back", "Road end"},
                   {"forward_s", 11.5},
                   {"back_s", 12.5},
                   {"no_return", false}});
    expect_values(shown_plan["turn_round"][0],
                  {{"day", 1},
                   {"leg", 2},
                   {"back_to", "Road end"},
                   {"back_to_m", 13.5},
                   {"along_m", 14.5},
                   {"back_s", 15.5},
                   {"exit", false},
                   {"whole_day", true},
                   {"dusk", "2027-06-18T23:40:00+02:00"},
                   {"at", "2027-06-18T16:30:00+02:00"}});
}

TEST(PlanJsonSums, OfWhatIsBorneAtTheStart) {
    Plan plan = test::hand_built_plan();
    plan.start_loads[0] = {.member = "Ada",
                           .pack_kg = 10.5,
                           .worn_kg = 11.5,
                           .in_hand_kg = 12.5,
                           .food_kg = 13.5,
                           .fuel_kg = 14.5,
                           .water_kg = 15.5,
                           .waste_kg = 16.5,
                           .limit_kg = 17.5};
    plan.luggage[0].mass_kg = 18.5;
    plan.luggage[0].worn_kg = 19.5;
    plan.luggage[0].heaviest_kg = 20.5;
    plan.heaviest_packs[1] = {"Björn", 21.5, 22.5, 4};
    plan.volumes.packs[0].holds_l = 23.5;
    plan.volumes.packs[0].needs_l = 24.5;
    plan.sharing.heaviest_ratio = 0.875;
    plan.sharing.lower_bound = 0.75;
    planner::PackedItem& stays = plan.items[14];
    ASSERT_FALSE(stays.comes);
    stays.mass_kg = 0.375;
    stays.carry_kg_km = 25.5;
    stays.carry_kg_m_up = 26.5;
    const json shown_plan = json_of(plan);
    expect_values(shown_plan["start_loads"][0],
                  {{"member", "Ada"},
                   {"pack_kg", 10.5},
                   {"worn_kg", 11.5},
                   {"in_hand_kg", 12.5},
                   {"food_kg", 13.5},
                   {"fuel_kg", 14.5},
                   {"water_kg", 15.5},
                   {"waste_kg", 16.5},
                   {"limit_kg", 17.5}});
    expect_values(shown_plan["luggage"][0],
                  {{"mass_kg", 18.5}, {"worn_kg", 19.5}, {"heaviest_kg", 20.5}});
    expect_values(shown_plan["heaviest_packs"][1],
                  {{"member", "Björn"}, {"pack_kg", 21.5}, {"limit_kg", 22.5}, {"plan_leg", 3}});
    expect_values(shown_plan["volumes"]["packs"][0],
                  {{"holds_l", 23.5}, {"needs_l", 24.5}, {"fits", false}, {"plan_leg", 0}});
    expect_values(shown_plan["sharing"], {{"heaviest_ratio", 0.875}, {"lower_bound", 0.75}});
    expect_values(shown_plan["items"][14],
                  {{"mass_kg", 0.375}, {"carry_kg_km", 25.5}, {"carry_kg_m_up", 26.5}});
    expect_values(shown_plan["stays_home"][0],
                  {{"mass_kg", 0.375}, {"saved_kg_km", 25.5}, {"saved_kg_m_up", 26.5}});
}

TEST(PlanJsonSums, OfAStageOfFoodAndFuel) {
    Plan plan = test::hand_built_plan();
    planner::Stage& stage = plan.stages[0];
    stage.first_day = 2;
    stage.last_day = 5;
    stage.food_kg = 10.5;
    stage.packaging_kg = 11.5;
    stage.fuel_kg = 12.5;
    stage.containers = 13;
    stage.containers_kg = 14.5;
    stage.reserve_kg = 15.5;
    stage.reserve_put_in_kg = 16.5;
    stage.declared_kg = 17.5;
    stage.declared_short_kg = 18.5;
    stage.food_ends_day = 4;
    stage.member_food_kg = {19.5, 20.5};
    stage.bearer_share = {0.375, 0.625};
    stage.meals[1].rations = 21.5;
    stage.meals[1].food_kg = {22.5, 23.5};
    stage.open_later_days = 6;
    stage.open_earlier_days = 7;
    stage.lost_day_short_kg = 24.5;
    stage.lost_days[0] = {.days = 8,
                          .food_short_kg = 25.5,
                          .fuel_short_kg = 26.5,
                          .ends_day = 9,
                          .food_ends_day = 10};
    const json shown_stage = json_of(plan)["stages"][0];
    expect_values(shown_stage,
                  {{"from", "Road end"},
                   {"to", "Road bridge"},
                   {"first_day", 2},
                   {"last_day", 5},
                   {"food_kg", 10.5},
                   {"packaging_kg", 11.5},
                   {"fuel_kg", 12.5},
                   {"containers", 13},
                   {"containers_kg", 14.5},
                   {"reserve_kg", 15.5},
                   {"reserve_put_in_kg", 16.5},
                   {"declared_kg", 17.5},
                   {"declared_short_kg", 18.5},
                   {"food_ends_day", 4},
                   {"open_later_days", 6},
                   {"open_earlier_days", 7},
                   {"lost_day_short_kg", 24.5}});
    expect_values(shown_stage["member_food_kg"], {{"Ada", 19.5}, {"Björn", 20.5}});
    expect_values(shown_stage["bearer_share"], {{"Ada", 0.375}, {"Björn", 0.625}});
    EXPECT_EQ(shown_stage["meals"][1]["rations"], 21.5);
    expect_values(shown_stage["meals"][1]["food_kg"], {{"Ada", 22.5}, {"Björn", 23.5}});
    expect_values(shown_stage["lost_days"][0],
                  {{"days", 8},
                   {"food_short_kg", 25.5},
                   {"fuel_short_kg", 26.5},
                   {"ends_day", 9},
                   {"food_ends_day", 10}});
}

TEST(PlanJsonSums, OfAStretchBetweenSprings) {
    Plan plan = test::hand_built_plan();
    planner::WaterStretch& stretch = plan.water[1];
    stretch.from_m = 10.5;
    stretch.to_m = 11.5;
    stretch.first_day = 2;
    stretch.last_day = 4;
    stretch.hours = 12.5;
    stretch.nights = 3;
    stretch.way_l = 13.5;
    stretch.camps_l = 14.5;
    stretch.fill_l = {15.5, 16.5};
    stretch.capacity_l = 17.5;
    stretch.dry_nights[0].litres = 18.5;
    plan.litres[3] = {19.5, 5, 20.5, planner::LitresStep::way};
    const json shown_plan = json_of(plan);
    const json& found = shown_plan["water"][1];
    expect_values(found,
                  {{"from", "Shelf spring"},
                   {"to", "Birch spit"},
                   {"from_m", 10.5},
                   {"to_m", 11.5},
                   {"first_day", 2},
                   {"last_day", 4},
                   {"hours", 12.5},
                   {"nights", 3},
                   {"way_l", 13.5},
                   {"camps_l", 14.5},
                   {"capacity_l", 17.5}});
    expect_values(found["fill_l"], {{"Ada", 15.5}, {"Björn", 16.5}});
    EXPECT_EQ(found["dry_nights"][0]["each_l"], 18.5);
    expect_values(shown_plan["water_line"][3], {{"along_m", 19.5}, {"day", 5}, {"each_l", 20.5}});
}

TEST(PlanJsonSums, OfTheCarriesInSum) {
    Plan plan = test::hand_built_plan();
    planner::CarrySummary& carrying = plan.carrying;
    carrying.portages = 2;
    carrying.length_m = 10.5;
    carrying.spans[0] = {.carries = 1.5,
                         .rolled = true,
                         .first_day = 3,
                         .last_day = 4,
                         .first_plan_leg = 5,
                         .last_plan_leg = 7,
                         .portages = 8};
    planner::CarryWay& way = carrying.ways[1];
    way.moving_s = 11.5;
    way.changeover_s = 12.5;
    way.walked_m = 13.5;
    way.more_s = 14.5;
    way.more_walked_m = 15.5;
    way.heaviest_kg = 16.5;
    way.heaviest_ratio = 1.125;
    way.over_limit = 9;
    way.most_over_kg = 17.5;
    way.within_from_day = 2;
    const json shown_carrying = json_of(plan)["carrying"];
    expect_values(shown_carrying, {{"portages", 2}, {"length_m", 10.5}});
    expect_values(shown_carrying["spans"][0],
                  {{"carries", 1.5},
                   {"rolled", true},
                   {"first_day", 3},
                   {"last_day", 4},
                   {"first_leg", 4},
                   {"last_leg", 6},
                   {"portages", 8}});
    expect_values(shown_carrying["ways"][1],
                  {{"moving_s", 11.5},
                   {"changeover_s", 12.5},
                   {"walked_m", 13.5},
                   {"more_s", 14.5},
                   {"more_walked_m", 15.5},
                   {"heaviest_kg", 16.5},
                   {"heaviest_member", "Björn"},
                   {"heaviest_ratio", 1.125},
                   {"over_limit", 9},
                   {"most_over_kg", 17.5},
                   {"within_from_day", 2}});
}

TEST(PlanJsonSums, OfAnEntryOfTheLedgerAndAnEvent) {
    Plan plan = test::hand_built_plan();
    planner::Entry& entry = plan.ledger.entries[1];
    entry.day = 2;
    entry.plan_leg = 4;
    entry.along_m = 10.5;
    planner::Event& spring = plan.events[1];
    spring.along_m = 11.5;
    spring.lasts_s = 12.5;
    spring.litres = 13.5;
    const json shown_plan = json_of(plan);
    expect_values(shown_plan["ledger"][1],
                  {{"day", 2},
                   {"step", 1},
                   {"plan_leg", 3},
                   {"along_m", 10.5},
                   {"member", "Ada"},
                   {"mass_mg", 180'000},
                   {"from", "pack"},
                   {"to", "eaten"},
                   {"why", "breakfast"}});
    expect_values(shown_plan["events"][1],
                  {{"day", 1},
                   {"leg", 1},
                   {"along_m", 11.5},
                   {"lasts_s", 12.5},
                   {"place", "Shelf spring"},
                   {"water_l", 13.5},
                   {"at", "2027-06-18T10:40:00+02:00"}});
}

} // namespace
} // namespace tumpline::cli
