/// Every figure of the JSON under its own key: plans in which no two figures of an object are the
/// same.

#include "cli/json/plan_json.h"
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

TEST(PlanJsonFigures, OfTheTotals) {
    Plan plan = test::hand_built_plan();
    planner::Totals& totals = plan.totals;
    totals.distance_m = 10.5;
    totals.walk_m = 11.5;
    totals.portage_m = 12.5;
    totals.paddle_m = 13.5;
    totals.ride_m = 13.75;
    totals.on_foot_m = 14.5;
    totals.ascent_m = 15.5;
    totals.descent_m = 16.5;
    totals.moving_s = 17.5;
    totals.changeover_s = 18.5;
    totals.rest_s = 19.5;
    totals.elapsed_s = 20.5;
    totals.days = 21;
    totals.food_kg = 22.5;
    totals.fuel_kg = 23.5;
    totals.energy_j = 24.5 * 4184.0;
    expect_values(json_of(plan)["totals"],
                  {{"distance_m", 10.5},
                   {"walk_m", 11.5},
                   {"portage_m", 12.5},
                   {"paddle_m", 13.5},
                   {"ride_m", 13.75},
                   {"on_foot_m", 14.5},
                   {"ascent_m", 15.5},
                   {"descent_m", 16.5},
                   {"moving_s", 17.5},
                   {"changeover_s", 18.5},
                   {"rest_s", 19.5},
                   {"elapsed_s", 20.5},
                   {"days", 21},
                   {"food_kg", 22.5},
                   {"fuel_kg", 23.5},
                   {"energy_kcal", 24.5}});
}

/// The second day with figures of its own.
void give_own_figures(planner::PlanDay& day) {
    day.from_m = 100.5;
    day.to_m = 1350.5;
    day.camp = {.lat_deg = 61.5, .lon_deg = 13.25};
    day.camp_located = true;
    day.walk_m = 11.5;
    day.portage_m = 12.5;
    day.paddle_m = 13.5;
    day.ride_m = 13.75;
    day.on_foot_m = 14.5;
    day.ascent_m = 15.5;
    day.descent_m = 16.5;
    day.moving_s = 17.5;
    day.changeover_s = 18.5;
    day.rest_s = 19.5;
    day.rise = hand_built_time(2, clock_minutes(6, 11));
    day.set_off = hand_built_time(2, clock_minutes(7, 12));
    day.arrive = hand_built_time(2, clock_minutes(15, 13));
    day.arrive_early = hand_built_time(2, clock_minutes(14, 14));
    day.arrive_late = hand_built_time(2, clock_minutes(16, 15));
    day.light.sun.rise = hand_built_time(2, clock_minutes(5, 16));
    day.light.sun.set = hand_built_time(2, clock_minutes(20, 17));
    day.light.twilight.rise = hand_built_time(2, clock_minutes(4, 18));
    day.light.twilight.set = hand_built_time(2, clock_minutes(21, 19));
    day.before_dusk_s = 20.5;
    day.food_kg = 21.5;
    day.fuel_kg = 22.5;
    day.water_l = 23.5;
    planner::MemberDay& second = day.members[1];
    second.energy_j = 24.5 * 4184.0;
    second.food_kg = 25.5;
    second.water_l = 26.5;
    second.pack_start_kg = 27.5;
    second.pack_end_kg = 28.5;
    second.set_off_kg = 29.5;
    second.heaviest_kg = 30.5;
    second.heaviest_leg = 5;
}

TEST(PlanJsonFigures, OfADay) {
    Plan plan = test::hand_built_plan();
    give_own_figures(plan.days[1]);
    const json day = json_of(plan)["days"][1];
    expect_values(day, {{"day", 2},
                        {"date", "2027-06-19"},
                        {"from", "Birch spit"},
                        {"to", "Gravel bar"},
                        {"from_m", 100.5},
                        {"to_m", 1350.5},
                        {"distance_m", 1250.0},
                        {"walk_m", 11.5},
                        {"portage_m", 12.5},
                        {"paddle_m", 13.5},
                        {"ride_m", 13.75},
                        {"on_foot_m", 14.5},
                        {"ascent_m", 15.5},
                        {"descent_m", 16.5},
                        {"moving_s", 17.5},
                        {"changeover_s", 18.5},
                        {"rest_s", 19.5},
                        {"before_dusk_s", 20.5},
                        {"food_kg", 21.5},
                        {"fuel_kg", 22.5},
                        {"water_l", 23.5}});
    expect_values(day["camp"], {{"lat_deg", 61.5}, {"lon_deg", 13.25}});
    expect_values(day,
                  {{"rise", "2027-06-19T06:11:00+02:00"},
                   {"set_off", "2027-06-19T07:12:00+02:00"},
                   {"arrive", "2027-06-19T15:13:00+02:00"},
                   {"arrive_early", "2027-06-19T14:14:00+02:00"},
                   {"arrive_late", "2027-06-19T16:15:00+02:00"},
                   {"sunrise", "2027-06-19T05:16:00+02:00"},
                   {"sunset", "2027-06-19T20:17:00+02:00"},
                   {"dawn", "2027-06-19T04:18:00+02:00"},
                   {"dusk", "2027-06-19T21:19:00+02:00"}});
    expect_values(day["members"][1],
                  {{"member", "Björn"},
                   {"energy_kcal", 24.5},
                   {"food_kg", 25.5},
                   {"water_l", 26.5},
                   {"pack_start_kg", 27.5},
                   {"pack_end_kg", 28.5},
                   {"set_off_kg", 29.5},
                   {"heaviest_kg", 30.5},
                   {"heaviest_leg", 4}});
    EXPECT_NEAR(day["energy_kcal"]["Björn"].get<double>(), 24.5, 1e-9);
    EXPECT_EQ(day["pack_start_kg"]["Björn"], 27.5);
    EXPECT_EQ(day["pack_end_kg"]["Björn"], 28.5);
}

