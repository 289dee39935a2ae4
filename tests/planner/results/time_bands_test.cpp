/// Which band stands beside a time: between people, until everybody's pace is known.

#include "planner/results/time_bands.h"

#include "planner/make_plan.h"
#include "tests/support/plain_trip.h"

#include <gtest/gtest.h>

#include <cmath>

namespace tumpline::planner {
namespace {

TimeBand on_foot(const test::PlainTrip& plain) {
    const Prepared prepared = prepare(plain.trip, plain.route);
    const Solved settled = settle_trip(prepared);
    return band_on_foot({prepared, settled});
}

TimeBand afloat(const test::PlainTrip& plain) {
    const Prepared prepared = prepare(plain.trip, plain.route);
    const Solved settled = settle_trip(prepared);
    return band_afloat({prepared, settled});
}

TEST(TimeBands, OnFootAreThoseBetweenPeopleUntilEverybodysPaceIsKnown) {
    test::PlainTrip plain = test::plain_trip({test::walk(5'000.0)});
    test::add_member(plain, "Ben", 30.0);
    EXPECT_EQ(on_foot(plain).low, 0.82); // [Sullivan2020]
    EXPECT_EQ(on_foot(plain).high, 1.44);
    plain.trip.party[0].pace = 1.1;
    EXPECT_EQ(on_foot(plain).high, 1.44) << "Ben's is not known";
    plain.trip.party[1].pace = 0.9;
    // 0.12 from trip to trip and 0.05 from day to day: the root of 0.0144 + 0.0025 is 0.13.
    EXPECT_NEAR(on_foot(plain).high, std::exp(0.13), 1e-12);
    EXPECT_NEAR(on_foot(plain).low, std::exp(-0.13), 1e-12);
    plain.trip.spread.pace = 0.12 / 3.0;
    plain.trip.spread.day_form = 0.03;
    EXPECT_NEAR(on_foot(plain).high, std::exp(0.05), 1e-12);
}

TEST(TimeBands, AfloatAskForTheBoatsCalmSpeed) {
    test::PlainTrip plain = test::plain_trip({test::lake(5'000.0)});
    EXPECT_NEAR(afloat(plain).high, std::exp(0.13), 1e-12); // the boat's is 1 m/s
    plain.trip.craft[0].calm_speed_mps.reset();
    EXPECT_EQ(afloat(plain).low, 0.85);
    EXPECT_EQ(afloat(plain).high, 1.25);
}

} // namespace
} // namespace tumpline::planner
