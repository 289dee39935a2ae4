#include "planner/route/route.h"

#include "geo/lines/geodesic.h"
#include "tests/support/plain_trip.h"

#include <gtest/gtest.h>

namespace tumpline::planner {
namespace {

/// 4 km up at 5 %, then 2 km level: the second leg lies at 300 + 200 m.
TEST(Route, KnowsPointsAndHeightsAlongItsLegs) {
    const test::PlainTrip plain =
        test::plain_trip({test::walk(4'000.0, 0.05), test::walk(2'000.0)});
    const Route& route = plain.route;
    EXPECT_NEAR(geo::distance_m(route.at(0.0), route.at(5'000.0)), 5'000.0, 1e-3); // due north
    EXPECT_NEAR(route.height_at(1'000.0).value(), 350.0, 0.5);
    EXPECT_NEAR(route.height_at(5'000.0).value(), 500.0, 0.5);
    EXPECT_NEAR(route.height_at(6'000.0).value(), 500.0, 0.5) << "the end belongs to the last leg";
}

TEST(Route, FindsEveryPassOfAPlace) {
    test::PlainTrip plain = test::plain_trip({test::walk(4'000.0)});
    test::add_place(plain, PlaceKind::water, "spring", 1'000.0);
    test::add_place(plain, PlaceKind::camp, "camp", 2'000.0);
    test::add_place(plain, PlaceKind::water, "spring", 3'000.0);
    RoutePlace stop;
    stop.name = "bus";
    plain.route.met_at.push_back(stop);
    ASSERT_EQ(plain.route.passes("spring").size(), 2U);
    EXPECT_EQ(plain.route.passes("spring")[1].along_m, 3'000.0);
    EXPECT_EQ(plain.route.passes("bus").size(), 1U);
    EXPECT_TRUE(plain.route.passes("hut").empty());
}

} // namespace
} // namespace tumpline::planner
