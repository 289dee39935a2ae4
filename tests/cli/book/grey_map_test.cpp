/// Contours and water have the same grey: what a line is must be told by its sign.

#include "cli/book/book_template.h"
#include "cli/drawing/ground_picture.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <regex>

namespace tumpline::cli {
namespace {

using testing::HasSubstr;
using testing::Not;

/// The declarations of the first rule whose selector ends so.
std::string rule(const std::string& css, const std::string& selector) {
    const std::size_t at = css.find(selector + " {");
    return at == std::string::npos ? std::string() : css.substr(at, css.find('}', at) - at);
}

double width_of(const std::string& rule) {
    static const std::regex width(R"re(stroke-width: calc\(([0-9.]+)px)re");
    std::smatch found;
    return std::regex_search(rule, found, width) ? std::stod(found[1]) : 0.0;
}

TEST(GreyMap, TellsLinesApartByTheirSigns) {
    const std::string css(book_template("book.css"));
    for (const char* contour : {".land .thin", ".land .thick"}) {
        ASSERT_NE(rule(css, contour), "") << contour;
        EXPECT_THAT(rule(css, contour), Not(HasSubstr("dasharray"))) << contour;
    }
    // Fifths of a pixel: the thinnest stream is wider than an index line.
    EXPECT_DOUBLE_EQ(width_of(rule(css, ".land .thin")), 1.75);
    EXPECT_DOUBLE_EQ(width_of(rule(css, ".land .thick")), 4.0);
    EXPECT_GT(width_of(rule(css, ".land .stream")), width_of(rule(css, ".land .thick")));
    for (const char* dashed :
         {".land .dry-stream", ".land .trail", ".land .unmarked", ".land .guarded"})
        EXPECT_THAT(rule(css, dashed), HasSubstr("dasharray")) << dashed;
}

TEST(GreyMap, GivesWaterWhatNoContourHas) {
    const geo::MapProjection projection(std::vector<geo::Position>{{61.0, 10.0}});
    const GroundView view{.projection = projection,
                          .pixels_per_m = 0.1,
                          .width = 700.0,
                          .height = 400.0,
                          .window = {0.0, 0.0, 700.0, 400.0},
                          .id = "g"};
    const auto at = [&](double east_m, double north_m) {
        return projection.to_ground({east_m, north_m});
    };
    geo::MapLayers land;
    geo::LandFeature lake;
    lake.kind = geo::LayerKind::water;
    lake.shape = geo::LandShape::area;
    lake.parts = {{at(-900.0, -900.0), at(900.0, -900.0), at(900.0, 900.0), at(-900.0, 900.0)}};
    geo::LandFeature river;
    river.kind = geo::LayerKind::river;
    river.down_stream = true;
    river.parts = {{at(-3000.0, 1500.0), at(3000.0, 1500.0)}};
    geo::LandFeature fall;
    fall.kind = geo::LayerKind::rapid;
    fall.sign = geo::LandSign::fall;
    fall.shape = geo::LandShape::point;
    fall.parts = {{at(0.0, 1500.0)}};
    land.features = {lake, river, fall};
    land.sources.push_back({.file = "a.gpkg", .credit = {}});
    const std::string markup = land_picture(view, land).markup;
    for (const char* sign : {"shore", "l1", "l2", "arrow", "fall"})
        EXPECT_THAT(markup, HasSubstr(std::string("class=\"") + sign)) << sign;
    geo::HeightGrid slope{{{-3000.0, 1900.0}, 50.0, 120, 76}, {}};
    for (int row = 0; row < slope.frame.rows; ++row)
        for (int column = 0; column < slope.frame.columns; ++column)
            slope.heights_m.push_back(static_cast<float>(20 * row));
    const std::string contours =
        contour_picture(view, slope, {.interval_m = 100.0, .tolerance = 0.25, .units = {}}).markup;
    EXPECT_THAT(contours, HasSubstr("class=\"thin\""));
    for (const char* sign : {"shore", "arrow", "river", "l1"})
        EXPECT_THAT(contours, Not(HasSubstr(sign))) << sign;
}

} // namespace
} // namespace tumpline::cli
