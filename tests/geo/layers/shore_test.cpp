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

Shores lake_shores() {
    return {lake(), {destination(buoy, 270.0, 2900.0), destination(buoy, 90.0, 900.0)}};
}

TEST(Shore, FetchReachesToTheFirstLandUpwind) {
    // A lake drawn with four corners has straight shores to within a metre here.
    EXPECT_NEAR(*lake_shores().fetch_m(buoy, 90.0), 1000.0, 1.0);
    EXPECT_NEAR(*lake_shores().fetch_m(buoy, 0.0), 500.0, 1.0);
    EXPECT_NEAR(*lake_shores().fetch_m(buoy, 180.0), 800.0, 1.0);
    EXPECT_NEAR(*lake_shores().fetch_m(buoy, 270.0), 1000.0, 1.0) << "the island's shore";
    // Past the island: 3 km to the west shore, at 20 degrees 500 / cos 20 = 532.1 m to the north.
    EXPECT_NEAR(*lake_shores().fetch_m(destination(buoy, 0.0, 200.0), 270.0), 3000.0, 3.0);
    EXPECT_NEAR(*lake_shores().fetch_m(buoy, 20.0), 532.1, 1.0);
    EXPECT_NEAR(*lake_shores().fetch_m(buoy, -340.0), 532.1, 1.0);
}

TEST(Shore, IsAsFarAsItsNearestPiece) {
    EXPECT_NEAR(*lake_shores().shore_m(buoy), 500.0, 1.0);
    EXPECT_NEAR(*lake_shores().shore_m(destination(buoy, 90.0, 900.0)), 100.0, 1.0);
    EXPECT_NEAR(*lake_shores().shore_m(destination(buoy, 270.0, 950.0)), 50.0, 1.0);
}

TEST(Shore, IsNotKnownOffTheWater) {
    EXPECT_FALSE(lake_shores().fetch_m(destination(buoy, 0.0, 700.0), 0.0));
    EXPECT_FALSE(lake_shores().fetch_m(destination(buoy, 270.0, 1050.0), 0.0)) << "on the island";
    EXPECT_FALSE(Shores({}, {buoy}).shore_m(buoy));
}

TEST(Shore, ALineThatStaysAwayFromTheLakeHasNone) {
    const Position far = destination(buoy, 90.0, 20'000.0);
    EXPECT_FALSE(Shores(lake(), {far, destination(far, 0.0, 500.0)}).shore_m(far));
}

/// At 61 degrees north, 40 km east of the middle of the map, north of the ground is turned by
/// 0.74 degrees x sin 61 = 0.65 degrees; over 1 km of fetch to a shore at 45 degrees that would be
/// an error of 11 m.
TEST(Shore, TheDirectionIsThatOfTheGroundFarFromTheMiddleOfTheMap) {
    const Shores shores(lake(), {buoy, destination(buoy, 270.0, 80'000.0)});
    EXPECT_NEAR(*shores.fetch_m(buoy, 20.0), 532.1, 1.0);
    EXPECT_NEAR(*shores.fetch_m(buoy, 0.0), 500.0, 1.0);
    EXPECT_NEAR(*shores.fetch_m(buoy, 100.0), 1000.0 / 0.98480775, 1.5); // 1 km over cos 10
}

} // namespace
} // namespace tumpline::geo
