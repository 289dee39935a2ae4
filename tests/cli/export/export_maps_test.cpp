#include "cli/export/export_maps.h"

#include "cli/files/output_mark.h"
#include "geo/layers/map_layers.h"
#include "geo/lines/geodesic.h"
#include "tests/support/hand_built_plan.h"
#include "tests/support/hand_built_route.h"
#include "tests/support/temp_folder.h"

#include <gtest/gtest.h>

#include <fstream>

namespace tumpline::cli {
namespace {

/// What stands in a layer of a written file, by its name.
geo::MapLayers read_back(const std::filesystem::path& file, const char* layer) {
    return geo::read_layers({{.file = file, .layer = layer, .as = geo::LayerKind::path}},
                            {-89.0, 89.0, -180.0, 180.0});
}

void expect_whole(const std::filesystem::path& file,
                  const planner::Plan& plan,
                  const planner::Route& route) {
    const geo::MapLayers legs = read_back(file, "legs");
    ASSERT_EQ(legs.features.size(), plan.legs.size());
    for (std::size_t i = 0; i < plan.legs.size(); ++i) {
        const planner::PlanLeg& leg = plan.legs[i];
        EXPECT_EQ(legs.features[i].name.substr(0, leg.name.size()), leg.name);
        double length_m = 0.0;
        for (const auto& part : legs.features[i].parts)
            for (std::size_t j = 0; j + 1 < part.size(); ++j)
                length_m += geo::distance_m(part[j], part[j + 1]);
        EXPECT_NEAR(length_m, leg.to_m - leg.from_m, 1.0) << leg.name;
    }
    const geo::MapLayers places = read_back(file, "places");
    EXPECT_GE(places.features.size(), route.places.size());
    for (const geo::LandFeature& place : places.features)
        EXPECT_EQ(place.shape, geo::LandShape::point);
}

TEST(ExportMaps, AreReadBackAsTheyWereWrittenAndCarryTheMark) {
    const planner::Plan plan = test::hand_built_plan();
    const planner::Route route = test::hand_built_route(plan);
    const test::TempFolder folder;
    const auto gpkg = folder.write("trip.gpkg", export_gpkg(plan, route));
    const auto kml = folder.write("trip.kml", export_kml(plan, route));
    for (const auto& file : {gpkg, kml}) {
        expect_whole(file, plan, route);
        EXPECT_EQ(authorship_of(file), Authorship::ours) << file;
    }
    std::ofstream(kml, std::ios::app) << "\n";
    EXPECT_EQ(authorship_of(kml), Authorship::changed);
}

TEST(ExportMaps, AreTheSameBytesForTheSamePlan) {
    const planner::Plan plan = test::hand_built_plan();
    const planner::Route route = test::hand_built_route(plan);
    EXPECT_EQ(export_gpkg(plan, route), export_gpkg(plan, route));
    EXPECT_EQ(export_kml(plan, route), export_kml(plan, route));
}

} // namespace
} // namespace tumpline::cli
