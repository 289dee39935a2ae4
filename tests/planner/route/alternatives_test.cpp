#include "planner/route/alternatives.h"

#include "tests/support/plain_trip.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace tumpline::planner {
namespace {

using testing::ElementsAre;

/// 4 km on foot, 3 km of lake, 2 km of lake, with a way round each water.
test::PlainTrip two_lakes() {
    test::PlainTrip plain =
        test::plain_trip({test::walk(4000.0), test::lake(3000.0), test::lake(2000.0)});
    KitItem paddle = test::thing("paddle", 0.9);
    paddle.afloat = ItemUse::used;
    plain.trip.kit = {test::thing("sack", 8.0), paddle};
    plain.route.alternatives = {test::on_foot_beside(plain.route.legs[1], "north shore"),
                                test::on_foot_beside(plain.route.legs[2], "south shore")};
    return plain;
}

TEST(Alternatives, EachWayAndAllTogether) {
    const test::PlainTrip plain = two_lakes();
    const std::vector<OtherRoute> others = other_routes(plain.trip, plain.route, {});
    ASSERT_EQ(others.size(), 3U);
    EXPECT_THAT(others[0].instead_of, ElementsAre("leg 2"));
    EXPECT_THAT(others[0].by, ElementsAre("north shore"));
    EXPECT_THAT(others[1].by, ElementsAre("south shore"));
    EXPECT_THAT(others[2].instead_of, ElementsAre("leg 2", "leg 3"));
    EXPECT_THAT(others[2].by, ElementsAre("north shore", "south shore"));
}

TEST(Alternatives, BoatsStayAtHomeWhereNoWaterIsLeft) {
    const test::PlainTrip plain = two_lakes();
    const std::vector<OtherRoute> others = other_routes(plain.trip, plain.route, {});
    ASSERT_EQ(others.size(), 3U);
    EXPECT_FALSE(others[0].without_boats);
    EXPECT_EQ(others[0].left_home_kg, 0.0);
    EXPECT_EQ(others[0].trip.craft.size(), 1U);
    EXPECT_TRUE(others[2].without_boats);
    EXPECT_DOUBLE_EQ(others[2].left_home_kg, 3.0 + 0.9); // the boat and its paddle
    EXPECT_TRUE(others[2].trip.craft.empty());
    ASSERT_EQ(others[2].trip.kit.size(), 1U);
    EXPECT_EQ(others[2].trip.kit[0].name, "sack");
}

TEST(Alternatives, TheRouteIsLaidAnew) {
    test::PlainTrip plain = two_lakes();
    plain.route.alternatives.pop_back();
    plain.route.alternatives[0].spec.length_m = 4500.0; // the shore is longer than the water
    const std::vector<OtherRoute> others = other_routes(plain.trip, plain.route, {});
    ASSERT_EQ(others.size(), 1U);
    const Route& route = others[0].route;
    ASSERT_EQ(route.legs.size(), 3U);
    EXPECT_EQ(route.legs[1].name, "north shore");
    EXPECT_EQ(route.legs[1].spec.instead_of, "");
    EXPECT_NEAR(route.legs[2].from_m, 4000.0 + 4500.0, 1e-6);
    EXPECT_NEAR(route.length_m, 4000.0 + 4500.0 + 2000.0, 1e-6);
}

TEST(Alternatives, ANightOffTheWayIsRefused) {
    test::PlainTrip plain = two_lakes();
    TripPlace camp;
    camp.name = "Far camp";
    camp.at = geo::Position{.lat_deg = 46.0, .lon_deg = -40.0}; // 110 km on
    plain.trip.route.places = {camp};
    plain.trip.days.nights = {"Far camp"};
    KnownPlaces places;
    places.of_trip["Far camp"] = *camp.at;
    const std::vector<OtherRoute> others = other_routes(plain.trip, plain.route, places);
    EXPECT_EQ(others.at(0).refused, "\"Far camp\" lies off this way");
}

} // namespace
} // namespace tumpline::planner
