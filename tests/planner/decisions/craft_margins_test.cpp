#include "planner/decisions/craft_margins.h"

#include "planner/make_plan.h"
#include "tests/support/plain_trip.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>

namespace tumpline::planner {
namespace {

using testing::ElementsAre;
using testing::IsEmpty;

/// Ada, 70 kg, in a boat: 2 km of lake, then rivers of class I and III; 12 kg of things.
test::PlainTrip down_two_rivers() {
    test::PlainTrip plain = test::plain_trip(
        {test::lake(2000.0), test::river(2000.0, 0.001), test::river(1000.0, 0.001)});
    plain.route.legs[2].spec.river_class = 3;
    plain.trip.kit = {test::thing("sack", 12.0)};
    return plain;
}

CraftMargin class_left(const test::PlainTrip& plain) {
    return class_margin(make_plan(plain.trip, plain.route), plain.route);
}

TEST(CraftMargins, OfClassAreLeastOnTheHardestWater) {
    test::PlainTrip plain = down_two_rivers();
    plain.trip.craft[0].river_class = 4;
    const CraftMargin margin = class_left(plain);
    EXPECT_TRUE(margin.asked);
    EXPECT_TRUE(margin.known());
    EXPECT_EQ(margin.left, 1.0); // IV - III
    EXPECT_EQ(margin.craft, "boat");
    EXPECT_EQ(margin.plan_leg, PlanLegNumber{3});

    plain.trip.craft[0].river_class = 1;
    EXPECT_EQ(class_left(plain).left, -2.0); // I - III
}

TEST(CraftMargins, OfClassAreNotKnownWithoutTheBoatsOrOneRivers) {
    test::PlainTrip plain = down_two_rivers();
    EXPECT_FALSE(class_left(plain).left);
    EXPECT_THAT(class_left(plain).missing, ElementsAre("boat"));

    plain.trip.craft[0].river_class = 4;
    plain.route.legs[1].spec.river_class.reset();
    const CraftMargin margin = class_left(plain);
    EXPECT_EQ(margin.left, 1.0);
    EXPECT_THAT(margin.missing, ElementsAre("leg 2"));
    EXPECT_FALSE(margin.known());
}

TEST(CraftMargins, OfClassAskNothingOfALake) {
    const test::PlainTrip plain = test::plain_trip({test::lake(2000.0)});
    EXPECT_FALSE(class_left(plain).asked);
    EXPECT_TRUE(class_left(plain).known());
}

TEST(CraftMargins, OfPayloadAreWhatTheHeaviestLegLeaves) {
    test::PlainTrip plain = down_two_rivers();
    EXPECT_FALSE(payload_margin(make_plan(plain.trip, plain.route)).known());
    plain.trip.craft[0].payload_kg = 130.0;
    const Plan plan = make_plan(plain.trip, plain.route);
    const CraftMargin margin = payload_margin(plan);
    EXPECT_THAT(margin.missing, IsEmpty());
    ASSERT_TRUE(margin.left);
    // 130 - 70 of Ada - 12 of things = 48, less the food, fuel and water that she has along
    EXPECT_LT(*margin.left, 48.0);
    EXPECT_GT(*margin.left, 48.0 - 8.0);
    double heaviest_kg = 0.0;
    for (const PlanLeg& leg : plan.legs)
        heaviest_kg = std::max(heaviest_kg, leg.craft.at(0).load_kg);
    EXPECT_NEAR(*margin.left, 130.0 - heaviest_kg, 1e-9);
}

TEST(CraftMargins, OfWindAreTheLowestCeilingAndSayWhetherItIsAssumed) {
    test::PlainTrip plain = down_two_rivers();
    const auto assumed = wind_that_stops(make_plan(plain.trip, plain.route));
    ASSERT_TRUE(assumed);
    EXPECT_TRUE(assumed->assumed);
    plain.trip.craft[0].wind_ceiling_mps = 6.0;
    const auto given = wind_that_stops(make_plan(plain.trip, plain.route));
    ASSERT_TRUE(given);
    EXPECT_FALSE(given->assumed);
    EXPECT_EQ(given->ceiling_mps, 6.0);
    EXPECT_EQ(given->craft, "boat");

    const test::PlainTrip dry = test::plain_trip({test::walk(1000.0)});
    EXPECT_FALSE(wind_that_stops(make_plan(dry.trip, dry.route)));
}

} // namespace
} // namespace tumpline::planner
