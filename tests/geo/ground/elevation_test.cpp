#include "geo/ground/elevation.h"

#include "geo/ground/geoid.h"
#include "geo/profiles/profile.h"
#include "tests/support/published_value.h"
#include "tests/support/raster_file.h"
#include "tests/support/temp_folder.h"

#include <fmt/format.h>
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>
#include <filesystem>
#include <limits>
#include <string>
#include <vector>

/// Where the cells of rasters stand, what counts as void, and heights along a line.
namespace tumpline::geo {
namespace {

namespace fs = std::filesystem;
using test::centre;
using test::PublishedValue;
using test::RasterFile;
using test::small_raster;
using test::TempFolder;
using test::tilted_m;
using test::write_hgt;
using test::write_raster;
using testing::HasSubstr;

TEST(Elevation, IsLinearBetweenCellCentresAndBeyondTheOuterOnes) {
    const TempFolder folder;
    const fs::path file = folder.path() / "slope.tif";
    write_raster(file, small_raster(), tilted_m);
    Elevation elevation({file});
    for (double column = -0.5; column <= 49.5; column += 0.25)
        for (double row = -0.5; row <= 39.5; row += 0.25) {
            const auto found = elevation.at(centre(column * 0.999999, row * 0.999999));
            ASSERT_TRUE(found) << column << ' ' << row;
            ASSERT_NEAR(*found, 100.0 + 3.0 * column - 2.0 * row, 1e-3);
        }
    EXPECT_FALSE(elevation.at(centre(-0.6, 3.0)));
    EXPECT_FALSE(elevation.at(centre(49.6, 3.0)));
    EXPECT_FALSE(elevation.at(centre(3.0, -0.6)));
    EXPECT_FALSE(elevation.at(centre(3.0, 39.6)));
    EXPECT_FALSE(elevation.at({.lat_deg = 95.0, .lon_deg = 12.01}));
}

TEST(Elevation, TilesOfAnHgtMeetOnTheDegreeLines) {
    const TempFolder folder;
    const auto height = [](int west, int column, int row) {
        return 20 * west + column / 60 + row / 300; // whole metres on every sixtieth column
    };
    for (const int west : {10, 11})
        write_hgt(folder.path() / fmt::format("N61E0{}.hgt", west), 1201, [&](int column, int row) {
            return height(west, column, row);
        });
    Elevation elevation({folder.path() / "N61E010.hgt", folder.path() / "N61E011.hgt"});
    EXPECT_NEAR(*elevation.at({.lat_deg = 61.0, .lon_deg = 10.0}), 204.0, 1e-3);
    EXPECT_NEAR(*elevation.at({.lat_deg = 62.0, .lon_deg = 11.0}), 220.0, 1e-3);
    EXPECT_NEAR(*elevation.at({.lat_deg = 62.0, .lon_deg = 11.05}), 221.0, 1e-3);
    EXPECT_NEAR(*elevation.at({.lat_deg = 61.5, .lon_deg = 12.0}), 242.0, 1e-3);
}

TEST(Elevation, CellsThatArePointsAreNotShifted) {
    const TempFolder folder;
    RasterFile raster = small_raster();
    raster.point = true; // the first cell stands at 61 N 12 E itself
    write_raster(folder.path() / "points.tif", raster, tilted_m);
    Elevation elevation({folder.path() / "points.tif"});
    EXPECT_NEAR(*elevation.at({.lat_deg = 61.0, .lon_deg = 12.0}), 100.0, 1e-3);
    EXPECT_NEAR(*elevation.at({.lat_deg = 60.99, .lon_deg = 12.01}), 110.0, 1e-3);
}

// The rasters hold the coordinates of their own grid: looked up at a printed place they must give
// the printed easting and northing.
TEST(Elevation, TransformsPlacesIntoTheRastersCrs) {
    const TempFolder folder;
    int rows = 0;
    for (const char* formula : {"utm_easting", "utm_northing"})
        for (const PublishedValue& row : test::published("geodesy", formula)) {
            const bool easting = row.formula == "utm_easting";
            const double middle = std::round(row.expected / 100.0) * 100.0;
            const RasterFile raster{
                .columns = 100,
                .rows = 100,
                .corner_and_cell =
                    easting
                        ? std::array{middle - 5'000.0, 100.0, 0.0, 10'000'000.0, 0.0, -100'000.0}
                        : std::array{0.0, 10'000.0, 0.0, middle + 5'000.0, 0.0, -100.0},
                .crs = fmt::format("EPSG:{}", 28300 + row.input("zone")),
                .no_data = std::nullopt,
                .unit = ""};
            const fs::path file = folder.path() / (row.id + ".tif");
            write_raster(file, raster, [&](int column, int line) {
                return easting ? 100.0 * (column - 49.5) : 100.0 * (49.5 - line);
            });
            const auto found = Elevation({file}).at(
                {.lat_deg = row.input("lat_deg"), .lon_deg = row.input("lon_deg")});
            ASSERT_TRUE(found) << row;
            EXPECT_NEAR(middle + *found, row.expected, 0.002) << row;
            ++rows;
        }
    EXPECT_GT(rows, 0);
}

TEST(Elevation, CrossesTheAntimeridian) {
    const TempFolder folder;
    const auto by_longitude = [](double west_deg, double cell_deg) {
        return [=](int column, int) {
            return 100.0 + std::remainder(west_deg + (column + 0.5) * cell_deg - 180.0, 360.0);
        };
    };
    const RasterFile east{.columns = 200,
                          .rows = 100,
                          .corner_and_cell = {179.0, 0.01, 0.0, -16.0, 0.0, -0.01},
                          .crs = "EPSG:4326",
                          .no_data = std::nullopt,
                          .unit = ""};
    RasterFile west = east;
    west.corner_and_cell[0] = -181.0;
    const RasterFile world{.columns = 720,
                           .rows = 360,
                           .corner_and_cell = {-180.0, 0.5, 0.0, 90.0, 0.0, -0.5},
                           .crs = "EPSG:4326",
                           .no_data = std::nullopt,
                           .unit = ""};
    write_raster(folder.path() / "east.tif", east, by_longitude(179.0, 0.01));
    write_raster(folder.path() / "west.tif", west, by_longitude(179.0, 0.01));
    write_raster(folder.path() / "world.tif", world, by_longitude(-180.0, 0.5));
    for (const char* name : {"east.tif", "west.tif", "world.tif"}) {
        Elevation elevation({folder.path() / name});
        for (const double lon_deg : {179.7, 179.999, 180.0, -180.0, -179.999, -179.7}) {
            const auto found = elevation.at({.lat_deg = -16.5, .lon_deg = lon_deg});
            ASSERT_TRUE(found) << name << ' ' << lon_deg;
            EXPECT_NEAR(*found, 100.0 + std::remainder(lon_deg - 180.0, 360.0), 1e-3)
                << name << ' ' << lon_deg;
        }
    }
}

TEST(Elevation, ReadsATurnedGrid) {
    const TempFolder folder;
    RasterFile raster = small_raster();
    raster.corner_and_cell = {12.0, 0.0, 0.001, 61.0, -0.001, 0.0}; // columns run southwards
    write_raster(folder.path() / "turned.tif", raster, tilted_m);
    Elevation elevation({folder.path() / "turned.tif"});
    EXPECT_NEAR(*elevation.at({.lat_deg = 61.0 - 0.001 * 10.5, .lon_deg = 12.0 + 0.001 * 4.5}),
                tilted_m(10, 4),
                1e-3);
}

// ---- voids ------------------------------------------------------------------------------------

TEST(Elevation, WeighsTheCellsAroundAVoidByTheirDistance) {
    const TempFolder folder;
    const fs::path tile = folder.path() / "N61E012.hgt";
    write_hgt(tile, 1201, [](int column, int row) {
        if (column == 600 && row == 600)
            return -32768;
        if (column >= 700 && column <= 710 && row >= 700 && row <= 710)
            return -32768;
        return column == 601 ? 90 : 30;
    });
    Elevation elevation({tile});
    const auto at = [&](double column, double row) {
        return elevation.at({.lat_deg = 62.0 - row / 1200.0, .lon_deg = 12.0 + column / 1200.0});
    };
    // From the middle of a square whose north-west cell is void all others are equally far.
    EXPECT_NEAR(*at(600.5, 600.5), (90.0 + 30.0 + 90.0) / 3.0, 1e-2);
    // A quarter of a cell east of the void: distances to the three others.
    const double east = 1.0 / 0.75, south = 1.0 / std::hypot(0.25, 1.0),
                 south_east = 1.0 / std::hypot(0.75, 1.0);
    EXPECT_NEAR(*at(600.25, 600.0),
                (90.0 * east + 30.0 * south + 90.0 * south_east) / (east + south + south_east),
                1e-2);
    EXPECT_FALSE(at(705.5, 705.5)); // all four void
    EXPECT_FALSE(at(705.0, 705.0));
    EXPECT_TRUE(at(710.5, 710.5)); // three void
}

TEST(Elevation, VoidsOfEveryMarkAreVoids) {
    const TempFolder folder;
    for (const double mark : {-32768.0,
                              -9999.0,
                              -3.4028234663852886e38,
                              std::numeric_limits<double>::quiet_NaN(),
                              std::numeric_limits<double>::infinity(),
                              12'345.0}) {
        const fs::path file = folder.path() / "void.tif";
        write_raster(file, small_raster(), [&](int, int) { return mark; });
        EXPECT_FALSE(Elevation({file}).at(centre(5, 5))) << mark;
    }
    RasterFile declared = small_raster();
    declared.no_data = 0.0;
    write_raster(folder.path() / "declared.tif", declared, [](int column, int) {
        return column < 20 ? 0.0 : 55.0;
    });
    Elevation elevation({folder.path() / "declared.tif"});
    EXPECT_FALSE(elevation.at(centre(5, 5)));
    EXPECT_EQ(elevation.at(centre(30, 5)), 55.0);
}

TEST(Elevation, TheFirstRasterThatKnowsAnswers) {
    const TempFolder folder;
    RasterFile holes = small_raster();
    holes.no_data = -1.0;
    write_raster(folder.path() / "holes.tif", holes, [](int column, int) {
        return column < 20 ? 10.0 : -1.0;
    });
    write_raster(folder.path() / "whole.tif", small_raster(), [](int, int) { return 70.0; });
    Elevation elevation({folder.path() / "holes.tif", folder.path() / "whole.tif"});
    EXPECT_EQ(elevation.at(centre(5, 5)), 10.0);
    EXPECT_EQ(elevation.at(centre(30, 5)), 70.0);
    EXPECT_FALSE(elevation.at({.lat_deg = 10.0, .lon_deg = 12.0}));
    EXPECT_THAT(elevation.describe(), testing::SizeIs(2));
    EXPECT_NEAR(elevation.cell_m(), std::sqrt(111.4 * 54.1), 1.0);
}

TEST(Elevation, WithoutRastersItKnowsNothing) {
    Elevation elevation({});
    EXPECT_FALSE(elevation.at({.lat_deg = 61.0, .lon_deg = 12.0}));
    EXPECT_EQ(elevation.cell_m(), 0.0);
    EXPECT_TRUE(elevation.describe().empty());
}

// ---- datum and unit ---------------------------------------------------------------------------

TEST(Elevation, TurnsHeightsAboveTheEllipsoidIntoHeightsAboveTheGeoid) {
    if (!geoid_height_m({.lat_deg = 61.0, .lon_deg = 12.0}))
        GTEST_SKIP() << "PROJ's grid egm96_15.gtx is not installed";
    const TempFolder folder;
    RasterFile raster = small_raster();
    raster.crs = "EPSG:4979"; // WGS 84 with ellipsoidal heights
    write_raster(folder.path() / "ellipsoid.tif", raster, [](int, int) { return 500.0; });
    raster.crs = "EPSG:4326+5773"; // the same with heights above EGM96
    write_raster(folder.path() / "geoid.tif", raster, [](int, int) { return 500.0; });
    Elevation ellipsoid({folder.path() / "ellipsoid.tif"});
    Elevation geoid({folder.path() / "geoid.tif"});
    const Position place = centre(5, 5);
    EXPECT_NEAR(*ellipsoid.at(place), 500.0 - *geoid_height_m(place), 1e-3);
    EXPECT_NEAR(*geoid.at(place), 500.0, 1e-3);
    EXPECT_THAT(ellipsoid.describe().front(), HasSubstr("corrected to the geoid"));
    EXPECT_THAT(geoid.describe().front(), HasSubstr("above the geoid"));
}

TEST(Elevation, TurnsFeetIntoMetres) {
    const TempFolder folder;
    RasterFile raster = small_raster();
    raster.unit = "ft";
    write_raster(folder.path() / "feet.tif", raster, [](int, int) { return 1000.0; });
    EXPECT_NEAR(*Elevation({folder.path() / "feet.tif"}).at(centre(5, 5)), 304.8, 1e-3);
}

TEST(Elevation, AProfileTakesItsHeightsFromTheRaster) {
    const TempFolder folder;
    write_raster(
        folder.path() / "ramp.tif", small_raster(), [](int, int row) { return 2.0 * row; });
    Elevation elevation({folder.path() / "ramp.tif"});
    const Polyline line({centre(20, 35), centre(20, 5)}); // northwards and downhill: 30 rows of 2 m
    const Profile profile = make_profile(line, {}, &elevation, Surface::land, {});
    EXPECT_EQ(profile.source, HeightSource::raster);
    EXPECT_NEAR(profile.ascent_m, 0.0, 1e-9);
    EXPECT_NEAR(profile.descent_m, 60.0, 1e-3);
    EXPECT_EQ(profile.threshold_m, 5.0);
}

TEST(Elevation, HolesOfTheRasterAreFilledFromTheTrackWithoutASeam) {
    const TempFolder folder;
    RasterFile raster = small_raster();
    raster.no_data = -1.0;
    write_raster(folder.path() / "hole.tif", raster, [](int, int row) {
        return row >= 15 && row <= 25 ? -1.0 : 300.0; // 1.2 km of hole
    });
    Elevation elevation({folder.path() / "hole.tif"});
    const Polyline line({centre(20, 38), centre(20, 20), centre(20, 1)});
    // The receiver reads 40 m too high throughout, and knows of a hill in the hole.
    const PointHeights recorded{340.0, 400.0, 340.0};
    const Profile profile = make_profile(line, recorded, &elevation, Surface::land, {});
    EXPECT_EQ(profile.source, HeightSource::raster);
    EXPECT_EQ(profile.interpolated + profile.unknown, 0U);
    EXPECT_NEAR(profile.ascent_m, profile.descent_m, 1.0);
    EXPECT_GT(profile.ascent_m, 15.0);
    EXPECT_LT(profile.ascent_m, 60.0);
}

TEST(Elevation, TheTrackAnswersWhereTheRasterCoversTheLesserPart) {
    const TempFolder folder;
    write_raster(folder.path() / "part.tif", small_raster(), [](int, int) { return 900.0; });
    Elevation elevation({folder.path() / "part.tif"});
    const Polyline line({centre(20, 38), centre(20, 120)});
    const Profile profile = make_profile(line, {100.0, 200.0}, &elevation, Surface::land, {});
    EXPECT_EQ(profile.source, HeightSource::track);
    EXPECT_NEAR(profile.ascent_m, 100.0, 1e-3);
}

} // namespace
} // namespace tumpline::geo
