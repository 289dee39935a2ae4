#include "cli/drawing/ground_picture.h"

#include <gtest/gtest.h>

#include <cmath>
#include <functional>
#include <numbers>

namespace tumpline::cli {
namespace {

/// 600 by 600 pixels of 10 m about a place in the mountains, and a grid of its pixels.
class ContoursDrawn : public testing::Test {
  protected:
    [[nodiscard]] geo::HeightGrid
    ground(const std::function<double(const geo::MapPoint&)>& height) const {
        geo::HeightGrid grid{{{-3000.0, 3000.0}, 30.0, 200, 200}, {}};
        for (int row = 0; row < grid.frame.rows; ++row)
            for (int column = 0; column < grid.frame.columns; ++column)
                grid.heights_m.push_back(
                    static_cast<float>(height(grid.frame.centre(column, row))));
        return grid;
    }

    geo::MapProjection projection_{std::vector<geo::Position>{{61.0, 10.0}}};
    GroundView view_{.projection = projection_,
                     .pixels_per_m = 0.1,
                     .width = 600.0,
                     .height = 600.0,
                     .window = {0.0, 0.0, 600.0, 600.0},
                     .id = "g"};
    ContourLook look_{.interval_m = 50.0, .tolerance = 0.25, .units = {}};
};

double off_m(const geo::MapPoint& at) {
    return std::hypot(at.east_m, at.north_m);
}

/// The middle of a text, and which way its top looks on the sheet.
struct Stands {
    double x, y, up_x, up_y;
};

std::vector<Stands> numbers(const GroundPicture& picture) {
    std::vector<Stands> all;
    for (const GroundName& name : picture.names)
        for (const Run& run : name.tries) {
            const double turn = run.angle_deg * std::numbers::pi / 180.0;
            all.push_back({run.middle.x, run.middle.y, std::sin(turn), -std::cos(turn)});
        }
    return all;
}

TEST_F(ContoursDrawn, HaveNumbersWhoseTopsLookUphillAndNoneUpsideDown) {
    for (const bool hill : {true, false}) { // up to the middle, or down to it
        SCOPED_TRACE(hill);
        const GroundPicture picture =
            contour_picture(view_,
                            ground([&](const geo::MapPoint& at) {
                                return 1000.0 + (hill ? -0.5 : 0.5) * off_m(at);
                            }),
                            look_);
        const std::vector<Stands> all = numbers(picture);
        EXPECT_GT(all.size(), 5U);
        double leftmost = 600.0;
        double rightmost = 0.0;
        for (const Stands& one : all) {
            const double in_x = 300.0 - one.x; // towards the middle
            const double in_y = 300.0 - one.y;
            const double inwards =
                (one.up_x * in_x + one.up_y * in_y) / std::max(1.0, std::hypot(in_x, in_y));
            // Within 8 degrees of straight up the slope: a window of 32 pixels on a circle.
            EXPECT_GT(hill ? inwards : -inwards, 0.99) << one.x << ' ' << one.y;
            EXPECT_LE(one.up_y, 1e-9) << "its top looks down the sheet";
            leftmost = std::min(leftmost, one.x);
            rightmost = std::max(rightmost, one.x);
        }
        EXPECT_LT(leftmost, 260.0) << "bearings on both sides are tried";
        EXPECT_GT(rightmost, 340.0);
    }
}

TEST_F(ContoursDrawn, TickTheLowSideOfHollowsAlone) {
    const auto drawn = [&](double slope) {
        return contour_picture(
                   view_,
                   ground([&](const geo::MapPoint& at) { return 1000.0 + slope * off_m(at); }),
                   look_)
            .markup;
    };
    const auto strokes = [](const std::string& markup) { return std::ranges::count(markup, 'M'); };
    // The same rings, those of the hollow with a tick every nine pixels.
    EXPECT_GT(strokes(drawn(0.5)), 20 * strokes(drawn(-0.5)));
}

} // namespace
} // namespace tumpline::cli
