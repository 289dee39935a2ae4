#include "planner/route/land.h"

#include "geo/input_error.h"
#include "tests/support/plain_trip.h"
#include "tests/support/temp_folder.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace tumpline::planner {
namespace {

/// One lake by the plain trip (45 N, 40 W, due north), one 111 km south of it, and a thing without
/// any tag.
constexpr const char* lakes = R"({"type": "FeatureCollection", "features": [
  {"type": "Feature", "properties": {"natural": "water", "name": "Near Tarn"}, "geometry":
   {"type": "Polygon", "coordinates": [[[-40.01, 45.0], [-40.0, 45.0], [-40.0, 45.01], [-40.01, 45.0]]]}},
  {"type": "Feature", "properties": {"natural": "water", "name": "Far Tarn"}, "geometry":
   {"type": "Polygon", "coordinates": [[[-40.01, 44.0], [-40.0, 44.0], [-40.0, 44.01], [-40.01, 44.0]]]}},
  {"type": "Feature", "properties": {"colour": "red"}, "geometry":
   {"type": "Polygon", "coordinates": [[[-40.01, 45.0], [-40.0, 45.0], [-40.0, 45.01], [-40.01, 45.0]]]}}
]})";

TEST(Land, WithoutLayersThereIsNone) {
    test::PlainTrip plain = test::plain_trip({test::walk(3000.0)});
    read_land(plain.trip, plain.route);
    EXPECT_FALSE(plain.route.land);
    EXPECT_TRUE(plain.route.sources.empty());
}

TEST(Land, IsReadAroundTheRouteAndSaysFromWhere) {
    const test::TempFolder folder;
    test::PlainTrip plain = test::plain_trip({test::walk(3000.0)});
    geo::LayerSource source;
    source.file = folder.write("lakes.geojson", lakes);
    source.credit = "survey of 2024";
    plain.trip.map.layers = {source};
    read_land(plain.trip, plain.route);
    ASSERT_TRUE(plain.route.land);
    ASSERT_EQ(plain.route.land->features.size(), 1U); // within 5 km of the route
    EXPECT_EQ(plain.route.land->features[0].name, "Near Tarn");
    ASSERT_EQ(plain.route.sources.size(), 1U);
    EXPECT_THAT(plain.route.sources[0],
                testing::AllOf(testing::HasSubstr("lakes.geojson: 1 things on the map"),
                               testing::HasSubstr("1 left out, for no tag says what they are"),
                               testing::EndsWith("; survey of 2024")));
}

TEST(Land, ALayerThatIsMissingIsNamed) {
    test::PlainTrip plain = test::plain_trip({test::walk(3000.0)});
    geo::LayerSource source;
    source.file = "no-such-file.geojson";
    plain.trip.map.layers = {source};
    EXPECT_THROW(read_land(plain.trip, plain.route), geo::InputError);
}

} // namespace
} // namespace tumpline::planner
