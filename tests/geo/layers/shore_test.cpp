#include "geo/layers/shore.h"

#include "geo/lines/geodesic.h"

#include <gtest/gtest.h>

namespace tumpline::geo {
namespace {

constexpr Position buoy{61.0, 10.0};

/// A lake that reaches 3 km west and 1 km east of the buoy, 500 m north and 800 m south, with an
/// island of 100 m to a side whose east shore lies 1 km west.
MapLayers lake() {
    const auto corner = [](double north_m, double east_m) {
        return destination(destination(buoy, 0.0, north_m), 90.0, east_m);
    };
    LandFeature water;
    water.kind = LayerKind::water;
    water.shape = LandShape::area;
    water.parts = {{corner(500, -3000), corner(500, 1000), corner(-800, 1000), corner(-800, -3000)},
                   {corner(50, -1100), corner(50, -1000), corner(-50, -1000), corner(-50, -1100)}};
    return {.features = {water}, .sources = {}};
}

TEST(Shore, FetchReachesToTheFirstLandUpwind) {
    // A lake drawn with four corners has straight shores to within a metre here.
    EXPECT_NEAR(*fetch_m(lake(), buoy, 90.0), 1000.0, 1.0);
    EXPECT_NEAR(*fetch_m(lake(), buoy, 0.0), 500.0, 1.0);
    EXPECT_NEAR(*fetch_m(lake(), buoy, 180.0), 800.0, 1.0);
    EXPECT_NEAR(*fetch_m(lake(), buoy, 270.0), 1000.0, 1.0) << "the island's shore";
    // Past the island: 3 km to the west shore, at 20 degrees 500 / cos 20 = 532.1 m to the north.
    EXPECT_NEAR(*fetch_m(lake(), destination(buoy, 0.0, 200.0), 270.0), 3000.0, 3.0);
    EXPECT_NEAR(*fetch_m(lake(), buoy, 20.0), 532.1, 1.0);
    EXPECT_NEAR(*fetch_m(lake(), buoy, -340.0), 532.1, 1.0);
}

TEST(Shore, IsAsFarAsItsNearestPiece) {
    EXPECT_NEAR(*shore_m(lake(), buoy), 500.0, 1.0);
    EXPECT_NEAR(*shore_m(lake(), destination(buoy, 90.0, 900.0)), 100.0, 1.0);
    EXPECT_NEAR(*shore_m(lake(), destination(buoy, 270.0, 950.0)), 50.0, 1.0);
}

TEST(Shore, IsNotKnownOffTheWater) {
    EXPECT_FALSE(fetch_m(lake(), destination(buoy, 0.0, 700.0), 0.0));
    EXPECT_FALSE(fetch_m(lake(), destination(buoy, 270.0, 1050.0), 0.0)) << "on the island";
    EXPECT_FALSE(shore_m({}, buoy));
}

} // namespace
} // namespace tumpline::geo
