/// The stages of food and fuel. Water is held by litres_test.cpp.

#include "planner/results/supplies.h"

#include "planner/make_plan.h"
#include "tests/support/level_trip.h"

#include <gtest/gtest.h>

namespace tumpline::planner {
namespace {

/// Two days of 20 km, 1 kg of food on each: a quarter for breakfast, 350 g on the way, 400 g for
/// dinner, from the first breakfast to the last trail food.
test::RandomTrip two_days(PlaceKind night) {
    test::RandomTrip made =
        test::level_trip({{.length_m = 20e3}, {.length_m = 20e3}}, {{"Half way", night, 20e3}});
    made.trip.days.nights = {"Half way"};
    made.trip.food.shares = std::array{0.25, 0.35, 0.40};
    made.trip.food.first_meal = Meal::breakfast;
    made.trip.food.last_meal = Meal::trail;
    return made;
}

TEST(Supplies, OneStageHoldsEveryMeal) {
    test::RandomTrip made = two_days(PlaceKind::camp);
    made.trip.food.packaging = 0.1;
    made.trip.food.reserve_days = 0.5;
    const Plan plan = make_plan(made.trip, made.route);
    ASSERT_EQ(plan.stages.size(), 1U);
    const Stage& stage = plan.stages.front();
    EXPECT_EQ(stage.first_day, 1);
    EXPECT_EQ(stage.last_day, 2);
    ASSERT_EQ(stage.meals.size(), 3U);
    EXPECT_DOUBLE_EQ(stage.meals[0].rations, 2.0); // two breakfasts
    EXPECT_DOUBLE_EQ(stage.meals[1].rations, 2.0); // trail food of two days
    EXPECT_DOUBLE_EQ(stage.meals[2].rations, 1.0); // one dinner
    EXPECT_NEAR(stage.meals[0].food_kg[0], 0.50, 1e-6);
    EXPECT_NEAR(stage.meals[1].food_kg[0], 0.70, 1e-6);
    EXPECT_NEAR(stage.meals[2].food_kg[0], 0.40, 1e-6);
    EXPECT_NEAR(stage.member_food_kg[0], 1.60, 1e-6);
    EXPECT_NEAR(stage.reserve_put_in_kg, 0.5, 1e-6); // half a day's kilogram
    EXPECT_NEAR(stage.reserve_kg, 0.55, 1e-6);       // in its packaging
    EXPECT_NEAR(stage.food_kg, (1.60 + 0.50) * 1.1, 1e-5);
    EXPECT_NEAR(stage.packaging_kg, 0.21, 1e-5); // a tenth of 2.1 kg
}

TEST(Supplies, AResupplyBeginsAStage) {
    const test::RandomTrip made = two_days(PlaceKind::resupply);
    const Plan plan = make_plan(made.trip, made.route);
    ASSERT_EQ(plan.stages.size(), 2U);
    EXPECT_EQ(plan.stages[0].to, "Half way");
    EXPECT_EQ(plan.stages[1].from, "Half way");
    // Breakfast and trail food until it is reached; dinner there, breakfast and trail food after.
    EXPECT_NEAR(plan.stages[0].food_kg, 0.25 + 0.35, 1e-6);
    EXPECT_NEAR(plan.stages[1].food_kg, 0.40 + 0.25 + 0.35, 1e-6);
    EXPECT_EQ(plan.stages[1].reached, Date{std::chrono::year{2027} / 6 / 7});
    EXPECT_FALSE(plan.stages[1].closed);
}

TEST(Supplies, ALostDayEatsADayMore) {
    const test::RandomTrip made = two_days(PlaceKind::camp);
    const Plan plan = make_plan(made.trip, made.route);
    const Stage& stage = plan.stages.at(0);
    ASSERT_GE(stage.lost_days.size(), 2U);
    // 1.6 kg are there without a reserve; one whole day more eats 1 kg.
    EXPECT_NEAR(stage.lost_days[0].food_short_kg, 1.0, 1e-6);
    EXPECT_NEAR(stage.lost_days[1].food_short_kg, 2.0, 1e-6);
    EXPECT_EQ(stage.lost_days[0].ends_day, 3);
    EXPECT_EQ(stage.lost_days[0].food_ends_day, 1); // day 1 took 1 kg, the day lost needs another
    EXPECT_EQ(stage.food_ends_day, 2);
    EXPECT_EQ(stage.lost_day_short_kg, stage.lost_days[0].food_short_kg);
}

TEST(Supplies, AClosedPlaceSaysWhenItIsOpen) {
    test::RandomTrip made = two_days(PlaceKind::resupply);
    made.trip.route.places[0].closed = {Date{std::chrono::year{2027} / 6 / 7},
                                        Date{std::chrono::year{2027} / 6 / 8}};
    const Plan plan = make_plan(made.trip, made.route);
    ASSERT_EQ(plan.stages.size(), 2U);
    EXPECT_TRUE(plan.stages[1].closed);
    EXPECT_EQ(plan.stages[1].open_later_days, 2);   // on the 9th
    EXPECT_FALSE(plan.stages[1].open_earlier_days); // the trip begins on the 7th
}

} // namespace
} // namespace tumpline::planner
