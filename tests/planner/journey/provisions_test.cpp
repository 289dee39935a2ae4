#include "planner/journey/provisions.h"

#include "planner/make_plan.h"
#include "tests/support/level_trip.h"

#include <gtest/gtest.h>

#include <string>

namespace tumpline::planner {
namespace {

/// Six days of 20 km, a shop at the camp of day 3; a kilogram of food a day, all meals.
test::RandomTrip six_days() {
    std::vector<test::LevelPlace> places;
    for (int day = 1; day <= 5; ++day)
        places.push_back({"Camp " + std::to_string(day), PlaceKind::camp, 20e3 * day});
    places.push_back({"Shop", PlaceKind::resupply, 60e3});
    test::RandomTrip made =
        test::level_trip(std::vector<test::LevelLeg>(6, {.length_m = 20e3}), places);
    for (int day = 1; day <= 5; ++day)
        made.trip.days.nights.push_back("Camp " + std::to_string(day));
    made.trip.food.first_meal = Meal::breakfast;
    made.trip.food.last_meal = Meal::dinner;
    return made;
}

TEST(Provisions, TheReserveOfFoodIsPutInOnceForTheTrip) {
    test::RandomTrip made = six_days();
    made.trip.food.reserve_days = 2.0;
    // 6 kg are eaten, 2 kg carried through both stages: 8 kg, not 10.
    EXPECT_NEAR(make_plan(made.trip, made.route).totals.food_kg, 8.0, 1e-4);
}

TEST(Provisions, FuelHasItsReserveOnTop) {
    test::RandomTrip made = six_days();
    made.trip.fuel.boiled_l = 1.0;
    made.trip.fuel.kg_per_litre = 0.1;
    made.trip.fuel.reserve = 0.25;
    made.trip.food.reserve_days = 1.0;
    const Plan plan = make_plan(made.trip, made.route);
    // Two halves a day. To the shop: three days less a dinner, 0.25 kg; a day in reserve 0.1 kg;
    // a quarter on top: 0.4375. From it: 0.35 + 0.1, and a quarter: 0.5625.
    EXPECT_NEAR(plan.stages.at(0).fuel_kg, 0.4375, 1e-6);
    EXPECT_NEAR(plan.stages.at(1).fuel_kg, 0.5625, 1e-6);
    EXPECT_NEAR(plan.totals.fuel_kg, 1.0, 1e-6);
}

TEST(Provisions, ContainersAreWhole) {
    test::RandomTrip made = six_days();
    made.trip.fuel.boiled_l = 1.0;
    made.trip.fuel.kg_per_litre = 0.1;
    made.trip.fuel.reserve = 0.0;
    made.trip.fuel.container_holds_kg = 0.1;
    const Plan plan = make_plan(made.trip, made.route);
    EXPECT_EQ(plan.stages.at(0).containers, 3); // 0.25 kg
    EXPECT_EQ(plan.stages.at(1).containers, 4); // 0.35 kg
}

TEST(Provisions, TrailFoodIsDealtByMovingTimeToTheLastGram) {
    Timeline timeline;
    timeline.stretches.resize(3);
    timeline.stretches[0].moving_s = 1000.0;
    timeline.stretches[1].moving_s = 2000.0;
    timeline.stretches[2].moving_s = 4000.0;
    const DaySpan day{1, false, 0, 3};
    std::vector<std::int64_t> parts;
    const auto take = [&](std::size_t, std::int64_t part_mg) { parts.push_back(part_mg); };
    EXPECT_EQ(deal_trail(100, day, timeline, take), 0);
    EXPECT_EQ(parts, (std::vector<std::int64_t>{14, 29, 57})); // 14.3, 28.6, the rest
    const DaySpan rest{1, true, 0, 0};
    EXPECT_EQ(deal_trail(100, rest, timeline, take), 100);
}

TEST(Provisions, KeepWhatWasPackedAndCountTheRestAsReserve) {
    Provisions now, packed;
    now.stages = {{.boundary = 0,
                   .first_day = 1,
                   .last_day = 2,
                   .food_mg = 900,
                   .reserve_mg = 0,
                   .fuel_mg = 50,
                   .burnt_mg = 70,
                   .containers = 1}};
    packed.stages = {{.boundary = 0,
                      .first_day = 1,
                      .last_day = 2,
                      .food_mg = 800,
                      .reserve_mg = 300,
                      .fuel_mg = 60,
                      .burnt_mg = 60,
                      .containers = 2}};
    keep_packed(now, packed);
    EXPECT_EQ(now.stages[0].reserve_mg, 200); // 800 + 300 - 900
    EXPECT_EQ(now.stages[0].fuel_mg, 70);     // burnt is more than was packed
    EXPECT_EQ(now.stages[0].containers, 2);
}

} // namespace
} // namespace tumpline::planner