TEST(PlanJsonFigures, OfALoad) {
    Plan plan = test::hand_built_plan();
    planner::MemberLoad& load = plan.legs[2].loads[1];
    load.pack_start_kg = 10.5;
    load.pack_end_kg = 11.5;
    load.pack_max_kg = 12.5;
    load.worn_kg = 13.5;
    load.limit_kg = 14.5;
    load.energy_j = 15.5 * 4184.0;
    load.parts = {.kit_kg = 16.5,
                  .craft_kg = 17.5,
                  .food_kg = 18.5,
                  .fuel_kg = 19.5,
                  .water_kg = 20.5,
                  .waste_kg = 21.5};
    load.carries[1].pack_kg = 22.5;
    load.carries[1].share = 0.625;
    const json shown_load = json_of(plan)["legs"][2]["loads"][1];
    expect_values(shown_load,
                  {{"member", "Björn"},
                   {"pack_start_kg", 10.5},
                   {"pack_end_kg", 11.5},
                   {"pack_max_kg", 12.5},
                   {"worn_kg", 13.5},
                   {"limit_kg", 14.5},
                   {"energy_kcal", 15.5}});
    expect_values(shown_load["parts"],
                  {{"kit", 16.5},
                   {"craft", 17.5},
                   {"food", 18.5},
                   {"fuel", 19.5},
                   {"water", 20.5},
                   {"waste", 21.5}});
    expect_values(shown_load["carries"][1],
                  {{"carry", 2}, {"pack_kg", 22.5}, {"share", 0.625}, {"on_cart", false}});
}

TEST(PlanJsonFigures, OfAWayOfDoingAPortage) {
    Plan plan = test::hand_built_plan();
    plan.legs[2].choices[1] = {.carries = 1.5,
                               .rolled = true,
                               .lengths = 2.5,
                               .walked_m = 10.5,
                               .moving_s = 11.5,
                               .changeover_s = 12.5,
                               .heaviest_kg = 13.5,
                               .heaviest_member = "Ada",
                               .heaviest_ratio = 0.875,
                               .within_limits = true,
                               .chosen = false,
                               .by = planner::CarryBy::cart,
                               .on_cart_kg = 14.5};
    plan.legs[2].break_even_m = 15.5;
    const json leg = json_of(plan)["legs"][2];
    EXPECT_EQ(leg["break_even_m"], 15.5);
    expect_values(leg["choices"][1],
                  {{"carries", 1.5},
                   {"rolled", true},
                   {"lengths", 2.5},
                   {"walked_m", 10.5},
                   {"moving_s", 11.5},
                   {"changeover_s", 12.5},
                   {"heaviest_kg", 13.5},
                   {"heaviest_member", "Ada"},
                   {"heaviest_ratio", 0.875},
                   {"within_limits", true},
                   {"chosen", false},
                   {"on_cart_kg", 14.5}});
}

TEST(PlanJsonFigures, OfALegAfloat) {
    Plan plan = test::hand_built_plan();
    planner::PlanLeg& leg = plan.legs[4];
    leg.gradient = 0.0015;
    leg.steepest_500m = 0.0075;
    leg.wind_mps = 3.5;
    leg.wind_force = 4;
    leg.wind_head_mps = -2.5;
    leg.gusts_mps = 6.5;
    leg.current_mps = 1.25;
    leg.dark_s = 7.5;
    leg.speed_mps = 2.5;
    leg.current_estimate = {.slow_mps = 0.25,
                            .likely_mps = 0.5,
                            .fast_mps = 0.75,
                            .slope = 0.0035,
                            .depth_m = 0.625,
                            .bed = "winding-pools-shoals",
                            .steep = true,
                            .limited = false};
    planner::CraftLoad& boat = leg.craft[1];
    boat.load_kg = 101.5;
    boat.payload_kg = 140.5;
    boat.left_kg = 5.5;
    boat.right_kg = 6.25;
    boat.at_hand_kg = 1.75;
    boat.draft_change_m = 0.0125;
    boat.freeboard_m = 0.1875;
    const json shown_leg = json_of(plan)["legs"][4];
    expect_values(shown_leg,
                  {{"gradient", 0.0015},
                   {"steepest_500m", 0.0075},
                   {"wind_mps", 3.5},
                   {"wind_force", 4},
                   {"wind_head_mps", -2.5},
                   {"gusts_mps", 6.5},
                   {"current_mps", 1.25},
                   {"dark_s", 7.5},
                   {"speed_kmh", 9.0}}); // 2.5 m/s
    expect_values(shown_leg["current_estimate"],
                  {{"slow_mps", 0.25},
                   {"likely_mps", 0.5},
                   {"fast_mps", 0.75},
                   {"slope", 0.0035},
                   {"depth_m", 0.625},
                   {"steep", true},
                   {"limited", false}});
    expect_values(shown_leg["craft"][1],
                  {{"craft", "blue boat"},
                   {"load_kg", 101.5},
                   {"payload_kg", 140.5},
                   {"left_kg", 5.5},
                   {"right_kg", 6.25},
                   {"at_hand_kg", 1.75},
                   {"draft_change_m", 0.0125},
                   {"freeboard_m", 0.1875}});
}

} // namespace
} // namespace tumpline::cli
