#include "planner/route/land_facts.h"

#include "geo/lines/geodesic.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <memory>

namespace tumpline::planner {
namespace {

using testing::HasSubstr;

constexpr geo::Position head{61.0, 10.0};

geo::Position east(double along_m, double north_m = 0.0) {
    return geo::destination(geo::destination(head, 90.0, along_m), 0.0, north_m);
}

/// 4 km to the east: 2 km on foot, then 2 km afloat.
Route four_kilometres() {
    Route route;
    const auto leg = [&](Travel travel, double from_m, double to_m) {
        std::vector<geo::Position> points;
        for (double along_m = from_m; along_m <= to_m; along_m += 100.0) // NOLINT: whole metres
            points.push_back(east(along_m));
        TripLeg spec;
        if (travel == Travel::paddle)
            spec.water = Water::lake;
        route.legs.push_back({.name = "leg",
                              .travel = travel,
                              .spec = spec,
                              .line = geo::Polyline(points),
                              .from_m = from_m,
                              .to_m = to_m,
                              .profile = {}});
    };
    leg(Travel::walk, 0.0, 2000.0);
    leg(Travel::paddle, 2000.0, 4000.0);
    route.length_m = 4000.0;
    return route;
}

geo::LandFeature line(geo::LayerKind kind, std::vector<geo::Position> points) {
    geo::LandFeature feature;
    feature.kind = kind;
    feature.parts = {std::move(points)};
    return feature;
}

void lay(Route& route, std::vector<geo::LandFeature> features) {
    auto land = std::make_shared<geo::MapLayers>();
    land->features = std::move(features);
    land->sources.push_back({.file = "ground.gpkg", .credit = {}});
    route.land = land;
}

/// The caution of a code, if there is one.
std::optional<Caution> told(const Route& route, std::string_view code) {
    const std::vector<Caution> all = land_facts(route);
    const auto found = std::ranges::find(all, code, &Caution::code);
    return found == all.end() ? std::nullopt : std::optional(*found);
}

geo::LandFeature fall_at(const geo::Position& at) {
    geo::LandFeature fall;
    fall.kind = geo::LayerKind::rapid;
    fall.sign = geo::LandSign::fall;
    fall.shape = geo::LandShape::point;
    fall.parts = {{at}};
    return fall;
}

TEST(LandFacts, SayAFallThatTheTripDoesNotName) {
    Route route = four_kilometres();
    lay(route, {fall_at(east(3400.0, 20.0))});
    const std::optional<Caution> said = told(route, "ground-rapid");
    ASSERT_TRUE(said);
    EXPECT_EQ(said->level, Level::caution);
    EXPECT_EQ(said->leg, LegNumber{2});
    EXPECT_THAT(said->text, HasSubstr("3.4 km"));
    EXPECT_THAT(said->text, HasSubstr("a fall"));
    EXPECT_THAT(said->text, HasSubstr("ground.gpkg"));
    route.places.push_back({.name = "Spout",
                            .kind = PlaceKind::hazard,
                            .at = east(3300.0),
                            .along_m = 3300.0,
                            .leg = 2});
    EXPECT_FALSE(told(route, "ground-rapid")) << "the trip names it, 100 m before";
}

TEST(LandFacts, SayNothingOfAFallBesideAWalkOrFarOff) {
    Route route = four_kilometres();
    lay(route, {fall_at(east(1000.0)), fall_at(east(3000.0, 120.0))});
    EXPECT_FALSE(told(route, "ground-rapid"));
}

TEST(LandFacts, DoNotAskForAFallThatACarryGoesRound) {
    Route route = four_kilometres();
    route.legs[0].travel = Travel::portage;
    route.legs[0].name = "Fall carry";
    // The boats are put in at 2000 m: 30 m on the fall may be drawn a little off, 90 m on it is
    // met.
    lay(route, {fall_at(east(2030.0, 10.0))});
    EXPECT_FALSE(told(route, "ground-rapid"));
    const std::optional<Caution> said = told(route, "ground-carried");
    ASSERT_TRUE(said);
    EXPECT_EQ(said->level, Level::note);
    EXPECT_EQ(said->leg, LegNumber{2});
    EXPECT_THAT(said->text, HasSubstr("a fall where the boats are carried (Fall carry)"));
    lay(route, {fall_at(east(2090.0, 10.0))});
    EXPECT_TRUE(told(route, "ground-rapid"));
    EXPECT_FALSE(told(route, "ground-carried"));
    route.legs[0].travel = Travel::walk; // the boats do not come down a walk's end by themselves
    lay(route, {fall_at(east(2030.0, 10.0))});
    EXPECT_TRUE(told(route, "ground-rapid"));
}

TEST(LandFacts, TellWhatIsTheLegsOwnInAFewWords) {
    Route route = four_kilometres();
    lay(route,
        {fall_at(east(3400.0, 20.0)),
         line(geo::LayerKind::river, {east(700.0, 300.0), east(700.0, -300.0)}),
         line(geo::LayerKind::path, {east(0.0, 10.0), east(1200.0, 10.0)})});
    EXPECT_EQ(told(route, "ground-rapid")->figure, "a fall at 3.4 km (ground.gpkg)");
    EXPECT_EQ(told(route, "ground-stream")->figure, "at 700 m");
    EXPECT_THAT(told(route, "ground-off-path")->figure, testing::StartsWith("along "));
}

TEST(LandFacts, SayHowFarFromShoreALakeLegLeads) {
    Route route = four_kilometres();
    geo::LandFeature lake = line(
        geo::LayerKind::water,
        {east(1900.0, 700.0), east(4100.0, 700.0), east(4100.0, -600.0), east(1900.0, -600.0)});
    lake.shape = geo::LandShape::area;
    lay(route, {lake});
    const std::optional<Caution> said = told(route, "ground-shore");
    ASSERT_TRUE(said);
    // The south shore is 600 m off in the midst, the ends 100 m: from 2500 to 3500 m it is nearest.
    EXPECT_THAT(said->text, HasSubstr("600 m"));
    EXPECT_EQ(said->leg, LegNumber{2});
}

TEST(LandFacts, SayWhichWaterIsCrossedOnFoot) {
    Route route = four_kilometres();
    geo::LandFeature dry = line(geo::LayerKind::river, {east(1500.0, 300.0), east(1500.0, -300.0)});
    dry.intermittent = true;
    lay(route,
        {line(geo::LayerKind::river, {east(700.0, 300.0), east(700.0, -300.0)}),
         dry,
         line(geo::LayerKind::river, {east(1700.0, 300.0), east(1700.0, 50.0)})});
    const std::optional<Caution> said = told(route, "ground-stream");
    ASSERT_TRUE(said);
    EXPECT_THAT(said->text, HasSubstr("at 700 m, 1.5 km (dry at times)."));
}

TEST(LandFacts, SayWhereNoPathRuns) {
    Route route = four_kilometres();
    lay(route, {line(geo::LayerKind::path, {east(0.0, 10.0), east(1200.0, 10.0)})});
    const std::optional<Caution> said = told(route, "ground-off-path");
    ASSERT_TRUE(said);
    EXPECT_THAT(said->text, HasSubstr("1.3 km")); // first sample more than 40 m past its end
    route.legs[0].spec.terrain = Terrain::off_path;
    EXPECT_FALSE(told(route, "ground-off-path")) << "the trip says so itself";
}

TEST(LandFacts, SayWhatNoLayerKnows) {
    Route route = four_kilometres();
    EXPECT_TRUE(land_facts(route).empty()) << "no layer is named";
    lay(route, {});
    const std::optional<Caution> said = told(route, "ground-unknown");
    ASSERT_TRUE(said);
    EXPECT_THAT(said->text, HasSubstr("rapids and falls"));
    EXPECT_THAT(said->text, HasSubstr("paths"));
    lay(route,
        {fall_at(east(1000.0)),
         line(geo::LayerKind::path, {east(0.0), east(100.0)}),
         line(geo::LayerKind::water, {east(0.0), east(100.0)})});
    EXPECT_FALSE(told(route, "ground-unknown"));
}

} // namespace
} // namespace tumpline::planner
