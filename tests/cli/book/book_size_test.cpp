/// Books over rough ground: small, one picture, nothing from outside, and what was given up is
/// said.

#include "cli/book/book.h"
#include "tests/support/hand_built_plan.h"
#include "tests/support/hand_built_route.h"
#include "tests/support/hand_built_variants.h"
#include "tests/support/raster_file.h"
#include "tests/support/temp_folder.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <regex>

namespace tumpline::cli {
namespace {

using testing::HasSubstr;

constexpr std::size_t most_bytes = 1'500'000;

/// Peaks and hollows two or three cells apart under a route, up to 1.4 km above and below 1500 m:
/// coarse, and rough in every cell.
std::filesystem::path rough_ground(const planner::Route& route, const test::TempFolder& folder) {
    geo::Position low{90.0, 180.0};
    geo::Position high{-90.0, -180.0};
    for (const planner::RouteLeg& leg : route.legs)
        for (const geo::Position& at : leg.line.points()) {
            low = {std::min(low.lat_deg, at.lat_deg), std::min(low.lon_deg, at.lon_deg)};
            high = {std::max(high.lat_deg, at.lat_deg), std::max(high.lon_deg, at.lon_deg)};
        }
    constexpr double margin = 0.3; // degrees
    constexpr int cells = 150;
    const double width = high.lon_deg - low.lon_deg + 2.0 * margin;
    const double height = high.lat_deg - low.lat_deg + 2.0 * margin;
    const test::RasterFile raster{
        .columns = cells,
        .rows = cells,
        .corner_and_cell =
            {low.lon_deg - margin, width / cells, 0.0, high.lat_deg + margin, 0.0, -height / cells},
        .crs = "EPSG:4326",
        .no_data = {},
        .unit = ""};
    std::filesystem::path file = folder.path() / "rough.tif";
    test::write_raster(file, raster, [](int column, int row) {
        const double x = column;
        const double y = row;
        return 1500.0 + 1200.0 * std::sin(x / 1.7) * std::cos(y / 2.3) +
               200.0 * std::sin(x / 0.9 + y / 1.1);
    });
    return file;
}

std::size_t count_of(const std::string& text, const std::string& word) {
    std::size_t found = 0;
    for (std::size_t at = text.find(word); at != std::string::npos; at = text.find(word, at + 1))
        ++found;
    return found;
}

class BookOverRoughGround : public testing::TestWithParam<int> {};

TEST_P(BookOverRoughGround, StaysSmallWithOnePictureAndNothingFromOutside) {
    const planner::Plan plan = test::repeated(test::hand_built_plan(), GetParam());
    const planner::Route route = test::hand_built_route(plan);
    const test::TempFolder folder;
    geo::Elevation ground({rough_ground(route, folder)});
    const std::string html = book(plan, route, planner::UnitSystem::metric, &ground);
    EXPECT_LT(html.size(), most_bytes) << GetParam();
    EXPECT_EQ(count_of(html, "<image "), 1U);
    if (count_of(html, "class=\"contours\"") == 0) {
        EXPECT_THAT(html, HasSubstr("no maps of the days and no contours"));
    }
    static const std::regex reference(R"re((?:href|src)="([^"]{0,6}))re");
    for (auto at = std::sregex_iterator(html.begin(), html.end(), reference);
         at != std::sregex_iterator();
         ++at) {
        const std::string to = (*at)[1];
        EXPECT_TRUE(to.starts_with("#") || to.starts_with("data:")) << to;
    }
    const bool all_days = count_of(html, "class=\"map of-day\"") ==
                          2 * static_cast<std::size_t>(std::ranges::count(
                                  plan.days, false, &planner::PlanDay::rest_day));
    if (!all_days) {
        EXPECT_THAT(html, HasSubstr("So that the book stays small: "));
    }
}

INSTANTIATE_TEST_SUITE_P(DaysOfThree, BookOverRoughGround, testing::Values(4, 20));

} // namespace
} // namespace tumpline::cli
