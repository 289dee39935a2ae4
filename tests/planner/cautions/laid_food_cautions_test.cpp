/// Stops where food is laid down: a day without its meals, and more than there is.

#include "planner/cautions/laid_food_cautions.h"

#include "planner/make_plan.h"
#include "tests/support/three_days_by_col.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace tumpline::planner {
namespace {

std::vector<Caution> of_code(const Plan& plan, const char* code) {
    std::vector<Caution> found;
    std::copy_if(plan.cautions.begin(),
                 plan.cautions.end(),
                 std::back_inserter(found),
                 [&](const Caution& caution) { return caution.code == code; });
    return found;
}

TEST(LaidFoodCautions, SayNothingWhereItReaches) {
    const test::RandomTrip made = test::three_days_by_col(1.3); // 1.8 kg less 0.5 for the day
    const Plan plan = make_plan(made.trip, made.route);
    EXPECT_TRUE(of_code(plan, "no-food").empty());
    EXPECT_TRUE(of_code(plan, "food-not-carried").empty());
    EXPECT_NE(of_code(plan, "left-unwatched").at(0).text.find("bears"), std::string::npos);
}

TEST(LaidFoodCautions, StopADayWithoutItsFood) {
    const test::RandomTrip made = test::three_days_by_col(1.5); // 0.3 kg for 0.5 kg
    const Plan plan = make_plan(made.trip, made.route);
    const std::vector<Caution> stops = of_code(plan, "no-food");
    ASSERT_EQ(stops.size(), 1U);
    EXPECT_EQ(stops[0].level, Level::stop);
    EXPECT_EQ(stops[0].day, 2);
    EXPECT_EQ(stops[0].leg, LegNumber{2});
    EXPECT_EQ(stops[0].text,
              "Day 2 lacks 200 g of 500 g (without packaging) for food on the way: it lies at "
              "Col. Leave less, or fetch it before.");
    EXPECT_EQ(plan.verdict.level, VerdictLevel::cannot);
}

TEST(LaidFoodCautions, TellOfEachDayUntilTheFetching) {
    test::RandomTrip made = test::three_days_by_col(1.8);
    made.trip.leaves[0].day = 1;
    made.trip.days.nights = {"Shop"}; // half way round
    test::add_shop_half_way_round(made);
    made.trip.route.places.back().kind = PlaceKind::camp;
    made.route.places[1].kind = PlaceKind::camp;
    // Day 1 to 5 km: 2 kg less 0.2 kg and two fifths of the 0.5 kg, 1.6 kg at Col; all of it is
    // left. Three fifths of 0.5 kg and the dinner of 0.3 kg lack: 0.6 kg. On day 2 breakfast and
    // 3 of 5 km.
    const Plan plan = make_plan(made.trip, made.route);
    const std::vector<Caution> stops = of_code(plan, "no-food");
    ASSERT_EQ(stops.size(), 2U);
    EXPECT_EQ(stops[0].text,
              "Day 1 lacks 600 g of 600 g (without packaging) for food on the way and dinner: it "
              "lies at Col. Leave less, or fetch it before.");
    EXPECT_EQ(stops[1].day, 2);
    EXPECT_EQ(stops[1].text,
              "Day 2 lacks 500 g of 500 g (without packaging) for breakfast and food on the way: "
              "it lies at Col. Leave less, or fetch it before.");
    const std::vector<Caution> more = of_code(plan, "food-not-carried");
    ASSERT_EQ(more.size(), 1U);
    EXPECT_EQ(more[0].day, 1);
    EXPECT_EQ(more[0].text,
              "1.8 kg of food are to be left at Col, and the packs hold 1.6 kg there that is to be "
              "eaten; the reserve stays with the party. Leave no more than that.");
}

} // namespace
} // namespace tumpline::planner
