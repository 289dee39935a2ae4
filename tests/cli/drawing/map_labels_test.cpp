#include "cli/drawing/map_labels.h"

#include <gtest/gtest.h>

namespace tumpline::cli {
namespace {

constexpr DrawnPoint at{.x = 100.0, .y = 100.0, .along_m = 0.0};

/// What is not free: all to the right of the point, and all to its left down to `left_to` from
/// `left_from`.
Labels with_left_taken(double left_from, double left_to) {
    Labels labels({.width = 300.0, .height = 300.0, .pixels_per_m = 1.0}, {});
    labels.take({100.5, 2.0, 190.0, 290.0});
    labels.take({2.0, left_from, 97.0, left_to - left_from});
    return labels;
}

// Letters of 10 pixels: the text stands 0.7 * 0.9 * 10 = 6.3 off the point each way, in a box 12
// high, its foot line 9.2 under the box's top.
TEST(MapLabels, GoBelowOnTheLeftWhereOnlyThatIsFree) {
    Labels labels = with_left_taken(2.0, 105.0);
    EXPECT_EQ(
        labels.beside(at, "Bay", 10.0, "place"),
        R"(<text class="place end" x="93.7" y="115.5" font-size="10">Bay</text>)"); // 106.3 + 9.2
}

TEST(MapLabels, GoAboveOnTheLeftWhereOnlyThatIsFree) {
    Labels labels = with_left_taken(93.9, 290.0);
    EXPECT_EQ(
        labels.beside(at, "Bay", 10.0, "place"),
        R"(<text class="place end" x="93.7" y="90.9" font-size="10">Bay</text>)"); // 81.7 + 9.2
}

TEST(MapLabels, StayAwayWhereNothingIsFree) {
    Labels labels = with_left_taken(2.0, 290.0);
    EXPECT_EQ(labels.beside(at, "Bay", 10.0, "place"), "");
}

} // namespace
} // namespace tumpline::cli
