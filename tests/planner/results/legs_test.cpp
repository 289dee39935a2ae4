#include "planner/make_plan.h"
#include "planner/plan.h"
#include "tests/support/level_trip.h"
#include "tests/support/plain_trip.h"

#include <gtest/gtest.h>

namespace tumpline::planner {
namespace {

TEST(Legs, ABoatBearsItsCrewTheirGoodsAndWhatTheyWear) {
    test::PlainTrip plain = test::plain_trip({test::lake(3000.0)});
    plain.trip.kit = {test::thing("tent", 2.0), test::thing("life jacket", 0.7)};
    plain.trip.kit[1].afloat = ItemUse::worn;
    const PlanLeg leg = make_plan(plain.trip, plain.route).legs[0];
    EXPECT_DOUBLE_EQ(leg.loads[0].worn_kg, 0.7);
    // Ada's 70 kg, her goods, and the jacket that she wears.
    EXPECT_NEAR(leg.craft[0].load_kg, 70.0 + leg.loads[0].pack_max_kg + 0.7, 1e-6);
    EXPECT_NEAR(leg.craft[0].left_kg + leg.craft[0].right_kg + leg.craft[0].at_hand_kg,
                leg.loads[0].pack_max_kg,
                1e-6);
}

TEST(Legs, SpeedIsOverEveryMetreWalked) {
    const test::RandomTrip made =
        test::level_trip({{.length_m = 4e3}, {.travel = Travel::paddle, .length_m = 3e3}}, {});
    const Plan plan = make_plan(made.trip, made.route);
    EXPECT_NEAR(plan.legs[0].speed_mps.value(), 1.0, 1e-6); // a metre in a second
    EXPECT_NEAR(plan.legs[1].speed_mps.value(), 3e3 / plan.legs[1].moving_s, 1e-9);
}

TEST(Legs, TheWorstPackIsThatAfterWaterIsFilledMidway) {
    // At 1 m/s 5 km to the spring take 1.39 h and 0.69 L, the 15 km beyond 4.17 h and 2.08 L: there
    // the pack is 1.39 kg heavier than at the start, less the trail food of a quarter of the way,
    // below 0.25 kg of the day's one.
    test::RandomTrip made = test::level_trip(
        {{.length_m = 20e3}}, {{.name = "spring", .kind = PlaceKind::water, .along_m = 5e3}});
    made.trip.days.hours = 24.0;
    made.trip.water.walking_lps = 0.5 / 3600.0;
    const MemberLoad load = make_plan(made.trip, made.route).legs.at(0).loads.at(0);
    EXPECT_GT(load.pack_max_kg, load.pack_start_kg + 1.39 - 0.25);
    EXPECT_LT(load.pack_max_kg, load.pack_start_kg + 1.40);
}

TEST(Legs, WhatTheWindStopsHasNoSpeed) {
    test::PlainTrip plain = test::plain_trip({test::lake(3000.0)});
    plain.trip.weather.wind_mps = 25.0;
    plain.trip.weather.wind_from_deg = 0.0;
    const PlanLeg leg = make_plan(plain.trip, plain.route).legs[0];
    ASSERT_TRUE(leg.stopped);
    EXPECT_FALSE(leg.speed_mps);
}

} // namespace
} // namespace tumpline::planner
