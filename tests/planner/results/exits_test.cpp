#include "planner/make_plan.h"
#include "planner/plan.h"
#include "tests/support/level_trip.h"
#include "tests/support/plain_trip.h"

#include <gtest/gtest.h>

/// Ways out, by hand on level ground where everybody walks a metre in a second.
namespace tumpline::planner {
namespace {

/// 11 km with roads at 3 and 5 km.
Plan two_roads() {
    const test::RandomTrip made =
        test::level_trip({{.length_m = 11e3}},
                         {{"Near road", PlaceKind::exit, 3e3}, {"Far road", PlaceKind::exit, 5e3}});
    return make_plan(made.trip, made.route);
}

TEST(Exits, AreTheNearestAheadAndBehind) {
    const Plan plan = two_roads();
    ASSERT_GE(plan.exits.size(), 10U);
    const ExitPoint& at_2_km = plan.exits[2];
    EXPECT_EQ(at_2_km.back, "the start");
    EXPECT_NEAR(at_2_km.back_s.value(), 2000.0, 1.0);
    EXPECT_EQ(at_2_km.forward, "Near road"); // 1 km on, not the road 3 km on
    EXPECT_NEAR(at_2_km.forward_s.value(), 1000.0, 1.0);
    const ExitPoint& at_4_km = plan.exits[4];
    EXPECT_EQ(at_4_km.back, "Near road"); // and not the start
    EXPECT_NEAR(at_4_km.back_s.value(), 1000.0, 1.0);
    EXPECT_EQ(at_4_km.forward, "Far road");
    EXPECT_NEAR(at_4_km.forward_s.value(), 1000.0, 1.0);
    const ExitPoint& at_7_km = plan.exits[7];
    EXPECT_EQ(at_7_km.back, "Far road");
    EXPECT_NEAR(at_7_km.back_s.value(), 2000.0, 1.0);
    EXPECT_EQ(at_7_km.forward, "the finish");
    EXPECT_NEAR(at_7_km.forward_s.value(), 4000.0, 1.0);
}

TEST(Exits, ThePointOfNoReturnIsHalfWayOnLevelGround) {
    const Plan plan = two_roads();
    for (const ExitPoint& point : plan.exits)
        EXPECT_EQ(point.no_return, point.along_m == 6000.0) << point.along_m; // 5 km on, 6 back
}

/// Seconds back from 5 km out on a lake, the wind from this side; due north is away.
double back_from_5_km_s(double wind_mps, double wind_from_deg) {
    test::PlainTrip plain = test::plain_trip({test::lake(6000.0)});
    plain.trip.weather.wind_mps = wind_mps;
    plain.trip.weather.wind_from_deg = wind_from_deg;
    return make_plan(plain.trip, plain.route).exits.at(5).back_s.value();
}

/// Seconds out over the same 6 km.
double out_s(double wind_mps, double wind_from_deg) {
    test::PlainTrip plain = test::plain_trip({test::lake(6000.0)});
    plain.trip.weather.wind_mps = wind_mps;
    plain.trip.weather.wind_from_deg = wind_from_deg;
    return make_plan(plain.trip, plain.route).legs.at(0).moving_s;
}

TEST(Exits, AWindThatHelpsOnTheWayOutIsAgainstOneOnTheWayBack) {
    constexpr double from_north = 0.0;
    constexpr double from_south = 180.0;
    // Back under a wind that helped takes longer than in a calm by what the way out would against
    // it.
    const double longer_s = back_from_5_km_s(3.0, from_south) - back_from_5_km_s(0.0, from_north);
    const double against_s = (out_s(3.0, from_north) - out_s(0.0, from_north)) * 5.0 / 6.0;
    ASSERT_GT(against_s, 100.0);
    EXPECT_NEAR(longer_s, against_s, 0.02 * against_s + 5.0);
}

} // namespace
} // namespace tumpline::planner
