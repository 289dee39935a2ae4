#include "geo/layers/geo_box.h"

#include <gtest/gtest.h>

namespace tumpline::geo {
namespace {

TEST(GeoBox, HoldsItsPointsAndTheMarginAroundThem) {
    const GeoBox box = box_around({{60.0, 10.0}, {60.5, 11.0}}, 11'050.0); // a tenth of a degree
    EXPECT_NEAR(box.south_deg, 59.9, 1e-9);
    EXPECT_NEAR(box.north_deg, 60.6, 1e-9);
    EXPECT_LT(box.west_deg, 9.8); // 0.1 / cos 60.6 = 0.204
    EXPECT_TRUE(box.contains({60.2, 9.81}));
    EXPECT_FALSE(box.contains({60.2, 9.6}));
    EXPECT_FALSE(box.contains({60.7, 10.5}));
    EXPECT_FALSE(box.odd());
}

TEST(GeoBox, CrossesTheAntimeridianTheShortWay) {
    const GeoBox box = box_around({{-16.0, 179.9}, {-16.5, -179.9}}, 1000.0);
    EXPECT_LT(box.east_deg - box.west_deg, 0.3);
    EXPECT_TRUE(box.contains({-16.2, 180.0}));
    EXPECT_TRUE(box.contains({-16.2, -179.95}));
    EXPECT_FALSE(box.contains({-16.2, 0.0}));
    EXPECT_TRUE(box.odd());
    EXPECT_TRUE(box_around({{89.9, 0.0}}, 1000.0).odd());
}

} // namespace
} // namespace tumpline::geo
