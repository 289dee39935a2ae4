#include "cli/drawing/ground_lines.h"

#include <gtest/gtest.h>

#include <cmath>

namespace tumpline::cli {
namespace {

constexpr Window window{0.0, 0.0, 100.0, 50.0};

TEST(GroundLines, OutsideTheWindowAreLeftOut) {
    const std::vector<DrawnPoint> line{{-30.0, 10.0, 0.0},
                                       {-10.0, 10.0, 0.0},
                                       {20.0, 10.0, 0.0},
                                       {20.0, 90.0, 0.0},
                                       {60.0, 90.0, 0.0},
                                       {60.0, 20.0, 0.0}};
    const auto runs = inside(line, window);
    ASSERT_EQ(runs.size(), 2U);
    EXPECT_EQ(runs[0].size(), 3U); // from -10, past the edge, to 90
    EXPECT_EQ(runs[1].size(), 2U);
    EXPECT_TRUE(inside({{-5.0, -5.0, 0.0}, {-5.0, 80.0, 0.0}}, window).empty());
}

TEST(GroundLines, OfARingAreCutAtTheWindow) {
    // A square from -50 to 50 both ways: its quarter from 0 to 50 is left.
    const auto cut = ring_inside(
        {{-50.0, -50.0, 0.0}, {50.0, -50.0, 0.0}, {50.0, 50.0, 0.0}, {-50.0, 50.0, 0.0}}, window);
    double twice_area = 0.0;
    for (std::size_t i = 0; i < cut.size(); ++i) {
        const DrawnPoint& a = cut[i];
        const DrawnPoint& b = cut[(i + 1) % cut.size()];
        twice_area += a.x * b.y - b.x * a.y;
    }
    EXPECT_NEAR(std::abs(twice_area) / 2.0, 2500.0, 1e-9);
    EXPECT_TRUE(
        ring_inside({{200.0, 0.0, 0.0}, {210.0, 0.0, 0.0}, {210.0, 9.0, 0.0}}, window).empty());
}

TEST(GroundLines, AreWrittenInFifths) {
    EXPECT_EQ(fifths({{10.0, 4.0, 0.0}, {10.6, 3.2, 0.0}, {12.0, 3.2, 0.0}}, false),
              "M50 20l3-4 7 0");
    EXPECT_EQ(fifths({{0.0, 0.0, 0.0}, {1.0, 0.0, 0.0}, {1.0, 1.0, 0.0}}, true), "M0 0l5 0 0 5z");
    EXPECT_EQ(fifths({{1.0, 1.0, 0.0}, {1.01, 1.0, 0.0}}, false), "") << "no length is left";
}

TEST(GroundLines, GiveRoomForATextWhoseTopIsUpHill) {
    // Higher ground lies on a line's right. On the sheet y points down: a line to the left has its
    // right side up, and a text against it stands upright, its top there.
    const std::vector<DrawnPoint> leftwards{{90.0, 20.0, 0.0}, {10.0, 20.0, 0.0}};
    const auto runs = straight_runs(leftwards, {30.0, 1.2, true});
    ASSERT_FALSE(runs.empty());
    EXPECT_NEAR(runs.front().angle_deg, 0.0, 1e-9);
    const std::vector<DrawnPoint> rightwards{{10.0, 20.0, 0.0}, {90.0, 20.0, 0.0}};
    EXPECT_TRUE(straight_runs(rightwards, {30.0, 1.2, true}).empty()) << "it would hang down";
    EXPECT_FALSE(straight_runs(rightwards, {30.0, 1.2, false}).empty());
}

TEST(GroundLines, GiveNoRoomWhereTheyBow) {
    std::vector<DrawnPoint> circle;
    for (int i = 0; i <= 60; ++i)
        circle.push_back({20.0 * std::sin(i / 9.549), 20.0 * std::cos(i / 9.549), 0.0});
    EXPECT_TRUE(straight_runs(circle, {26.0, 1.2, false}).empty());
}

TEST(GroundLines, AreSteppedAlongEvenly) {
    const auto steps = along({{0.0, 0.0, 0.0}, {100.0, 0.0, 0.0}}, 40.0);
    ASSERT_EQ(steps.size(), 2U);
    EXPECT_NEAR(steps[0].middle.x, 20.0, 1e-9);
    EXPECT_NEAR(steps[1].middle.x, 60.0, 1e-9);
    EXPECT_NEAR(drawn_length({{0.0, 0.0, 0.0}, {3.0, 4.0, 0.0}}), 5.0, 1e-12);
}

} // namespace
} // namespace tumpline::cli
