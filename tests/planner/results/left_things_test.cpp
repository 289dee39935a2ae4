/// What a plan tells of the things that are laid down on the way.

#include "planner/results/left_things.h"

#include "planner/make_plan.h"
#include "tests/support/three_days_by_col.h"

#include <gtest/gtest.h>

namespace tumpline::planner {
namespace {

TEST(LaidThings, TellWhereWhenAndHowMuch) {
    test::RandomTrip made = test::out_and_back();
    made.trip.kit[2].count = 3; // lamps of 100 g
    made.trip.leaves = {test::at_col({"lamp", "boat"})};
    const Plan plan = make_plan(made.trip, made.route);
    ASSERT_EQ(plan.left.size(), 1U);
    const LaidThings& left = plan.left[0];
    EXPECT_EQ(left.at, "Col");
    EXPECT_EQ(left.day, 1);
    EXPECT_EQ(left.leg, LegNumber{2});
    EXPECT_NEAR(left.along_m, 2000.0, 1.0);
    EXPECT_EQ(left.fetch_day, 1);
    EXPECT_EQ(left.fetch_leg, LegNumber{2});
    EXPECT_NEAR(left.fetch_along_m.value(), 8000.0, 1.0);
    ASSERT_EQ(left.things.size(), 2U);
    EXPECT_EQ(left.things[0].what, "boat");
    EXPECT_EQ(left.things[0].part, Part::craft);
    EXPECT_NEAR(left.things[0].mass_kg, 3.0, 1e-9);
    EXPECT_EQ(left.things[1].what, "lamp");
    EXPECT_EQ(left.things[1].count, 3);
    EXPECT_NEAR(left.things[1].mass_kg, 0.3, 1e-9);
    EXPECT_NEAR(left.mass_kg, 3.3, 1e-9);
}

TEST(LaidThings, OfOneNameStandTogether) {
    test::RandomTrip made = test::out_and_back();
    made.trip.kit[1].name = "lamp"; // 500 g, and the other of 100 g
    made.trip.leaves = {test::at_col({"lamp"})};
    const Plan plan = make_plan(made.trip, made.route);
    ASSERT_EQ(plan.left.at(0).things.size(), 1U);
    EXPECT_EQ(plan.left[0].things[0].count, 2);
    EXPECT_NEAR(plan.left[0].things[0].mass_kg, 0.6, 1e-9);
}

TEST(LaidThings, AreNotWithTheirBearerOnTheLegsBetween) {
    test::RandomTrip made = test::out_and_back();
    made.trip.leaves = {test::at_col({"lamp", "boat"}), test::at_col({"tent"})};
    const Plan plan = make_plan(made.trip, made.route);
    ASSERT_EQ(plan.legs.size(), 3U);
    EXPECT_EQ(plan.legs[0].loads[0].laid_down_kg, 0.0);
    EXPECT_NEAR(plan.legs[1].loads[0].laid_down_kg, 5.0, 1e-9); // 0.1 + 3 + 1.9
    EXPECT_EQ(plan.legs[2].loads[0].laid_down_kg, 0.0);
    EXPECT_EQ(plan.items.at(0).leaves, std::vector<std::size_t>{1}); // the tent
    EXPECT_TRUE(plan.items.at(1).leaves.empty());                    // the poles
    EXPECT_EQ(plan.items.at(2).leaves, std::vector<std::size_t>{0});
    EXPECT_EQ(plan.items.at(3).leaves, std::vector<std::size_t>{0}); // the boat
}

TEST(LaidThings, HoldFood) {
    const test::RandomTrip made = test::three_days_by_col(1.25);
    const Plan plan = make_plan(made.trip, made.route);
    ASSERT_EQ(plan.left.size(), 1U);
    EXPECT_EQ(plan.left[0].day, 2);
    EXPECT_EQ(plan.left[0].fetch_day, 2);
    ASSERT_EQ(plan.left[0].things.size(), 1U);
    EXPECT_EQ(plan.left[0].things[0].part, Part::food);
    EXPECT_NEAR(plan.left[0].things[0].mass_kg, 1.25, 1e-9);
    EXPECT_NEAR(plan.left[0].mass_kg, 1.25, 1e-9);
}

TEST(LaidThings, AreNoneWhereNothingIsLeft) {
    test::RandomTrip made = test::out_and_back();
    EXPECT_TRUE(make_plan(made.trip, made.route).left.empty());
    made.trip.leaves = {test::at_col({"tent"})};
    made.trip.leaves[0].day = 7; // which the trip does not have
    EXPECT_TRUE(make_plan(made.trip, made.route).left.empty());
}

} // namespace
} // namespace tumpline::planner
