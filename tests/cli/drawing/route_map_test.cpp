#include "cli/drawing/route_map.h"

#include "geo/layers/map_layers.h"
#include "geo/lines/geodesic.h"
#include "tests/support/hand_built_plan.h"
#include "tests/support/hand_built_route.h"
#include "tests/support/plain_trip.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <array>
#include <memory>

namespace tumpline::cli {
namespace {

using testing::HasSubstr;
using testing::Not;

class MapOfARoute : public testing::Test {
  protected:
    MapOfARoute() : plan_(test::hand_built_plan()), route_(test::hand_built_route(plan_)) {
        geo::LandFeature lake;
        lake.kind = geo::LayerKind::water;
        lake.shape = geo::LandShape::area;
        lake.name = "Long <Tarn>";
        std::vector<geo::Position> ring;
        for (const double bearing_deg : {0.0, 90.0, 180.0, 270.0})
            ring.push_back(geo::destination(route_.at(2000.0), bearing_deg, 900.0));
        lake.parts = {ring};
        geo::LandFeature fall;
        fall.kind = geo::LayerKind::rapid;
        fall.sign = geo::LandSign::fall;
        fall.shape = geo::LandShape::point;
        fall.parts = {{geo::destination(route_.at(3000.0), 90.0, 400.0)}};
        auto land = std::make_shared<geo::MapLayers>();
        land->features = {lake, fall};
        land->sources.push_back({.file = "ground.gpkg", .credit = "survey"});
        route_.land = land;
    }

    [[nodiscard]] const planner::PlanDay& first_day() const { return plan_.days.front(); }

    planner::Plan plan_;
    planner::Route route_;
    Figures shown_{planner::UnitSystem::metric, "UTC", Blank::kept};
    Drawing wide_{.width = wide_drawing, .text = 12.0, .names = true, .id = "m"};
    Drawing narrow_{.width = narrow_drawing, .text = 11.0, .names = false, .id = "n"};
};

TEST_F(MapOfARoute, OfADayStandsAtARoundScale) {
    const RouteMap map(plan_, route_, first_day());
    constexpr std::array round{25e3, 40e3, 50e3, 60e3, 75e3, 100e3, 125e3, 150e3, 200e3, 250e3};
    EXPECT_THAT(round, testing::Contains(testing::DoubleNear(map.denominator(), 1e-6)));
    // The band's day fits into the frame at that scale: 700 pixels are 184 mm.
    EXPECT_NEAR(map.ground_view().pixels_per_m, 700.0 / 0.184 / map.denominator(), 1e-12);
    EXPECT_THAT(map.foot_text(shown_), HasSubstr("1:"));
}

// 10 km due north fill the map from top to bottom: 0.68 * 700 = 476 pixels, of which two margins of
// 3.2 * 12 = 38.4. Due east they would leave it low: half as high as wide.
TEST_F(MapOfARoute, IsAsHighAsTheRouteReachesNorth) {
    const test::PlainTrip north = test::plain_trip({test::walk(10'000.0)});
    const RouteMap map(plan_, north.route);
    EXPECT_NEAR(map.ground_view().height, 476.0, 0.5);
    EXPECT_NEAR(map.ground_view().pixels_per_m, (476.0 - 2.0 * 38.4) / 10'000.0, 1e-4);
    planner::Route east = north.route;
    const geo::Position start = east.legs[0].line.points().front();
    east.legs[0].line = geo::Polyline({start, geo::destination(start, 90.0, 10'000.0)});
    EXPECT_NEAR(RouteMap(plan_, east).ground_view().height, 350.0, 1e-9);
}

TEST_F(MapOfARoute, UsesTheGroundThatIsDrawnOnce) {
    RouteMap map(plan_, route_);
    EXPECT_EQ(map.ground_markup(), "");
    EXPECT_THAT(map.draw(wide_, shown_), Not(HasSubstr("<use")));
    map.lay_ground(nullptr, {});
    const std::string ground = map.ground_markup();
    EXPECT_THAT(ground, HasSubstr("class=\"lake wet\""));
    EXPECT_THAT(ground, HasSubstr("class=\"fall\""));
    for (const Drawing& drawing : {wide_, narrow_}) {
        const std::string drawn = map.draw(drawing, shown_);
        EXPECT_THAT(drawn, HasSubstr("<use href=\"#g\""));
        EXPECT_THAT(drawn, Not(HasSubstr("class=\"lake")));
        EXPECT_THAT(drawn, Not(HasSubstr("<Tarn>"))) << "names are escaped";
    }
}

TEST_F(MapOfARoute, ContoursSayTheirIntervalAndTheirHeights) {
    RouteMap map(plan_, route_, first_day());
    const GroundView view = map.ground_view();
    geo::HeightGrid grid{{view.flat({view.window.left, view.window.top, 0.0}),
                          1.0 / view.pixels_per_m,
                          static_cast<int>(view.window.right - view.window.left),
                          static_cast<int>(view.window.bottom - view.window.top)},
                         {}};
    for (int row = 0; row < grid.frame.rows; ++row) // up to the south: lines run leftwards
        for (int column = 0; column < grid.frame.columns; ++column)
            grid.heights_m.push_back(500.0F + 0.8F * static_cast<float>(row));
    map.lay_ground(&grid, {.layers = false, .interval_m = 20.0});
    EXPECT_THAT(map.ground_markup(), HasSubstr("class=\"thick\""));
    EXPECT_THAT(map.foot_text(shown_), HasSubstr("Contours every 20 m, thick every 100 m"));
}

TEST_F(MapOfARoute, OfADayCountsKilometresAndHasTheGridsNumbers) {
    const RouteMap map(plan_, route_, first_day());
    const std::string drawn = map.draw(wide_, shown_);
    EXPECT_THAT(drawn, HasSubstr("class=\"km\""));
    EXPECT_THAT(drawn, HasSubstr("class=\"utm\""));
    EXPECT_THAT(drawn, HasSubstr("Map of day 1, north up"));
    EXPECT_THAT(RouteMap(plan_, route_).draw(wide_, shown_), Not(HasSubstr("class=\"utm\"")));
}

} // namespace
} // namespace tumpline::cli
