#include "planner/make_plan.h"
#include "planner/plan.h"
#include "tests/support/plain_trip.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <chrono>
#include <string>

/// What is worn, in hand or lashed to a boat is carried once, and hours in camp count as such.
namespace tumpline::planner {
namespace {

/// A lake, a carry of 1 km with the boat whole, a lake; the first things are paddles.
test::PlainTrip lake_carry_lake(double paddles_kg) {
    test::PlainTrip plain =
        test::plain_trip({test::lake(2000.0), test::walk(1000.0), test::lake(2000.0)});
    plain.route.legs[1].spec.travel = Travel::portage;
    plain.route.legs[1].travel = Travel::portage;
    plain.trip.kit = {test::thing("paddles", paddles_kg)};
    plain.trip.kit[0].afloat = ItemUse::used;
    return plain;
}

TEST(InHand, WhatIsLashedToABoatIsInItsLoadAndNotInHand) {
    const test::PlainTrip plain = lake_carry_lake(3.0);
    const Plan plan = make_plan(plain.trip, plain.route);
    EXPECT_DOUBLE_EQ(plan.legs[0].loads[0].worn_kg, 3.0); // paddling with them
    EXPECT_DOUBLE_EQ(plan.legs[1].loads[0].worn_kg, 0.0);
    const test::PlainTrip without = lake_carry_lake(0.0);
    const Plan bare = make_plan(without.trip, without.route);
    EXPECT_NEAR(plan.legs[1].loads[0].pack_max_kg - bare.legs[1].loads[0].pack_max_kg, 3.0, 0.02);
}

TEST(CampHours, BreakingCampIsWorkAndSaysWhenToGetUp) {
    test::PlainTrip plain = test::plain_trip({test::walk(20'000.0), test::walk(20'000.0)});
    plain.trip.days.hours = 6.0;
    plain.trip.changeovers.break_camp = std::chrono::seconds{5400};
    const Plan usual = make_plan(plain.trip, plain.route);
    ASSERT_GT(usual.days.size(), 1U);
    EXPECT_FALSE(usual.days[0].rise); // nobody breaks camp at the road
    ASSERT_TRUE(usual.days[1].rise);
    EXPECT_EQ((usual.days[1].set_off - *usual.days[1].rise).count(), 5400);
    plain.trip.changeovers.break_camp = std::chrono::seconds{9000};
    const Plan slow = make_plan(plain.trip, plain.route);
    EXPECT_EQ((slow.days[1].set_off - *slow.days[1].rise).count(), 9000);
    // An hour of camp work (2.5 MET) instead of standing about (1.3 MET).
    const double body_kg = plain.trip.party[0].body_kg;
    EXPECT_NEAR(slow.days[1].members[0].energy_j - usual.days[1].members[0].energy_j,
                (2.5 - 1.3) * body_kg * 4184.0,
                2000.0); // a heavier breakfast is carried
}

TEST(RiverShelter, IsAmongTheAssumptionsUnderWind) {
    test::PlainTrip plain = test::plain_trip({test::river(4000.0, 0.001)});
    plain.trip.weather.wind_mps = 6.0;
    const auto says = [&] {
        const Plan plan = make_plan(plain.trip, plain.route);
        return std::any_of(plan.defaults.begin(), plan.defaults.end(), [](const auto& used) {
            return used.key == "/route/legs/0/shelter";
        });
    };
    EXPECT_TRUE(says());
    EXPECT_DOUBLE_EQ(make_plan(plain.trip, plain.route).legs[0].wind_mps, 3.0);
    plain.trip.route.legs[0].shelter = 0.0;
    plain.route.legs[0].spec.shelter = 0.0;
    EXPECT_FALSE(says());
    EXPECT_DOUBLE_EQ(make_plan(plain.trip, plain.route).legs[0].wind_mps, 6.0);
}

} // namespace
} // namespace tumpline::planner
