#include "planner/route/steep_ground.h"

#include "geo/ground/grid_reference.h"
#include "geo/ground/map_projection.h"
#include "tests/support/raster_file.h"
#include "tests/support/temp_folder.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <filesystem>
#include <functional>

namespace tumpline::planner {
namespace {

constexpr double middle_east_m = 500'000.0; // of zone 31
constexpr double middle_north_m = 4'983'000.0;
constexpr double cell_m = 25.0;
constexpr int cells = 320; // 8 km a side

/// A place so far east and north of the middle.
geo::Position away(const geo::MapPoint& by) {
    return geo::from_grid({.zone = 31,
                           .north = true,
                           .easting_m = middle_east_m + by.east_m,
                           .northing_m = middle_north_m + by.north_m,
                           .convergence_deg = 0.0})
        .value();
}

/// What is seen from a walk between two places over ground whose height depends on the way east.
SteepGround over(const std::function<double(double)>& height_m,
                 const geo::Position& from,
                 const geo::Position& to) {
    const test::TempFolder folder;
    const std::filesystem::path file = folder.path() / "ground.tif";
    constexpr double half_m = 0.5 * cells * cell_m;
    test::write_raster(
        file,
        {.columns = cells,
         .rows = cells,
         .corner_and_cell =
             {middle_east_m - half_m, cell_m, 0.0, middle_north_m + half_m, 0.0, -cell_m},
         .crs = "EPSG:32631",
         .no_data = {},
         .unit = ""},
        [&](int column, int /*row*/) { return height_m((column + 0.5) * cell_m - half_m); });
    geo::Elevation elevation({file});
    Route route;
    route.legs.push_back({.name = "Walk",
                          .travel = Travel::walk,
                          .spec = {},
                          .line = geo::Polyline({from, to}),
                          .from_m = 100.0,
                          .to_m = 1100.0,
                          .profile = {}});
    return steep_ground(route, elevation);
}

/// Flat, then 40 degrees (0.8391) from 300 to 700 m, then flat: 336 m higher.
double wall_m(double east_m) {
    return 1000.0 + 0.8391 * std::clamp(east_m - 300.0, 0.0, 400.0);
}

TEST(SteepGround, IsFoundAboveTheLine) {
    const SteepGround steep = over(wall_m, away({0.0, -500.0}), away({0.0, 500.0}));
    ASSERT_EQ(steep.parts.size(), 1U);
    const SteepPart& part = steep.parts[0];
    EXPECT_FALSE(part.on_line);
    EXPECT_NEAR(part.from_m, 100.0, 1.0);
    EXPECT_NEAR(part.to_m, 1100.4, 2.0); // the map's scale is 0.9996
    EXPECT_NEAR(part.steepest_deg, 40.0, 1.0);
    // 0.8391 (x - 300) = 0.3443 x at 508.7 m, and the first cell wholly beyond it
    EXPECT_NEAR(part.nearest_m, 508.7, 50.0);
    EXPECT_GE(part.nearest_m, 508.7);
    EXPECT_TRUE(steep.known[0]);
}

TEST(SteepGround, IsToldApartOnTheLineAndBelowIt) {
    const SteepGround steep = over(wall_m, away({0.0, 0.0}), away({1000.0, 0.0}));
    ASSERT_EQ(steep.parts.size(), 2U); // nothing on the height behind
    EXPECT_FALSE(steep.parts[0].on_line);
    EXPECT_TRUE(steep.parts[1].on_line);
    EXPECT_NEAR(steep.parts[1].from_m, 100.0 + 300.0, 45.0);
    EXPECT_NEAR(steep.parts[1].to_m, 100.0 + 700.0, 45.0);
    EXPECT_EQ(steep.parts[1].nearest_m, 0.0);
}

TEST(SteepGround, BehindAHillDoesNotCount) {
    const auto hill = [](double east_m) { // up at 20 degrees over 1 km, down at 40
        return 1000.0 + 0.364 * std::clamp(east_m - 300.0, 0.0, 1000.0) -
               0.8391 * std::clamp(east_m - 1300.0, 0.0, 400.0);
    };
    EXPECT_TRUE(over(hill, away({0.0, -500.0}), away({0.0, 500.0})).parts.empty());
}

TEST(SteepGround, SteeperThanSnowLiesDoesNotCount) {
    const auto cliff = [](double east_m) { // 60 degrees
        return 1000.0 + 1.732 * std::clamp(east_m - 300.0, 0.0, 400.0);
    };
    for (const SteepPart& part : over(cliff, away({0.0, -500.0}), away({0.0, 500.0})).parts)
        EXPECT_LE(part.steepest_deg, 50.0); // its rounded edge at most
}

TEST(SteepGround, IsNotKnownBeyondTheRaster) {
    const SteepGround steep = over(wall_m, away({-500.0, 3600.0}), away({-500.0, 4600.0}));
    EXPECT_FALSE(steep.known[0]);
}

TEST(SteepGround, IsLookedForWhereATripSpeaksOfSnow) {
    Trip trip;
    EXPECT_FALSE(speaks_of_snow(trip));
    trip.weather.snow_depth_m = 0.0;
    EXPECT_FALSE(speaks_of_snow(trip));
    trip.route.legs.resize(1);
    trip.route.legs[0].terrain = Terrain::snow;
    EXPECT_TRUE(speaks_of_snow(trip));
    Trip deep;
    deep.weather.snow_depth_m = 0.1;
    EXPECT_TRUE(speaks_of_snow(deep));
}

} // namespace
} // namespace tumpline::planner
