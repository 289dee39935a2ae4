#include "geo/ground/height_grid.h"

#include "tests/support/raster_file.h"
#include "tests/support/temp_folder.h"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>

namespace tumpline::geo {
namespace {

constexpr float nan_height = std::numeric_limits<float>::quiet_NaN();

TEST(HeightGrid, HoldsTheRastersHeightsInTheMapsPlane) {
    const test::TempFolder folder;
    const std::filesystem::path file = folder.path() / "slope.tif";
    test::write_raster(file, test::small_raster(), test::tilted_m);
    Elevation elevation({file});
    const MapProjection projection({test::centre(5, 5), test::centre(44, 34)});
    const GridFrame frame{{-1500.0, 1200.0}, 45.0, 60, 50};
    const HeightGrid grid = sampled_heights(elevation, projection, frame);
    int known = 0;
    for (int row = 0; row < frame.rows; ++row)
        for (int column = 0; column < frame.columns; ++column) {
            const auto exact = elevation.at(projection.to_ground(frame.centre(column, row)));
            const float told = grid.at(column, row);
            if (!exact || std::isnan(told))
                continue;
            ++known;
            EXPECT_NEAR(told, *exact, 0.02);
        }
    EXPECT_GT(known, 2000);
}

TEST(HeightGrid, IsSmoothedWithoutWhatIsNotKnown) {
    // One row: 100, unknown, 200. Weights 1 and exp(-2) at two cells:
    // (100 + 0.135335 x 200) / 1.135335 = 111.92.
    HeightGrid grid{{{0.0, 0.0}, 10.0, 3, 1}, {100.0F, nan_height, 200.0F}};
    const HeightGrid smooth = smoothed(grid);
    EXPECT_NEAR(smooth.at(0, 0), 111.92, 0.01);
    EXPECT_TRUE(std::isnan(smooth.at(1, 0)));
    EXPECT_NEAR(smooth.at(2, 0), 188.08, 0.01);
}

TEST(HeightGrid, KnowsNothingInsideAnAreaButOnItsIsland) {
    HeightGrid grid{{{0.0, 100.0}, 10.0, 10, 10}, std::vector<float>(100, 7.0F)};
    const auto square = [](double low, double high) {
        return std::vector<MapPoint>{{low, low}, {high, low}, {high, high}, {low, high}};
    };
    make_unknown(grid, {square(10.0, 90.0), square(40.0, 60.0)});
    // Cells with centres from 15 to 85 m are water, those at 45 and 55 m the island.
    EXPECT_FALSE(std::isnan(grid.at(0, 5)));
    EXPECT_TRUE(std::isnan(grid.at(1, 5)));
    EXPECT_FALSE(std::isnan(grid.at(4, 4)));
    EXPECT_FALSE(std::isnan(grid.at(5, 5)));
    EXPECT_TRUE(std::isnan(grid.at(6, 5)));
    EXPECT_FALSE(std::isnan(grid.at(9, 5)));
    long unknown = 0;
    for (const float height : grid.heights_m)
        unknown += std::isnan(height) ? 1 : 0;
    EXPECT_EQ(unknown, 8 * 8 - 2 * 2);
}

TEST(HeightGrid, TellsItsSteepGround) {
    HeightGrid grid{{{0.0, 0.0}, 10.0, 20, 20}, {}};
    for (int row = 0; row < 20; ++row)
        for (int column = 0; column < 20; ++column)
            grid.heights_m.push_back(static_cast<float>(3 * column + 4 * row));
    EXPECT_NEAR(steep_slope(grid), 0.5, 1e-6); // hypot(3, 4) / 10
    keep_only(grid, [](const MapPoint&) { return false; });
    EXPECT_TRUE(grid.empty());
    EXPECT_EQ(steep_slope(grid), 0.0);
}

} // namespace
} // namespace tumpline::geo
