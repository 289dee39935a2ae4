#include "planner/route/river_rise.h"

#include "planner/make_plan.h"
#include "tests/support/plain_trip.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace tumpline::planner {
namespace {

/// A line of 101 heights that rises evenly, with canopy over every other one if asked for.
geo::Profile rising(double rise_m, double canopy_m = 0.0) {
    geo::Profile ground;
    ground.length_m = 2500.0;
    ground.step_m = 25.0;
    ground.threshold_m = 5.0;
    for (int i = 0; i <= 100; ++i)
        ground.heights_m.push_back(300.0 + rise_m * i / 100.0 + (i % 2 == 1 ? canopy_m : 0.0));
    return ground;
}

TEST(RiverRise, IsToldOnceItIsMoreThanTheNoise) {
    EXPECT_NEAR(rise_beyond_noise_m(rising(20.0)).value_or(0.0), 20.0, 0.3);
    EXPECT_NEAR(rise_beyond_noise_m(rising(6.0)).value_or(0.0), 6.0, 0.3);
    EXPECT_FALSE(rise_beyond_noise_m(rising(4.0)));
    EXPECT_FALSE(rise_beyond_noise_m(rising(-20.0)));
}

TEST(RiverRise, TreesOverTheBankAreNoRise) {
    geo::Profile ground = rising(-3.0); // falls, but with trees of 15 m over half of its last fifth
    for (std::size_t i = 81; i <= 100; i += 2)
        ground.heights_m[i] += 15.0;
    EXPECT_FALSE(rise_beyond_noise_m(ground));
    EXPECT_NEAR(rise_beyond_noise_m(rising(20.0, 15.0)).value_or(0.0), 20.0, 0.5);
}

TEST(RiverRise, IsUnknownWithoutHeights) {
    EXPECT_FALSE(rise_beyond_noise_m({}));
    geo::Profile ground = rising(20.0);
    ground.unknown = 60;
    EXPECT_FALSE(rise_beyond_noise_m(ground));
}

std::vector<Caution> said(const test::PlainTrip& plain) {
    std::vector<Caution> found;
    for (const Caution& one : make_plan(plain.trip, plain.route).cautions)
        if (one.code == "water-rises")
            found.push_back(one);
    return found;
}

TEST(RiverRise, StopsAPlanThatCountsTheCurrentWithIt) {
    test::PlainTrip plain = test::plain_trip({test::walk(1000.0), test::river(6000.0, 0.0)});
    EXPECT_TRUE(said(plain).empty());
    plain.route.legs[1].water_rises_m = 12.0;
    plain.route.legs[1].spec.current_mps = 1.0;
    ASSERT_EQ(said(plain).size(), 1U);
    EXPECT_EQ(said(plain)[0].level, Level::stop);
    EXPECT_EQ(said(plain)[0].leg, LegNumber{2});
    EXPECT_NE(said(plain)[0].text.find("rises 12 m "), std::string::npos) << said(plain)[0].text;
    plain.route.legs[1].spec.current_mps.reset();
    ASSERT_EQ(said(plain).size(), 1U);
    EXPECT_EQ(said(plain)[0].level, Level::caution);
}

} // namespace
} // namespace tumpline::planner
