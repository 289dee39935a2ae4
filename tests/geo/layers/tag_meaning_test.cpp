#include "geo/layers/tag_meaning.h"

#include <gtest/gtest.h>

#include <map>

namespace tumpline::geo {
namespace {

std::optional<TagMeaning> meaning(const std::map<std::string, std::string>& tags) {
    return tag_meaning([&](std::string_view key) {
        const auto found = tags.find(std::string(key));
        return found == tags.end() ? std::string() : found->second;
    });
}

TEST(TagMeaning, TellsWatersAndWaysApart) {
    using enum LayerKind;
    EXPECT_EQ(meaning({{"natural", "water"}})->kind, water);
    EXPECT_EQ(meaning({{"waterway", "riverbank"}})->kind, water);
    EXPECT_EQ(meaning({{"waterway", "river"}})->kind, river);
    EXPECT_EQ(meaning({{"waterway", "stream"}})->sign, LandSign::stream);
    EXPECT_TRUE(meaning({{"waterway", "stream"}, {"intermittent", "yes"}})->intermittent);
    EXPECT_EQ(meaning({{"highway", "path"}})->kind, path);
    EXPECT_EQ(meaning({{"highway", "path"}, {"trail_visibility", "no"}})->sign, LandSign::unmarked);
    EXPECT_EQ(meaning({{"highway", "track"}})->kind, road);
    EXPECT_EQ(meaning({{"building", "hut"}})->kind, building);
    EXPECT_FALSE(meaning({{"building", "no"}}));
    EXPECT_EQ(meaning({{"boundary", "national_park"}})->kind, protected_ground);
    EXPECT_FALSE(meaning({{"natural", "peak"}}));
    EXPECT_FALSE(meaning({}));
}

TEST(TagMeaning, KnowsFallsAndRapidsInEveryTagThatTellsOfThem) {
    EXPECT_EQ(meaning({{"waterway", "waterfall"}})->sign, LandSign::fall);
    EXPECT_EQ(meaning({{"waterway", "weir"}})->sign, LandSign::weir);
    EXPECT_EQ(meaning({{"waterway", "rapids"}})->kind, LayerKind::rapid);
    EXPECT_EQ(meaning({{"whitewater", "rapid"}, {"whitewater:rapid_grade", "3"}})->grade, "3");
    const std::optional<TagMeaning> reach = meaning({{"waterway", "river"}, {"rapids", "2+"}});
    EXPECT_EQ(reach->kind, LayerKind::river);
    EXPECT_TRUE(reach->rapid);
    EXPECT_EQ(reach->grade, "2+");
    EXPECT_EQ(meaning({{"rapids", "yes"}})->kind, LayerKind::rapid);
    EXPECT_FALSE(meaning({{"waterway", "river"}, {"rapids", "no"}})->rapid);
}

TEST(TagMeaning, ReadsFurtherTagsFromPairs) {
    const std::string pairs = R"("rapids"=>"yes","note"=>"say \"mind\", so",  "ele"=>"5")";
    EXPECT_EQ(hstore_value(pairs, "rapids"), "yes");
    EXPECT_EQ(hstore_value(pairs, "note"), "say \"mind\", so");
    EXPECT_EQ(hstore_value(pairs, "ele"), "5");
    EXPECT_EQ(hstore_value(pairs, "yes"), "") << "a value is no key";
    EXPECT_EQ(hstore_value("\"cut", "cut"), "");
}

} // namespace
} // namespace tumpline::geo
