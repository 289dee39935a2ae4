#include "geo/gate/to_wgs84.h"

#include "geo/gate/gdal_library.h"

#include <gtest/gtest.h>
#include <ogr_spatialref.h>

namespace tumpline::geo {
namespace {

TEST(ToWgs84, TurnsEastingAndNorthingIntoDegrees) {
    prepare_gdal();
    OGRSpatialReference utm;
    utm.importFromEPSG(32638);
    const ToWgs84 to(utm);
    ASSERT_TRUE(to.usable());
    const std::optional<Position> at = to({444140.54, 3684706.36}); // GeoConvert(1): 33.3 N 44.4 E
    ASSERT_TRUE(at);
    EXPECT_NEAR(at->lat_deg, 33.3, 1e-6);
    EXPECT_NEAR(at->lon_deg, 44.4, 1e-6);
}

TEST(ToWgs84, BringsLongitudesBackAndRefusesWhatIsNoPlace) {
    prepare_gdal();
    OGRSpatialReference wgs84;
    wgs84.importFromEPSG(4326);
    const ToWgs84 to(wgs84);
    EXPECT_NEAR(to({190.0, 10.0})->lon_deg, -170.0, 1e-12);
    EXPECT_FALSE(to({10.0, 95.0}));
    EXPECT_FALSE(to({1000.0, 10.0}));
}

} // namespace
} // namespace tumpline::geo
