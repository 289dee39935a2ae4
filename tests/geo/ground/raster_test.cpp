#include "geo/ground/raster.h"

#include "geo/input_error.h"
#include "tests/support/raster_file.h"
#include "tests/support/temp_folder.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <filesystem>

namespace tumpline::geo {
namespace {

class RasterOfAPlane : public testing::Test {
  protected:
    RasterOfAPlane() { test::write_raster(file_, test::small_raster(), test::tilted_m); }

    test::TempFolder folder_;
    std::filesystem::path file_ = folder_.path() / "plane.tif";
    TileCache cache_;
};

TEST_F(RasterOfAPlane, HasTheSizeOfItsCells) {
    const Raster raster(file_, {.number = 0, .trip_folder = {}});
    // 0.001 degree at 60.98 N: 111.43 m of the meridian (111132.95 - 559.85 cos 121.96 deg + ...)
    // and 54.14 m of the parallel (111412.88 cos 60.98 deg - 93.5 cos 182.94 deg + ...); their
    // geometric mean is sqrt(111.43 x 54.14) = 77.67 m.
    EXPECT_NEAR(raster.cell_m(), 77.67, 0.01);
    EXPECT_THAT(raster.describe(),
                testing::StartsWith("plane.tif: 50 x 40 cells of 77.7 m, WGS 84, heights above"));
}

TEST_F(RasterOfAPlane, AnswersBetweenCentresAndHalfACellBeyond) {
    Raster raster(file_, {.number = 0, .trip_folder = {}});
    // between (10, 20) and (11, 21): 100 + 3 x 10.5 - 2 x 20.5 = 90.5
    EXPECT_NEAR(*raster.at(test::centre(10.5, 20.5), cache_), 90.5, 1e-3);
    // the north-west corner of the raster, half a cell from the first centre: 100 - 1.5 + 1 = 99.5
    EXPECT_NEAR(*raster.at({.lat_deg = 61.0, .lon_deg = 12.0}, cache_), 99.5, 1e-3);
    EXPECT_FALSE(raster.at({.lat_deg = 61.0001, .lon_deg = 12.0}, cache_));
    EXPECT_FALSE(raster.at({.lat_deg = 60.99, .lon_deg = 12.0501}, cache_));
}

TEST_F(RasterOfAPlane, SharesACacheByItsNumber) {
    test::write_raster(
        folder_.path() / "flat.tif", test::small_raster(), [](int, int) { return 7.0; });
    Raster plane(file_, {.number = 0, .trip_folder = {}});
    Raster flat(folder_.path() / "flat.tif", {.number = 1, .trip_folder = {}});
    EXPECT_NEAR(*plane.at(test::centre(0, 0), cache_), 100.0, 1e-3);
    EXPECT_NEAR(*flat.at(test::centre(0, 0), cache_), 7.0, 1e-3);
    EXPECT_NEAR(*plane.at(test::centre(0, 0), cache_), 100.0, 1e-3);
}

} // namespace
} // namespace tumpline::geo
