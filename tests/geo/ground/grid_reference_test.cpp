#include "geo/ground/grid_reference.h"

#include <gtest/gtest.h>

namespace tumpline::geo {
namespace {

// The worked example of GeographicLib's GeoConvert: 33.3 N 44.4 E is 38SMB4488 (to a kilometre)
// and 38n 444140.54 3684706.36. Source: its manual page, GeoConvert(1).
TEST(GridReference, IsThatOfTheManualsExample) {
    const Position baghdad{33.3, 44.4};
    EXPECT_EQ(utm_text(baghdad), "38S 444140 3684706");
    EXPECT_EQ(mgrs_text(baghdad), "38SMB 44140 84706");
    const std::optional<GridPlace> place = grid_place(baghdad);
    ASSERT_TRUE(place);
    EXPECT_NEAR(place->easting_m, 444140.54, 0.01);
    EXPECT_NEAR(place->northing_m, 3684706.36, 0.01);
    EXPECT_LT(place->convergence_deg, 0.0); // west of the zone's middle, 45 E
}

TEST(GridReference, KnowsTheWideZoneOfNorway) {
    // 60 N 5 E lies in zone 32, which is widened to the west there, not in 31.
    EXPECT_EQ(utm_text({60.0, 5.0}).substr(0, 3), "32V");
}

TEST(GridReference, GoesBackToWhereItCameFrom) {
    const Position at{-41.5, 172.25};
    const std::optional<GridPlace> place = grid_place(at);
    ASSERT_TRUE(place);
    EXPECT_FALSE(place->north);
    const std::optional<Position> back = from_grid(*place);
    ASSERT_TRUE(back);
    EXPECT_NEAR(back->lat_deg, at.lat_deg, 1e-9);
    EXPECT_NEAR(back->lon_deg, at.lon_deg, 1e-9);
    EXPECT_FALSE(grid_place(at, 1)) << "half the world from its zone";
}

TEST(GridReference, TellsNoDeclinationForAYearThatNoModelCovers) {
    EXPECT_FALSE(declination_deg({60.0, 10.0}, 1890.0));
}

} // namespace
} // namespace tumpline::geo
