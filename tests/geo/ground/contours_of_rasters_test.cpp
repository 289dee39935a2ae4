/// One mountain in every form in which rasters come: its lines are the same on the map.

#include "geo/ground/contours.h"
#include "geo/ground/elevation.h"
#include "geo/ground/geoid.h"
#include "tests/support/raster_file.h"
#include "tests/support/temp_folder.h"

#include <gtest/gtest.h>
#include <ogr_spatialref.h>

#include <algorithm>
#include <cmath>
#include <memory>

namespace tumpline::geo {
namespace {

constexpr Position top{61.0, 12.0};
constexpr double m_per_lat_deg = 111'430.0; ///< about 61 N: see raster_test.cpp
constexpr double m_per_lon_deg = 54'140.0;

/// A cone of 900 m with a rough flank, as a function of the place.
double mountain_m(const Position& at) {
    const double north_m = (at.lat_deg - top.lat_deg) * m_per_lat_deg;
    const double east_m = (at.lon_deg - top.lon_deg) * m_per_lon_deg;
    return 900.0 - 0.35 * std::hypot(east_m, north_m) + 15.0 * std::sin(east_m / 400.0);
}

/// 240 cells of about 30 m to a side, in degrees.
constexpr int cells = 240;
constexpr double lat_cell = 30.0 / m_per_lat_deg;
constexpr double lon_cell = 30.0 / m_per_lon_deg;

test::RasterFile in_degrees() {
    return {.columns = cells,
            .rows = cells,
            .corner_and_cell = {top.lon_deg - cells / 2.0 * lon_cell,
                                lon_cell,
                                0.0,
                                top.lat_deg + cells / 2.0 * lat_cell,
                                0.0,
                                -lat_cell},
            .crs = "EPSG:4326",
            .no_data = {},
            .unit = ""};
}

Position centre_of(const test::RasterFile& raster, int column, int row) {
    return {raster.corner_and_cell[3] + (row + 0.5) * raster.corner_and_cell[5],
            raster.corner_and_cell[0] + (column + 0.5) * raster.corner_and_cell[1]};
}

class MountainInManyForms : public testing::Test {
  protected:
    /// The lines of the files' mountain, on a grid of 30 m.
    [[nodiscard]] std::vector<ContourLine> lines(std::vector<std::filesystem::path> files) const {
        Elevation heights(files);
        const GridFrame frame{{-3000.0, 3000.0}, cell_m, 200, 200};
        return contours(smoothed(sampled_heights(heights, projection_, frame)), 50.0);
    }

    /// Every point of the one lies within a cell, one pixel of its map, of the other's line of the
    /// same height.
    static void expect_alike(const std::vector<ContourLine>& found,
                             const std::vector<ContourLine>& wanted) {
        std::size_t points = 0;
        for (const ContourLine& line : found)
            for (const MapPoint& point : line.points) {
                if (std::max(std::abs(point.east_m), std::abs(point.north_m)) > 2900.0)
                    continue; // along the frame lines end half a cell earlier or later
                ++points;
                double nearest_m = 1e9;
                for (const ContourLine& other : wanted)
                    if (other.height_m == line.height_m)
                        for (const MapPoint& at : other.points)
                            nearest_m = std::min(
                                nearest_m,
                                std::hypot(at.east_m - point.east_m, at.north_m - point.north_m));
                ASSERT_LT(nearest_m, cell_m) << line.height_m << " m";
            }
        EXPECT_GT(points, 1000U);
    }

    /// Both ways, so that none has lines which the other lacks.
    void expect_the_same(const std::vector<std::filesystem::path>& files) const {
        const std::vector<ContourLine> found = lines(files);
        expect_alike(found, plain_);
        expect_alike(plain_, found);
    }

    std::filesystem::path write(const char* name,
                                const test::RasterFile& raster,
                                const std::function<double(const Position&)>& height_m) const {
        const std::filesystem::path file = folder_.path() / name;
        test::write_raster(file, raster, [&](int column, int row) {
            return height_m(centre_of(raster, column, row));
        });
        return file;
    }

