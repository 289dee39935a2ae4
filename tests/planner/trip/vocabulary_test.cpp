#include "planner/trip/vocabulary.h"

#include <gtest/gtest.h>

namespace tumpline::planner {
namespace {

TEST(RiverClass, ReadsMapsAndGuidebooks) {
    EXPECT_EQ(read_river_class("I"), 1);
    EXPECT_EQ(read_river_class("IV"), 4);
    EXPECT_EQ(read_river_class("VI"), 6);
    EXPECT_EQ(read_river_class("3"), 3);
}

TEST(RiverClass, TakesTheHarderOfTwo) {
    EXPECT_EQ(read_river_class("II+"), 3);
    EXPECT_EQ(read_river_class("III-"), 3);
    EXPECT_EQ(read_river_class("II-"), 2);
    EXPECT_EQ(read_river_class("II-III"), 3);
    EXPECT_EQ(read_river_class("2-4"), 4);
    EXPECT_EQ(read_river_class("VI+"), 6);
}

TEST(RiverClass, RefusesOthers) {
    for (const char* text : {"", "VII", "0", "7", "-", "+", "IIII", "i", "II-IX", "-III"})
        EXPECT_FALSE(read_river_class(text).has_value()) << text;
}

TEST(TripWords, TurnBackIntoThemselves) {
    for (const auto& entry : travel_words())
        EXPECT_EQ(word(entry.meaning), entry.word);
    for (const auto& entry : terrain_words())
        EXPECT_EQ(word(entry.meaning), entry.word);
    for (const auto& entry : water_words())
        EXPECT_EQ(word(entry.meaning), entry.word);
    for (const auto& entry : place_kind_words())
        EXPECT_EQ(word(entry.meaning), entry.word);
    for (const auto& entry : craft_kind_words())
        EXPECT_EQ(word(entry.meaning), entry.word);
    for (const auto& entry : item_use_words())
        EXPECT_EQ(word(entry.meaning), entry.word);
    for (const auto& entry : meal_words())
        EXPECT_EQ(word(entry.meaning), entry.word);
    EXPECT_EQ(word(PlaceKind::landing), "landing");
    EXPECT_EQ(class_word(0), "");
    EXPECT_EQ(class_word(4), "IV");
}

} // namespace
} // namespace tumpline::planner
