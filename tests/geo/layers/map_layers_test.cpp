#include "geo/layers/map_layers.h"

#include "geo/input_error.h"
#include "tests/support/temp_folder.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>
#include <iterator>

namespace tumpline::geo {
namespace {

using testing::HasSubstr;

constexpr GeoBox around{60.9, 61.1, 9.9, 10.1};

std::string feature(const std::string& properties, const std::string& geometry) {
    return R"({"type": "Feature", "properties": {)" + properties + R"(}, "geometry": {)" +
           geometry + "}}";
}

std::string collection(const std::vector<std::string>& features) {
    std::string text = R"({"type": "FeatureCollection", "features": [)";
    for (std::size_t i = 0; i < features.size(); ++i)
        text += (i > 0 ? "," : "") + features[i];
    return text + "]}";
}

constexpr const char* in_frame = R"("type": "LineString", "coordinates": [[10, 61], [10.01, 61]])";
constexpr const char* far_off = R"("type": "LineString", "coordinates": [[12, 61], [12.01, 61]])";
constexpr const char* lake_ring =
    R"("type": "Polygon", "coordinates": [[[10, 61], [10.02, 61], [10.02, 61.01], [10, 61]]])";

class MapLayersFile : public testing::Test {
  protected:
    std::filesystem::path write(const std::vector<std::string>& features) {
        return folder_.write("ground.geojson", collection(features));
    }

    std::string refusal(const LayerSource& source) {
        try {
            (void)read_layers({source}, around);
        } catch (const InputError& error) {
            return error.what();
        }
        ADD_FAILURE() << "it was read";
        return {};
    }

    test::TempFolder folder_;
};

TEST_F(MapLayersFile, TakesWhatItsTagsTellAndCountsTheRest) {
    const auto file = write({feature(R"("waterway": "river", "name": "Ashwater")", in_frame),
                             feature(R"("natural": "water")", lake_ring),
                             feature(R"("colour": "red")", in_frame),
                             feature(R"("highway": "path")", far_off)});
    const MapLayers layers = read_layers({{.file = file, .credit = "survey of 2024"}}, around);
    ASSERT_EQ(layers.features.size(), 2U);
    EXPECT_EQ(layers.features[0].kind, LayerKind::river);
    EXPECT_EQ(layers.features[0].name, "Ashwater");
    EXPECT_TRUE(layers.features[0].down_stream);
    EXPECT_EQ(layers.features[1].shape, LandShape::area);
    EXPECT_EQ(layers.sources[0].unknown, 1U);
    EXPECT_EQ(layers.sources[0].credit, "survey of 2024");
    EXPECT_TRUE(layers.has(LayerKind::water));
    EXPECT_FALSE(layers.has(LayerKind::path)) << "it lies beyond the frame";
}

TEST_F(MapLayersFile, TakesAllForWhatTheTripSays) {
    const auto file = write({feature(R"("class": "a", "label": "<b>Wet</b>")", lake_ring),
                             feature(R"("class": "b")", lake_ring)});
    const MapLayers layers = read_layers(
        {{.file = file, .as = LayerKind::water, .where = "class = 'a'", .name = "label"}}, around);
    ASSERT_EQ(layers.features.size(), 1U);
    EXPECT_EQ(layers.features[0].name, "<b>Wet</b>") << "escaped only where it is drawn";
    EXPECT_EQ(layers.sources[0].features, 1U);
}

TEST_F(MapLayersFile, SaysWhatIsWrongWithAFile) {
    const auto file = write({feature(R"("class": "a")", lake_ring)});
    EXPECT_THAT(refusal({.file = file, .layer = "lakes"}), HasSubstr("one of \"ground\""));
    EXPECT_THAT(refusal({.file = file, .where = "class = "}), HasSubstr("comparison"));
    EXPECT_THAT(refusal({.file = file, .where = "1 IN (SELECT 1)"}), HasSubstr("comparison"));
    EXPECT_THAT(refusal({.file = folder_.path() / "none.gpkg"}), HasSubstr("no such file"));
    EXPECT_THAT(refusal({.file = folder_.write("noise.geojson", "not a map")}),
                HasSubstr("unknown kind"));
    const auto big = folder_.write("big.osm.pbf", "0");
    std::filesystem::resize_file(big, 60'000'000);
    EXPECT_THAT(refusal({.file = big}), HasSubstr("50 MB at most"));
}

TEST_F(MapLayersFile, ReadsAnExtractWithItsTagsAndCredit) {
    const auto file = folder_.write("cut.osm", R"(<?xml version="1.0" encoding="UTF-8"?>
<osm version="0.6">
<node id="1" lat="61.0" lon="10.0"/><node id="2" lat="61.0" lon="10.01"/>
<node id="3" lat="61.01" lon="10.01"/>
<node id="4" lat="61.005" lon="10.005"><tag k="waterway" v="waterfall"/><tag k="name" v="Spout"/></node>
<way id="5"><nd ref="1"/><nd ref="2"/><nd ref="3"/><tag k="waterway" v="river"/><tag k="whitewater:section_grade" v="3"/></way>
<way id="6"><nd ref="1"/><nd ref="2"/><nd ref="3"/><nd ref="1"/><tag k="natural" v="water"/></way>
</osm>
)");
    std::ifstream before(file, std::ios::binary);
    const std::string bytes{std::istreambuf_iterator<char>(before), {}};
    const MapLayers layers = read_layers({{.file = file}}, around);
    ASSERT_EQ(layers.features.size(), 3U);
    EXPECT_TRUE(layers.has(LayerKind::rapid));
    EXPECT_TRUE(layers.has(LayerKind::river));
    EXPECT_TRUE(layers.has(LayerKind::water));
    for (const LandFeature& each : layers.features) {
        if (each.kind == LayerKind::river) {
            EXPECT_EQ(each.grade, "3");
        }
        if (each.kind == LayerKind::rapid) {
            EXPECT_EQ(each.name, "Spout");
        }
    }
    EXPECT_EQ(layers.sources[0].credit, open_street_map_credit());
    std::ifstream after(file, std::ios::binary);
    EXPECT_EQ(bytes, std::string(std::istreambuf_iterator<char>(after), {}));
    EXPECT_EQ(std::distance(std::filesystem::directory_iterator(folder_.path()), {}), 1)
        << "nothing is left beside it";
}

} // namespace
} // namespace tumpline::geo
