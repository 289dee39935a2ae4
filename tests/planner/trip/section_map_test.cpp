#include "tests/support/small_trip_file.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace tumpline::planner {
namespace {

using test::problems_with;
using test::small_trip_with;

TEST(SectionMap, ReadsEachLayerWithItsFileKindNameAndCredit) {
    const TripMap map = small_trip_with("/map", R"({"relief": false, "layers": [
        {"file": "ground.gpkg", "layer": "lakes", "as": "water"},
        {"file": "ways.geojson", "as": "path", "where": "width > 1", "name": "old paths",
         "credit": "survey of 2024"}]})")
                            .map;
    EXPECT_EQ(map.relief, false);
    ASSERT_EQ(map.layers.size(), 2U);
    EXPECT_EQ(map.layers[0].file.filename(), "ground.gpkg");
    EXPECT_EQ(map.layers[0].layer, "lakes");
    EXPECT_EQ(map.layers[0].as, geo::LayerKind::water);
    EXPECT_EQ(map.layers[0].credit, "");
    EXPECT_EQ(map.layers[1].file.filename(), "ways.geojson");
    EXPECT_EQ(map.layers[1].layer, "");
    EXPECT_EQ(map.layers[1].as, geo::LayerKind::path);
    EXPECT_EQ(map.layers[1].where, "width > 1");
    EXPECT_EQ(map.layers[1].name, "old paths");
    EXPECT_EQ(map.layers[1].credit, "survey of 2024");
}

TEST(SectionMap, ReliefIsOpenWhereNothingIsSaid) {
    EXPECT_FALSE(small_trip_with("/map", "{}").map.relief);
}

TEST(SectionMap, ALayerNeedsAFile) {
    EXPECT_THAT(problems_with("/map/layers", R"([{"as": "water"}])"),
                testing::ElementsAre(testing::HasSubstr("/map/layers/0: found no \"file\"")));
}

} // namespace
} // namespace tumpline::planner
