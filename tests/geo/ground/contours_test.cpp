#include "geo/ground/contours.h"

#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <functional>
#include <limits>
#include <numbers>

namespace tumpline::geo {
namespace {

/// A grid about the origin, `height` of east and north.
HeightGrid ground(int cells, double cell_m, const std::function<double(const MapPoint&)>& height) {
    const double half_m = cells * cell_m / 2.0;
    HeightGrid grid{{{-half_m, half_m}, cell_m, cells, cells}, {}};
    for (int row = 0; row < cells; ++row)
        for (int column = 0; column < cells; ++column)
            grid.heights_m.push_back(static_cast<float>(height(grid.frame.centre(column, row))));
    return grid;
}

double off_m(const MapPoint& point) {
    return std::hypot(point.east_m, point.north_m);
}

/// z = 1050 m - r/2: the line of height h is a circle of radius 2 (1050 - h).
HeightGrid cone() {
    return ground(160, 30.0, [](const MapPoint& at) { return 1050.0 - off_m(at) / 2.0; });
}

TEST(Contours, OfAConeAreCircles) {
    const std::vector<ContourLine> lines = contours(cone(), 100.0);
    // The outermost centres lie 2385 m out: -100 m, 2300 m out, is the last whole circle.
    int rings = 0;
    for (const ContourLine& line : lines) {
        if (!line.closed())
            continue;
        ++rings;
        const double radius_m = 2.0 * (1050.0 - line.height_m);
        double twice_area = 0.0;
        for (std::size_t i = 0; i + 1 < line.points.size(); ++i) {
            const MapPoint& a = line.points[i];
            const MapPoint& b = line.points[i + 1];
            EXPECT_NEAR(off_m(a), radius_m, 1.0) << line.height_m;
            twice_area += a.east_m * b.north_m - b.east_m * a.north_m;
        }
        // Higher ground on the right: clockwise round a hill, so the area counts negative.
        EXPECT_LT(twice_area, 0.0);
        if (radius_m >= 300.0) {
            EXPECT_NEAR(-twice_area / 2.0 / (std::numbers::pi * radius_m * radius_m), 1.0, 0.003);
        }
    }
    EXPECT_EQ(rings, 12); // 1000, 900 ... -100 m: radii 100 ... 2300 m
}

TEST(Contours, OfARampAreStraightAndEvenlyApart) {
    // 0.5 up to the east: a line every 100 m of height is 200 m from the next.
    const HeightGrid ramp =
        ground(40, 30.0, [](const MapPoint& at) { return 1000.0 + 0.5 * at.east_m; });
    const std::vector<ContourLine> lines = contours(ramp, 100.0);
    ASSERT_EQ(lines.size(), 5U); // 800 ... 1200 m; the ends lie 585 m out, at 707.5 and 1292.5 m
    for (const ContourLine& line : lines)
        for (const MapPoint& point : line.points)
            EXPECT_NEAR(point.east_m, 2.0 * (line.height_m - 1000.0), 0.01);
}

TEST(Contours, EndWhereTheGroundIsNotKnown) {
    // A void square, 300 m to a side, in a slope: no wall of lines stands along it.
    const HeightGrid pierced = ground(60, 30.0, [](const MapPoint& at) {
        const bool unknown = std::abs(at.east_m) < 150.0 && std::abs(at.north_m) < 150.0;
        return unknown ? std::numeric_limits<double>::quiet_NaN() : 1000.0 + 0.4 * at.north_m;
    });
    for (const ContourLine& line : contours(smoothed(pierced), 20.0))
        for (const MapPoint& point : line.points) {
            EXPECT_FALSE(std::abs(point.east_m) < 149.0 && std::abs(point.north_m) < 149.0);
            // 1000 + 0.4 n = h: off the outer rows, where the blur sees one side only.
            if (std::abs(point.north_m) < 780.0 && std::abs(point.north_m) > 250.0) {
                EXPECT_NEAR(point.north_m, (line.height_m - 1000.0) / 0.4, 0.5);
            }
        }
}

TEST(Contours, OfALakeWithNoiseAtALevelAreNone) {
    // 560 m is a multiple of 20 m; a raster's 0.3 m of noise on it makes hundreds of lines.
    const auto lake = [](const MapPoint& at) {
        const double noise_m = 0.3 * std::sin(at.east_m * 12.9898 + at.north_m * 78.233);
        return off_m(at) < 800.0 ? 560.0 + noise_m : 560.0 + (off_m(at) - 800.0) * 0.3;
    };
    HeightGrid grid = ground(80, 30.0, lake);
    std::vector<MapPoint> shore;
    for (int i = 0; i < 180; ++i)
        shore.push_back({820.0 * std::sin(i * std::numbers::pi / 90.0),
                         820.0 * std::cos(i * std::numbers::pi / 90.0)});
    ASSERT_GT(contours(grid, 20.0).size(), 50U);
    make_unknown(grid, {shore});
    for (const ContourLine& line : contours(grid, 20.0))
        for (const MapPoint& point : line.points)
            EXPECT_GT(off_m(point), 785.0);
}

TEST(Contours, AreAsFarApartAsTheScaleNeeds) {
    constexpr std::array steps{5.0, 10.0, 20.0, 50.0, 100.0, 200.0};
    // Slopes of the steepest fiftieth of two grounds: 1.21 and 0.5. 0.25 mm on paper at 1:50 000
    // are 12.5 m: 15.1 m of height in the first, so 20 m; 6.25 m in the second, so 10 m.
    EXPECT_EQ(contour_interval_m({1.21, 50e3}, steps), 20.0);
    EXPECT_EQ(contour_interval_m({1.21, 100e3}, steps), 50.0);
    EXPECT_EQ(contour_interval_m({1.21, 280e3}, steps), 100.0);
    EXPECT_EQ(contour_interval_m({0.5, 50e3}, steps), 10.0);
    EXPECT_EQ(contour_interval_m({0.5, 100e3}, steps), 20.0);
    EXPECT_EQ(contour_interval_m({0.5, 280e3}, steps), 50.0);
    EXPECT_EQ(contour_interval_m({1.21, 5e6}, steps), 200.0);
}

TEST(Contours, OfLevelGroundAndOfNothingAreNone) {
    EXPECT_TRUE(contours(ground(20, 30.0, [](const MapPoint&) { return 555.0; }), 10.0).empty());
    EXPECT_TRUE(contours({{{0.0, 0.0}, 30.0, 1, 1}, {500.0F}}, 10.0).empty());
    EXPECT_TRUE(contours(cone(), 0.0).empty());
}

} // namespace
} // namespace tumpline::geo
