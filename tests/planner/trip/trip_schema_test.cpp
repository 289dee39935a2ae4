#include "planner/trip/sections.h"
#include "planner/trip/vocabulary.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <fstream>
#include <set>
#include <string>
#include <string_view>
#include <vector>

namespace tumpline::planner {
namespace {

using Json = nlohmann::json;

Json schema() {
    std::ifstream in(TUMPLINE_SOURCE_DIR "/docs/trip.schema.json");
    return Json::parse(in);
}

std::string page() {
    std::ifstream in(TUMPLINE_SOURCE_DIR "/docs/trip-file.md");
    return {std::istreambuf_iterator<char>(in), {}};
}

/// The object of the schema for a section of the reader.
Json object_of(const Json& whole, const std::string& section) {
    return section == "trip" ? whole : whole.at("$defs").value(section, Json::object());
}

std::vector<std::string> keys_of(const Json& object) {
    std::vector<std::string> keys;
    for (const auto& [key, value] : object.at("properties").items())
        keys.push_back(key);
    return keys;
}

TEST(TripSchema, HasTheKeysThatTheReaderKnowsAndNoOthers) {
    const Json whole = schema();
    for (const KnownKeys& known : known_keys()) {
        SCOPED_TRACE(known.section);
        const Json object = object_of(whole, known.section);
        ASSERT_TRUE(object.contains("properties"));
        EXPECT_THAT(keys_of(object), testing::UnorderedElementsAreArray(known.keys));
        EXPECT_THAT(object.value("required", std::vector<std::string>()),
                    testing::UnorderedElementsAreArray(known.needed));
        EXPECT_EQ(object.at("additionalProperties"), false);
    }
}

TEST(TripSchema, HasNoObjectThatTheReaderDoesNotKnow) {
    std::set<std::string> known;
    for (const KnownKeys& keys : known_keys())
        known.insert(keys.section);
    const Json whole = schema(); // outlives the loop over its parts
    for (const auto& [name, definition] : whole.at("$defs").items())
        EXPECT_TRUE(!definition.contains("properties") || known.contains(name)) << name;
}

TEST(TripSchema, DescribesEveryKey) {
    const Json whole = schema();
    for (const KnownKeys& known : known_keys()) {
        const Json object = object_of(whole, known.section);
        for (const auto& [key, value] : object.at("properties").items())
            EXPECT_GT(value.value("description", "").size(), 5U) << known.section << "/" << key;
    }
}

TEST(TripSchema, RefersOnlyToWhatItDefines) {
    const Json whole = schema();
    std::vector<Json> open{whole};
    int references = 0;
    while (!open.empty()) {
        const Json value = open.back();
        open.pop_back();
        if (value.is_object() && value.contains("$ref") && value.at("$ref").is_string()) {
            const std::string target = value.at("$ref");
            ASSERT_TRUE(target.starts_with("#")) << target;
            EXPECT_TRUE(whole.contains(Json::json_pointer(target.substr(1)))) << target;
            ++references;
        }
        if (value.is_structured())
            open.insert(open.end(), value.begin(), value.end());
    }
    EXPECT_GT(references, 50);
}

template <class Meaning> std::vector<std::string> texts(std::span<const Word<Meaning>> words) {
    std::vector<std::string> all;
    for (const Word<Meaning>& entry : words)
        all.emplace_back(entry.word);
    return all;
}

TEST(TripSchema, HasTheWordsThatTheReaderKnows) {
    const Json whole = schema();
    const auto words_at = [&](const std::string& pointer) {
        return whole.at(Json::json_pointer(pointer + "/enum")).get<std::vector<std::string>>();
    };
    const auto leg = [](const std::string& key) { return "/$defs/leg/properties/" + key; };
    EXPECT_EQ(words_at(leg("travel")), texts(travel_words()));
    EXPECT_EQ(words_at(leg("terrain")), texts(terrain_words()));
    EXPECT_EQ(words_at(leg("water")), texts(water_words()));
    EXPECT_EQ(words_at(leg("boat_on_carry")), texts(boat_on_carry_words()));
    EXPECT_EQ(words_at(leg("carry_by")), texts(carry_by_words()));
    EXPECT_EQ(words_at("/$defs/place/properties/kind"), texts(place_kind_words()));
    EXPECT_EQ(words_at("/$defs/place/properties/closed_weekdays/items"), texts(weekday_words()));
    EXPECT_EQ(words_at("/$defs/member/properties/sex"), texts(sex_words()));
    EXPECT_EQ(words_at("/$defs/craft/properties/kind"), texts(craft_kind_words()));
    EXPECT_EQ(words_at("/$defs/item/properties/ashore"), texts(item_use_words()));
    EXPECT_EQ(words_at("/$defs/item/properties/afloat"), texts(item_use_words()));
    EXPECT_EQ(words_at("/$defs/item/properties/is"), texts(safety_gear_words()));
    EXPECT_EQ(words_at("/$defs/item/properties/bag"), texts(bag_side_words()));
    EXPECT_EQ(words_at("/$defs/food/properties/first_meal"), texts(meal_words()));
    EXPECT_EQ(words_at("/$defs/food/properties/last_meal"), texts(meal_words()));
    EXPECT_EQ(words_at("/$defs/water/properties/stow"), texts(water_stow_words()));
    EXPECT_EQ(words_at("/$defs/route/properties/recorder"), texts(height_recorder_words()));
    const auto plain = [](const std::vector<std::string_view>& words) {
        return std::vector<std::string>(words.begin(), words.end());
    };
    EXPECT_EQ(words_at("/$defs/fuel/properties/stove"), plain(stove_words()));
    EXPECT_EQ(words_at("/$defs/river_bed/properties/type"), plain(river_bed_words()));
    for (const char* family : {"walking", "load_effect", "energy", "resting", "paddling"})
        EXPECT_EQ(words_at(std::string("/$defs/models/properties/") + family),
                  plain(model_words(family)));
}

/// A bound of the schema is one of the reader as well: just inside is read, just outside refused.
TEST(TripSchema, HasTheReadersBounds) {
    const Json whole = schema();
    int bounds = 0;
    for (const char* section : {"member", "days", "weather", "spread", "fuel"}) {
        for (const auto& [key, value] : whole.at("$defs").at(section).at("properties").items()) {
            if (!value.contains("minimum"))
                continue;
            for (const auto& [number, fits] : std::vector<std::pair<double, bool>>{
                     {value.at("minimum").get<double>(), true},
                     {value.at("maximum").get<double>(), true},
                     {value.at("minimum").get<double>() - 1, false},
                     {value.at("maximum").get<double>() + 1, false}}) {
                Problems problems("t.json");
                JsonValue json;
                json.kind = JsonValue::Kind::object;
                JsonValue one;
                one.kind = JsonValue::Kind::number;
                one.number = number;
                json.members.push_back({.key = key, .value = one});
                const TripValue object(json, "", problems);
                Trip trip;
                const std::string name = section;
                if (name == "member")
                    read_section(object, member_section(), trip.party.emplace_back());
                else if (name == "days")
                    read_section(object, days_section(), trip.days);
                else if (name == "weather")
                    read_section(object, weather_section(), trip.forecast.emplace_back());
                else if (name == "spread")
                    read_section(object, spread_section(), trip.spread);
                else
                    read_section(object, fuel_section(), trip.fuel);
                bool refused = false;
                for (const geo::Problem& problem : problems.take())
                    refused = refused || problem.place == "/" + std::string(key);
                EXPECT_EQ(!refused, fits) << section << "/" << key << " = " << number;
                ++bounds;
            }
        }
    }
    EXPECT_GT(bounds, 50);
}

TEST(TripFilePage, ExplainsEveryKeyAndWord) {
    const std::string text = page();
    for (const KnownKeys& known : known_keys())
        for (const std::string& key : known.keys)
            EXPECT_NE(text.find("`" + key + "`"), std::string::npos)
                << known.section << ": " << key;
    for (const auto& words : {texts(travel_words()),
                              texts(terrain_words()),
                              texts(water_words()),
                              texts(place_kind_words()),
                              texts(craft_kind_words()),
                              texts(item_use_words()),
                              texts(safety_gear_words()),
                              texts(bag_side_words()),
                              texts(height_recorder_words()),
                              texts(water_stow_words()),
                              texts(meal_words())})
        for (const std::string& word : words)
            EXPECT_NE(text.find("`" + word + "`"), std::string::npos) << word;
}

} // namespace
} // namespace tumpline::planner
