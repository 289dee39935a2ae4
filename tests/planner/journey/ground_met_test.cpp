#include "planner/journey/ground_met.h"

#include "planner/models/terrain.h"
#include "tests/support/plain_trip.h"

#include <gtest/gtest.h>

namespace tumpline::planner {
namespace {

GroundMet met_on(const test::PlainTrip& plain, int day = 1) {
    return ground_met({plain.route.legs[0], day}, assume(plain.trip));
}

TEST(GroundMet, WithoutSnowIsTheGround) {
    const GroundMet met = met_on(test::plain_trip({test::walk(1000.0)}));
    EXPECT_EQ(met.time_factor, 1.0);
    EXPECT_EQ(met.eta, 1.1);
    EXPECT_FALSE(met.snow_m);
}

// 20 cm: z = 20 (1 - 0.3/1.186) = 14.94 cm, eta = 1.30 + 0.082 * 14.94 = 2.525.
TEST(GroundMet, SnowOfADepthLiesOnAnyGround) {
    test::PlainTrip plain = test::plain_trip({test::walk(1000.0)});
    plain.trip.weather.snow_depth_m = 0.2;
    const GroundMet path = met_on(plain);
    EXPECT_EQ(path.snow_m, 0.2);
    EXPECT_NEAR(path.sinks_m, 0.1494, 1e-4);
    EXPECT_NEAR(path.eta, 2.525, 1e-3);
    EXPECT_NEAR(path.time_factor, equal_effort_time_factor(2.525), 1e-3);
    EXPECT_NEAR(path.time_factor, 2.2, 0.1);           // the table's for footprints of 15 cm
    plain.route.legs[0].spec.terrain = Terrain::brush; // 2.5 and 1.5
    const GroundMet brush = met_on(plain);
    EXPECT_EQ(brush.time_factor, 2.5); // slower than the snow
    EXPECT_NEAR(brush.eta, 2.525, 1e-3);
}

TEST(GroundMet, OnASnowLegTheDepthReplacesTheTable) {
    test::PlainTrip plain = test::plain_trip({test::walk(1000.0)});
    plain.route.legs[0].spec.terrain = Terrain::snow;
    EXPECT_EQ(met_on(plain).time_factor, 2.2);
    plain.trip.weather.snow_depth_m = 0.05; // sinks 3.7 cm
    EXPECT_LT(met_on(plain).time_factor, 1.6);
    EXPECT_NEAR(met_on(plain).eta, 1.606, 1e-3); // 1.30 + 0.082 * 3.735
    plain.route.legs[0].spec.footprint_m = 0.25; // known better
    EXPECT_NEAR(met_on(plain).eta, 3.35, 1e-9);
    EXPECT_EQ(met_on(plain).sinks_m, 0.25);
}

TEST(GroundMet, AModelOfItsOwnCurveTakesWhatSnowAdds) {
    test::PlainTrip plain = test::plain_trip({test::walk(1000.0)});
    plain.route.legs[0].spec.terrain = Terrain::off_path; // 1.67
    plain.trip.models.walking = "irmischer-clarke";
    EXPECT_NEAR(met_on(plain).time_factor, 1.0, 1e-12);
    plain.trip.weather.snow_depth_m = 0.2; // 2.27 on a path
    EXPECT_NEAR(met_on(plain).time_factor, 2.27 / 1.67, 0.01);
}

} // namespace
} // namespace tumpline::planner
