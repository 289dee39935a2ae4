#include "planner/journey/segments.h"

#include "planner/make_plan.h"
#include "tests/support/level_trip.h"
#include "tests/support/plain_trip.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace tumpline::planner {
namespace {

using test::level_trip;
using test::LevelLeg;

Stretches cut(const Trip& trip, const Route& route, double longest_m = 0.0) {
    return make_stretches(trip, route, assume(trip), longest_m);
}

const Boundary& at_km(const Stretches& stretches, double km) {
    return stretches.boundaries[stretches.boundary_at(km * 1000.0)];
}

TEST(Segments, ACampThatIsSaidToBeDryIsDryBesideASource) {
    test::RandomTrip made =
        level_trip({{.length_m = 20e3}},
                   {{"Spring", PlaceKind::water, 9.9e3}, {"Camp", PlaceKind::camp, 10e3}});
    EXPECT_TRUE(at_km(cut(made.trip, made.route), 10.0).water); // 100 m away
    made.trip.route.places[1].water = false;
    EXPECT_FALSE(at_km(cut(made.trip, made.route), 10.0).water);
    EXPECT_TRUE(at_km(cut(made.trip, made.route), 9.9).water);
    made.trip.days.nights = {"Camp"};
    EXPECT_TRUE(make_plan(made.trip, made.route).days[0].dry_camp);
}

TEST(Segments, ASourceServesTwoHundredMetres) {
    test::RandomTrip made = level_trip({{.length_m = 20e3}},
                                       {{"Spring", PlaceKind::water, 5e3},
                                        {"Near", PlaceKind::camp, 5.199e3},
                                        {"Far", PlaceKind::camp, 5.201e3}});
    const Stretches stretches = cut(made.trip, made.route);
    EXPECT_TRUE(at_km(stretches, 5.199).water);
    EXPECT_FALSE(at_km(stretches, 5.201).water);
}

TEST(Segments, NobodySleepsInTheMiddleOfALake) {
    const test::RandomTrip made =
        level_trip({{.travel = Travel::paddle, .length_m = 10e3}},
                   {{"Buoy", PlaceKind::hazard, 4e3}, {"Island", PlaceKind::camp, 6e3}});
    const Stretches stretches = cut(made.trip, made.route);
    ASSERT_EQ(stretches.stretches.size(), 3U);
    EXPECT_FALSE(at_km(stretches, 4.0).may_sleep);
    EXPECT_TRUE(at_km(stretches, 6.0).may_sleep);
    EXPECT_TRUE(at_km(stretches, 10.0).may_sleep);
}

TEST(Segments, AreCutEvenlyWhereNoneMayBeLonger) {
    const test::RandomTrip made =
        level_trip({{.length_m = 2500.0}, {.travel = Travel::portage, .length_m = 3000.0}}, {});
    const Stretches stretches = cut(made.trip, made.route, 1000.0);
    ASSERT_EQ(stretches.stretches.size(), 4U); // three of 833 m, and the portage whole
    for (std::size_t i = 0; i < 3; ++i)
        EXPECT_NEAR(stretches.stretches[i].length_m(), 2500.0 / 3.0, 0.1);
    EXPECT_NEAR(stretches.stretches[3].length_m(), 3000.0, 0.1);
}

TEST(Segments, LandingsToLookAreSpreadOverTheLeg) {
    // Three looks on 12 km fall at 2, 6 and 10 km; a place at 7 km parts them two and one.
    test::RandomTrip made =
        level_trip({{.travel = Travel::paddle, .length_m = 12e3, .current_mps = 1.0}},
                   {{"Ledge", PlaceKind::hazard, 7e3}});
    made.route.legs[0].spec.scouts = 3;
    const Stretches stretches = cut(made.trip, made.route);
    ASSERT_EQ(stretches.stretches.size(), 2U);
    EXPECT_EQ(stretches.stretches[0].scouts, 2);
    EXPECT_EQ(stretches.stretches[1].scouts, 1);
}

TEST(Segments, SteepIsTheShareOfTimeOnAscentsOfATenthAndMore) {
    const auto share = [](double slope) {
        const test::PlainTrip plain = test::plain_trip({test::walk(1000.0, slope)});
        return cut(plain.trip, plain.route).stretches[0].steep_share;
    };
    EXPECT_EQ(share(0.09), 0.0);
    EXPECT_EQ(share(0.11), 1.0);
    EXPECT_EQ(share(-0.2), 0.0);
    // Half the way level, half at 20 %, by a model that walks both alike.
    test::PlainTrip half = test::plain_trip({test::walk(1000.0)});
    half.trip.models.walking = "constant";
    std::vector<double>& heights_m = half.route.legs[0].profile.heights_m;
    ASSERT_EQ(heights_m.size(), 41U);
    for (std::size_t i = 21; i < 41; ++i)
        heights_m[i] = heights_m[i - 1] + 0.2 * 25.0;
    const Stretch whole = cut(half.trip, half.route).stretches[0];
    EXPECT_NEAR(whole.steep_share, 0.5, 1e-9);
    EXPECT_NEAR(whole.ascent_m, 100.0, 1e-9);
}

TEST(Segments, TheDarkSlowsByTheGroundUnlessTheLegIsSaidToBeDark) {
    test::PlainTrip plain = test::plain_trip({test::walk(1000.0)});
    const auto stretch = [&] { return cut(plain.trip, plain.route).stretches[0]; };
    EXPECT_NEAR(stretch().dark_factor, 1.25, 1e-12);
    plain.route.legs[0].spec.terrain = Terrain::forest;
    EXPECT_NEAR(stretch().dark_factor, 1.5625, 1e-12);
    plain.route.legs[0].spec.night = true;
    EXPECT_EQ(stretch().dark_factor, 1.0);
    EXPECT_NEAR(stretch().time_factor, 1.3 * 1.5625, 1e-12);
}

// A tenth up is a tenth down on the way back. The grade term by its formula, G (1 - 1.05^(1 -
// 1.1^(G + 32))) in percent: 10 (1 - 1.05^-53.76) = 9.274 there, -10 (1 - 1.05^-7.14) = -2.942
// back.
TEST(Segments, TheWayBackOverAClimbIsADescent) {
    test::PlainTrip plain = test::plain_trip({test::walk(1000.0, 0.1)});
    plain.trip.models.walking = "tobler";
    const Stretch stretch = cut(plain.trip, plain.route).stretches[0];
    EXPECT_NEAR(stretch.there.grade, 1000.0 * 9.274, 5.0);
    EXPECT_NEAR(stretch.back.grade, 1000.0 * -2.942, 5.0);
    EXPECT_LT(stretch.back.time_s, stretch.there.time_s) << "a little down is quicker than up";
}

} // namespace
} // namespace tumpline::planner
