#include "planner/route/place_snap.h"

#include "geo/lines/geodesic.h"
#include "tests/support/plain_trip.h"

#include <gtest/gtest.h>

namespace tumpline::planner {
namespace {

TripPlace place(const char* name) {
    TripPlace made;
    made.name = name;
    made.kind = PlaceKind::water;
    return made;
}

TEST(PlaceSnap, PutsAPlaceAtItsNearestPointAndSaysHowFarOff) {
    test::PlainTrip plain = test::plain_trip({test::walk(4'000.0), test::walk(4'000.0)});
    // The line runs due north: 120 m east of its point at 5.5 km.
    const geo::Position beside = geo::destination(plain.route.at(5'500.0), 90.0, 120.0);
    const KnownPlaces known{.of_trip = {{"spring", beside}}, .met_at = {}};
    known.snap(plain.route, {place("spring")});
    ASSERT_EQ(plain.route.places.size(), 1U);
    EXPECT_NEAR(plain.route.places[0].along_m, 5'500.0, 0.1);
    EXPECT_NEAR(plain.route.places[0].off_m, 120.0, 0.1);
    EXPECT_EQ(plain.route.places[0].leg, LegNumber{2});
    EXPECT_TRUE(plain.route.cautions.empty());
}

TEST(PlaceSnap, ARideComesByWhatStandsAtItsEndsOnly) {
    test::PlainTrip plain = test::plain_trip({test::walk(4'000.0), test::walk(6'000.0)});
    plain.route.legs[1].travel = Travel::ride;
    const KnownPlaces known{.of_trip = {{"beside the road", plain.route.at(7'000.0)},
                                        {"terminus", plain.route.at(9'900.0)}},
                            .met_at = {}};
    known.snap(plain.route, {place("beside the road"), place("terminus")});
    ASSERT_EQ(plain.route.places.size(), 2U);
    // 3 km of the road either way: at its end of the two, and said to be far off.
    EXPECT_EQ(plain.route.places[0].name, "beside the road");
    EXPECT_NEAR(plain.route.places[0].off_m, 3'000.0, 0.1);
    EXPECT_EQ(plain.route.places[1].name, "terminus");
    EXPECT_NEAR(plain.route.places[1].along_m, 10'000.0, 0.1);
    EXPECT_NEAR(plain.route.places[1].off_m, 100.0, 0.1);
}

TEST(PlaceSnap, FarOffIsACautionAndStillAPlace) {
    test::PlainTrip plain = test::plain_trip({test::walk(4'000.0)});
    const geo::Position beside = geo::destination(plain.route.at(2'000.0), 90.0, 700.0);
    const KnownPlaces known{.of_trip = {{"hut", beside}}, .met_at = {}};
    known.snap(plain.route, {place("hut")});
    ASSERT_EQ(plain.route.places.size(), 1U);
    EXPECT_NEAR(plain.route.places[0].off_m, 700.0, 0.1);
    ASSERT_EQ(plain.route.cautions.size(), 1U);
    EXPECT_NE(plain.route.cautions[0].text.find("hut"), std::string::npos);
}

TEST(PlaceSnap, KeepsOrderAlongTheRoute) {
    test::PlainTrip plain = test::plain_trip({test::walk(4'000.0)});
    const KnownPlaces known{
        .of_trip = {{"later", plain.route.at(3'000.0)}, {"earlier", plain.route.at(1'000.0)}},
        .met_at = {}};
    known.snap(plain.route, {place("later"), place("earlier")});
    ASSERT_EQ(plain.route.places.size(), 2U);
    EXPECT_EQ(plain.route.places[0].name, "earlier");
    EXPECT_EQ(plain.route.places[0].spec, 1U); // where the trip file has it
    EXPECT_EQ(plain.route.places[1].name, "later");
}

} // namespace
} // namespace tumpline::planner
