#include "tests/support/hand_built_parts.h"

namespace tumpline::test {

using planner::LitresStep;
using planner::Meal;
using planner::Stage;

void add_hand_built_supplies(planner::Plan& plan) {
    Stage stage;
    stage.from = "Road end";
    stage.to = "Road bridge";
    stage.last_day = 3;
    stage.food_kg = 9.9;
    stage.packaging_kg = 0.56;
    stage.fuel_kg = 0.154;
    stage.containers = 1;
    stage.reserve_kg = 1.3;
    stage.bearer_share = {0.475, 0.525};
    stage.meals = {{.meal = Meal::breakfast, .rations = 2.0, .food_kg = {0.92, 1.02}},
                   {.meal = Meal::trail, .rations = 3.0, .food_kg = {1.7, 1.88}},
                   {.meal = Meal::dinner, .rations = 3.0, .food_kg = {1.22, 1.3}}};
    stage.member_food_kg = {3.84, 4.2};
    stage.reserve_put_in_kg = 1.3;
    stage.food_ends_day = 3;
    stage.containers_kg = 0.15;
    stage.reached = plan.days.front().date;
    stage.closed_dates = {plan.days.back().date};
    stage.lost_day_short_kg = 0.0;
    stage.lost_days = {{.days = 1,
                        .food_short_kg = 0.0,
                        .fuel_short_kg = 0.012,
                        .ends_day = 4,
                        .food_ends_day = 4},
                       {.days = 2,
                        .food_short_kg = 2.6,
                        .fuel_short_kg = 0.07,
                        .ends_day = 5,
                        .food_ends_day = 3}};
    plan.stages = {stage};
    plan.water = {
        {.from = "Road end",
         .to = "Shelf spring",
         .from_m = 0.0,
         .to_m = 6300.0,
         .first_day = 1,
         .last_day = 1,
         .hours = 2.67,
         .nights = 0,
         .dry_nights = {},
         .way_l = 2.15,
         .camps_l = 0.0,
         .fill_l = {2.65, 2.8},
         .capacity_l = 4.0,
         .over_capacity = false},
        {.from = "Shelf spring",
         .to = "Birch spit",
         .from_m = 6300.0,
         .to_m = 14200.0,
         .first_day = 1,
         .last_day = 1,
         .hours = 3.4,
         .nights = 1,
         .dry_nights = {{.day = 1, .place = "Birch spit", .litres = 0.4, .too_much = false}},
         .way_l = 0.8,
         .camps_l = 0.4,
         .fill_l = {1.2, 1.3},
         .capacity_l = 4.0,
         .over_capacity = false}};
    plan.litres = {{0.0, 1, 2.65, LitresStep::filled},
                   {6300.0, 1, 0.5, LitresStep::way},
                   {6300.0, 1, 1.7, LitresStep::filled},
                   {14200.0, 1, 0.9, LitresStep::way},
                   {14200.0, 1, 0.5, LitresStep::camp}};
}

} // namespace tumpline::test
