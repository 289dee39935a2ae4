#include "planner/route/route.h"
#include "planner/route/route_build.h"
#include "tests/support/source_tree.h"
#include "tests/support/temp_folder.h"

#include <fmt/format.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <filesystem>
#include <iterator>
#include <random>
#include <string>
#include <vector>

/// A track walked the other way climbs what it descended, from the file to the route.
namespace tumpline::planner {
namespace {

struct Point {
    double lat_deg;
    double lon_deg;
    double height_m; ///< NaN: none was recorded
};

/// A recording with uneven steps, bends, noise and now and then no height.
std::vector<Point> recording(std::uint64_t seed) {
    std::mt19937_64 bits(seed);
    const auto between = [&](double low, double high) {
        return low + (high - low) * static_cast<double>(bits() >> 11) * 0x1p-53;
    };
    std::vector<Point> points;
    Point here{.lat_deg = 63.40, .lon_deg = 1.40, .height_m = 500.0};
    double bearing = between(0.0, 6.28);
    double slope = between(-0.2, 0.2);
    const auto count = static_cast<int>(between(150.0, 600.0));
    for (int i = 0; i < count; ++i) {
        const double step_m = between(3.0, 60.0);
        bearing += between(-0.4, 0.4);
        if (i % 40 == 0)
            slope = between(-0.25, 0.25);
        here.lat_deg += step_m * std::cos(bearing) / 111'000.0;
        here.lon_deg += step_m * std::sin(bearing) / 49'800.0;
        here.height_m += slope * step_m + between(-1.5, 1.5);
        points.push_back(here);
        if (between(0.0, 1.0) < 0.05)
            points.back().height_m = std::nan("");
    }
    return points;
}

std::string gpx(const std::vector<Point>& points) {
    std::string text = "<?xml version=\"1.0\"?>\n<gpx version=\"1.1\" creator=\"t\"><trk>"
                       "<name>A</name><type>walk</type><trkseg>\n";
    for (const Point& point : points) {
        fmt::format_to(std::back_inserter(text),
                       "<trkpt lat=\"{:.9f}\" lon=\"{:.9f}\">",
                       point.lat_deg,
                       point.lon_deg);
        if (!std::isnan(point.height_m))
            fmt::format_to(std::back_inserter(text), "<ele>{:.2f}</ele>", point.height_m);
        text += "</trkpt>\n";
    }
    return text + "</trkseg></trk></gpx>\n";
}

Route route_over(const std::vector<Point>& points, bool with_raster) {
    const test::TempFolder folder;
    Trip trip;
    trip.file = folder.path() / "trip.json";
    trip.route.tracks = {folder.write("a.gpx", gpx(points))};
    if (with_raster)
        trip.route.elevation = {test::root / "sample-routes" / "saddle" / "saddle-dem.tif"};
    return build_route(trip);
}

void expect_swapped(const Route& there, const Route& back, std::uint64_t seed) {
    ASSERT_EQ(there.legs.size(), 1U);
    ASSERT_EQ(back.legs.size(), 1U);
    EXPECT_NEAR(there.length_m, back.length_m, 1e-6) << "seed " << seed;
    EXPECT_NEAR(there.legs[0].profile.ascent_m, back.legs[0].profile.descent_m, 1e-5)
        << "seed " << seed;
    EXPECT_NEAR(there.legs[0].profile.descent_m, back.legs[0].profile.ascent_m, 1e-5)
        << "seed " << seed;
}

TEST(ReversedTrack, SwapsClimbAndDescentOfRecordedHeights) {
    double climbed_m = 0.0;
    for (std::uint64_t seed = 1; seed <= 60; ++seed) {
        std::vector<Point> points = recording(seed);
        const Route there = route_over(points, false);
        std::reverse(points.begin(), points.end());
        expect_swapped(there, route_over(points, false), seed);
        climbed_m += there.legs[0].profile.ascent_m;
    }
    EXPECT_GT(climbed_m, 1000.0) << "recordings that climb nothing prove nothing";
}

TEST(ReversedTrack, SwapsClimbAndDescentOfARastersHeights) {
    double climbed_m = 0.0;
    for (std::uint64_t seed = 1; seed <= 15; ++seed) {
        std::vector<Point> points = recording(seed);
        const Route there = route_over(points, true);
        ASSERT_EQ(there.legs[0].profile.source, geo::HeightSource::raster) << seed;
        std::reverse(points.begin(), points.end());
        expect_swapped(there, route_over(points, true), seed);
        climbed_m += there.legs[0].profile.ascent_m;
    }
    EXPECT_GT(climbed_m, 500.0);
}

TEST(ReversedTrack, ABarometersThresholdIsThatOfBarometers) {
    const std::vector<Point> points = recording(1);
    const test::TempFolder folder;
    Trip trip;
    trip.file = folder.path() / "trip.json";
    trip.route.tracks = {folder.write("a.gpx", gpx(points))};
    EXPECT_EQ(build_route(trip).legs[0].profile.threshold_m, 10.0);
    trip.route.recorder = HeightRecorder::gnss;
    EXPECT_EQ(build_route(trip).legs[0].profile.threshold_m, 10.0);
    trip.route.recorder = HeightRecorder::barometer;
    EXPECT_EQ(build_route(trip).legs[0].profile.threshold_m, geo::barometer_threshold_m);
    trip.route.ascent_threshold_m = 3.0;
    EXPECT_EQ(build_route(trip).legs[0].profile.threshold_m, 3.0);
}

} // namespace
} // namespace tumpline::planner