    static constexpr double cell_m = 30.0;
    test::TempFolder folder_;
    MapProjection projection_{std::vector<Position>{top}};
    std::vector<ContourLine> plain_ = lines({write("plain.tif", in_degrees(), mountain_m)});
};

TEST_F(MountainInManyForms, HasTheSameLinesInFeet) {
    test::RasterFile raster = in_degrees();
    raster.unit = "ft";
    expect_the_same(
        {write("feet.tif", raster, [](const Position& at) { return mountain_m(at) / 0.3048; })});
}

TEST_F(MountainInManyForms, HasTheSameLinesAboveTheEllipsoid) {
    if (!geoid_height_m(top))
        GTEST_SKIP() << "PROJ's grid egm96_15.gtx is not installed";
    test::RasterFile raster = in_degrees();
    raster.crs = "EPSG:4979";
    expect_the_same({write("ellipsoid.tif", raster, [](const Position& at) {
        return mountain_m(at) + *geoid_height_m(at);
    })});
}

TEST_F(MountainInManyForms, HasTheSameLinesWhereDegreesRunTo360) {
    // The same ground is at 372 degrees for a raster whose degrees go on; the mountain at 12.
    test::RasterFile raster = in_degrees();
    raster.corner_and_cell[0] += 360.0;
    expect_the_same({write("round.tif", raster, [](const Position& at) {
        return mountain_m({at.lat_deg, at.lon_deg - 360.0});
    })});
}

TEST_F(MountainInManyForms, HasTheSameLinesInUtm) {
    OGRSpatialReference utm;
    OGRSpatialReference degrees;
    ASSERT_EQ(utm.importFromEPSG(32633), OGRERR_NONE);
    ASSERT_EQ(degrees.importFromEPSG(4326), OGRERR_NONE);
    degrees.SetAxisMappingStrategy(OAMS_TRADITIONAL_GIS_ORDER);
    const std::unique_ptr<OGRCoordinateTransformation> to_degrees(
        OGRCreateCoordinateTransformation(&utm, &degrees));
    const std::unique_ptr<OGRCoordinateTransformation> to_utm(
        OGRCreateCoordinateTransformation(&degrees, &utm));
    double east_m = top.lon_deg;
    double north_m = top.lat_deg;
    ASSERT_TRUE(to_utm->Transform(1, &east_m, &north_m));
    const test::RasterFile raster{
        .columns = cells,
        .rows = cells,
        .corner_and_cell = {east_m - 3600.0, 30.0, 0.0, north_m + 3600.0, 0.0, -30.0},
        .crs = "EPSG:32633",
        .no_data = {},
        .unit = ""};
    expect_the_same({write("utm.tif", raster, [&](const Position& flat) {
        double lon = flat.lon_deg;
        double lat = flat.lat_deg;
        EXPECT_TRUE(to_degrees->Transform(1, &lon, &lat));
        return mountain_m({lat, lon});
    })});
}

TEST_F(MountainInManyForms, HasNoSeamBetweenTwoTiles) {
    // West and east of the top's own meridian, which 120 cells lie on either side of.
    test::RasterFile west = in_degrees();
    west.columns = cells / 2;
    test::RasterFile east = west;
    east.corner_and_cell[0] = top.lon_deg;
    const std::vector<std::filesystem::path> tiles{write("west.tif", west, mountain_m),
                                                   write("east.tif", east, mountain_m)};
    expect_the_same(tiles);
    // A line that crosses the border goes on: as many as there are with one raster.
    const auto ends = [](const std::vector<ContourLine>& all) {
        return std::ranges::count_if(all, [](const ContourLine& line) { return !line.closed(); });
    };
    EXPECT_EQ(ends(lines(tiles)), ends(plain_));
}

} // namespace
} // namespace tumpline::geo
