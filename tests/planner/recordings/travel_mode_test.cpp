#include "planner/recordings/travel_mode.h"

#include "geo/profiles/profile.h"
#include "tests/support/raster_file.h"
#include "tests/support/recorded_walk.h"
#include "tests/support/temp_folder.h"

#include <gtest/gtest.h>

namespace tumpline::planner {
namespace {

using test::level;
using test::recorded;
using test::steadily;
using test::Walker;

/// 2 km up, 2 km level, 2 km up.
double two_rises(double along_m) {
    return along_m < 2000.0   ? 400.0 + 0.05 * along_m
           : along_m < 4000.0 ? 500.0
                              : 500.0 + 0.05 * (along_m - 4000.0);
}

std::vector<GroundPart> parts_at(double speed_mps) {
    const geo::Track track =
        recorded({.seconds = 6000.0 / speed_mps, .every_s = 10.0}, two_rises, steadily(speed_mps));
    return afloat_or_on_foot(track, traced(track), nullptr);
}

TEST(TravelMode, LevelGroundBetweenShoresAtABoatsSpeedIsAGuessAtWater) {
    const std::vector<GroundPart> parts = parts_at(4.5 / 3.6);
    ASSERT_EQ(parts.size(), 3U);
    EXPECT_TRUE(parts[1].afloat && parts[1].guess);
    EXPECT_NEAR(parts[1].from_m, 2000.0, 40.0);
    EXPECT_NEAR(parts[1].to_m, 4000.0, 40.0);
    EXPECT_NE(parts[1].why.find("4.5 km/h"), std::string::npos) << parts[1].why;
}

TEST(TravelMode, FasterThanBoatsGoBothWaysItIsNoWater) {
    for (const double kmh : {8.7, 10.5, 14.0}) { // a ride, a run, a ride
        const std::vector<GroundPart> parts = parts_at(kmh / 3.6);
        ASSERT_EQ(parts.size(), 1U) << kmh;
        EXPECT_FALSE(parts[0].afloat) << kmh;
        EXPECT_NE(parts[0].why.find("too fast for a boat"), std::string::npos) << parts[0].why;
    }
}

TEST(TravelMode, LevelFromEndToEndHasNoShore) {
    const geo::Track track = recorded(
        {.every_s = 10.0}, [](double) { return 3.0; }, steadily(1.2));
    const std::vector<GroundPart> parts = afloat_or_on_foot(track, traced(track), nullptr);
    ASSERT_EQ(parts.size(), 1U);
    EXPECT_FALSE(parts[0].afloat);
    EXPECT_NE(parts[0].why.find("nothing tells of water"), std::string::npos) << parts[0].why;
}

TEST(TravelMode, WanderAtRestIsNoWay) {
    // 40 min of rest on a top: at a fix a second the line there is kilometres long and level.
    const auto top = [](double along_m) { return 2100.0 - 0.1 * std::abs(along_m - 1200.0); };
    const geo::Track track = recorded(
        {.seconds = 4000.0, .drift_m = 8.0, .halts = {{1200.0, 2400.0}}}, top, steadily(1.0));
    for (const GroundPart& part : afloat_or_on_foot(track, traced(track), nullptr))
        EXPECT_FALSE(part.afloat) << part.why;
}

/// The ground about the line of `two_rises`, its middle two kilometres level; `across_m` a cell to
/// each side.
std::filesystem::path ground(const test::TempFolder& folder, double across_m) {
    // 0.0005 by 0.00025 degrees at 61 N: 27 by 28 m. The line runs in the middle of column 30.
    const test::RasterFile raster{
        .columns = 61,
        .rows = 260,
        .corner_and_cell = {1.0 - 30.5 * 0.0005, 0.0005, 0.0, 61.06, 0.0, -0.00025},
        .crs = "EPSG:4326",
        .no_data = std::nullopt,
        .unit = {}};
    const std::filesystem::path file = folder.path() / "ground.tif";
    test::write_raster(file, raster, [&](int column, int row) {
        const double lat_deg = 61.06 - 0.00025 * (row + 0.5);
        return two_rises((lat_deg - 61.0) * 111'400.0) + across_m * std::abs(column - 30);
    });
    return file;
}

TEST(TravelMode, ARasterThatIsLevelToBothSidesBearsAWaterOut) {
    const test::TempFolder folder;
    geo::Elevation elevation({ground(folder, 0.0)});
    const geo::Track track =
        recorded({.seconds = 4800.0, .every_s = 10.0}, two_rises, steadily(1.25));
    const std::vector<GroundPart> parts = afloat_or_on_foot(track, traced(track), &elevation);
    ASSERT_EQ(parts.size(), 3U);
    EXPECT_TRUE(parts[1].afloat);
    EXPECT_FALSE(parts[1].guess);
}

TEST(TravelMode, ALevelPathAlongASlopeIsNoWater) {
    const test::TempFolder folder;
    geo::Elevation elevation({ground(folder, 4.0)});
    const geo::Track track =
        recorded({.seconds = 4800.0, .every_s = 10.0}, two_rises, steadily(1.25));
    const std::vector<GroundPart> parts = afloat_or_on_foot(track, traced(track), &elevation);
    ASSERT_EQ(parts.size(), 1U);
    EXPECT_FALSE(parts[0].afloat);
    EXPECT_NE(parts[0].why.find("not to both sides"), std::string::npos) << parts[0].why;
}

TEST(TravelMode, TheLastPieceOfALineRisesToItsEnd) {
    // 2 km up, 2 km level, and from there one straight piece of 500 m, 25 m up.
    geo::Track track =
        recorded({.seconds = 3600.0, .every_s = 10.0}, two_rises, steadily(4.5 / 3.6));
    std::vector<geo::TrackPoint>& points = track.parts[0];
    ASSERT_EQ(points.size(), 361U); // 12.5 m from one to the next: the 321st lies at 4000 m
    points.erase(points.begin() + 321, points.end() - 1);
    const std::vector<GroundPart> parts = afloat_or_on_foot(track, traced(track), nullptr);
    ASSERT_EQ(parts.size(), 3U);
    EXPECT_TRUE(parts[1].afloat);
    EXPECT_NEAR(parts[1].to_m, 4000.0, 40.0);
    EXPECT_FALSE(parts[2].afloat);
}

} // namespace
} // namespace tumpline::planner
