#include "planner/cautions/laid_stores.h"

#include "planner/make_plan.h"
#include "planner/results/assembly.h"
#include "tests/support/three_days_by_col.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace tumpline::planner {
namespace {

using testing::ElementsAre;

StoreShort lacking(int day, Meal meal, std::int64_t needs_mg, std::int64_t lacks_mg) {
    return {.day = day, .stretch = 0, .meal = meal, .needs_mg = needs_mg, .lacks_mg = lacks_mg};
}

// Trail food of two members is one meal; 300 + 200 + 50 g of 500 + 400 + 60 g.
TEST(LaidStores, AddUpTheMealsOfADay) {
    const std::vector<StoreShort> meals{lacking(2, Meal::trail, 500'000, 300'000),
                                        lacking(2, Meal::trail, 400'000, 200'000),
                                        lacking(2, Meal::dinner, 60'000, 50'000),
                                        lacking(3, Meal::breakfast, 7'000, 6'000)};
    const std::vector<DayShort> days = short_by_day(meals);
    ASSERT_EQ(days.size(), 2U);
    EXPECT_EQ(days[0].first, &meals[0]);
    EXPECT_THAT(days[0].meals, ElementsAre("food on the way", "dinner"));
    EXPECT_EQ(days[0].needs_mg, 960'000);
    EXPECT_EQ(days[0].lacks_mg, 550'000);
    EXPECT_EQ(days[1].first, &meals[3]);
    EXPECT_THAT(days[1].meals, ElementsAre("breakfast"));
    EXPECT_EQ(days[1].lacks_mg, 6'000);
}

TEST(LaidStores, AreTooMuchByMoreThanAGram) {
    EXPECT_FALSE(is_too_much({.leave = 0, .wanted_mg = 2'001'000, .carried_mg = 2'000'000}));
    EXPECT_TRUE(is_too_much({.leave = 0, .wanted_mg = 2'001'001, .carried_mg = 2'000'000}));
}

// Left at Col on day 1 and not fetched: there, of food; of fuel nothing lies there.
TEST(LaidStores, LieWhereAnEntryLeavesThatStore) {
    const test::RandomTrip made = test::three_days_by_col(1.5);
    const Prepared prepared = prepare(made.trip, made.route);
    const Solved settled = settle_trip(prepared);
    const Assembly draft{prepared, settled};
    ASSERT_FALSE(settled.loads.food_short.empty());
    const StoreShort& meal = settled.loads.food_short.front();
    EXPECT_EQ(
        where_it_lies(draft, meal, [](const Leave& leave) { return leave.food_kg.has_value(); }),
        "at Col");
    EXPECT_EQ(
        where_it_lies(draft, meal, [](const Leave& leave) { return leave.fuel_kg.has_value(); }),
        "where it was left");
}

} // namespace
} // namespace tumpline::planner
