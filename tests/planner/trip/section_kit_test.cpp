#include "tests/support/small_trip_file.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace tumpline::planner {
namespace {

using test::problems_with;
using test::small_trip_with;
using testing::ElementsAre;
using testing::HasSubstr;

TEST(SectionKit, ReadsEveryKeyIntoItsPlace) {
    const KitItem item = small_trip_with("/kit/0", R"({"item": "line", "mass": "450 g", "count": 3,
        "for": "Ben", "ashore": "packed", "afloat": "used", "in": "sack", "volume": "2.5 L",
        "stays_with": "Ben", "is": "throw-bag", "must": true, "borne_by": 2, "bag": "right",
        "wet": 0.4})")
                             .kit.at(0);
    EXPECT_EQ(item.name, "line");
    EXPECT_DOUBLE_EQ(item.mass_kg, 0.45);
    EXPECT_EQ(item.count, 3);
    EXPECT_DOUBLE_EQ(item.all_kg(), 1.35);
    EXPECT_EQ(item.owner, "Ben");
    EXPECT_EQ(item.ashore, ItemUse::packed);
    EXPECT_EQ(item.afloat, ItemUse::used);
    EXPECT_EQ(item.piece, "sack");
    EXPECT_DOUBLE_EQ(item.volume_l.value(), 2.5);
    EXPECT_EQ(item.bearer, "Ben");
    EXPECT_EQ(item.is, SafetyGear::throw_bag);
    EXPECT_TRUE(item.must);
    EXPECT_EQ(item.borne_by, 2);
    EXPECT_EQ(item.bag, BagSide::right);
    EXPECT_EQ(item.wet_fraction, 0.4);
    EXPECT_FALSE(item.at_hand);
    EXPECT_FALSE(item.gets_wet);
    EXPECT_FALSE(item.cart_payload_kg);
}

TEST(SectionKit, YesAndNoAreKeptApart) {
    const KitItem item = small_trip_with("/kit/0", R"({"item": "cart", "mass": "5 kg",
        "ashore": "worn", "at_hand": true, "gets_wet": true, "bring": false,
        "cart_payload": "60 kg"})")
                             .kit.at(0);
    EXPECT_EQ(item.ashore, ItemUse::worn);
    EXPECT_EQ(item.afloat, ItemUse::packed);
    EXPECT_TRUE(item.at_hand);
    EXPECT_TRUE(item.gets_wet);
    EXPECT_EQ(item.bring, false);
    EXPECT_FALSE(item.must);
    EXPECT_EQ(item.cart_payload_kg, 60.0);
}

TEST(SectionKit, AThingOfThePartysHasNoOwner) {
    EXPECT_EQ(small_trip_with("/kit/0/for", R"("party")").kit.at(0).owner, "");
}

TEST(SectionKit, OneConditionOrAListOfWhichAnySuffices) {
    const KitItem one = small_trip_with("/kit/0/when",
                                        R"({"class": "III", "rain": true, "water_below": "8 C",
                                            "night_below": "-2 C", "snow": false, "open_crossing": true})")
                            .kit.at(0);
    ASSERT_EQ(one.when.size(), 1U);
    EXPECT_EQ(one.when[0].river_class, 3);
    EXPECT_EQ(one.when[0].rain, true);
    EXPECT_EQ(one.when[0].water_below_c, 8.0);
    EXPECT_EQ(one.when[0].night_below_c, -2.0);
    EXPECT_EQ(one.when[0].snow, false);
    EXPECT_EQ(one.when[0].open_crossing, true);
    const KitItem two =
        small_trip_with("/kit/0/when", R"([{"rain": true}, {"class": "II"}])").kit.at(0);
    ASSERT_EQ(two.when.size(), 2U);
    EXPECT_EQ(two.when[0].rain, true);
    EXPECT_EQ(two.when[1].river_class, 2);
    EXPECT_FALSE(two.when[1].rain);
}

TEST(SectionKit, AnEmptyConditionIsASlip) {
    EXPECT_THAT(problems_with("/kit/0/when", "{}"),
                ElementsAre(testing::AllOf(HasSubstr("/kit/0/when"),
                                           HasSubstr("at least one key of a condition"))));
}

TEST(SectionKit, ReadsAPaddleAndWhereAThingLies) {
    const KitItem item = small_trip_with("/kit/0", R"({"item": "paddle", "mass": "970 g",
        "lies": "stern", "paddle": {"length": "220 cm", "pieces": 4, "packed_length": "62 cm",
        "stroke": "high"}})")
                             .kit.at(0);
    EXPECT_EQ(item.lies, BoatEnd::stern);
    ASSERT_TRUE(item.paddle);
    EXPECT_DOUBLE_EQ(item.paddle->length_m.value(), 2.2);
    EXPECT_EQ(item.paddle->pieces, 4);
    EXPECT_DOUBLE_EQ(item.paddle->packed_length_m.value(), 0.62);
    EXPECT_EQ(item.paddle->stroke, Stroke::high);
    EXPECT_TRUE(small_trip_with("/kit/0/paddle", "{}").kit.at(0).paddle);
    EXPECT_FALSE(small_trip_with("/kit/0/for", R"("party")").kit.at(0).paddle);
}

TEST(SectionKit, TellsMistakesOfPaddlesAndEnds) {
    EXPECT_THAT(problems_with("/kit/0/paddle", R"({"length": "60 cm"})"),
                ElementsAre(HasSubstr("/kit/0/paddle/length")));
    EXPECT_THAT(problems_with("/kit/0/paddle", R"({"length": "90 cm", "packed_length": "1 m"})"),
                ElementsAre(testing::AllOf(HasSubstr("/kit/0/paddle/packed_length"),
                                           HasSubstr("no more than its \"length\""))));
    EXPECT_THAT(problems_with("/kit/0/paddle", R"({"stroke": "hihg"})"),
                ElementsAre(HasSubstr("write \"high\"")));
    EXPECT_THAT(problems_with("/kit/0/paddle", R"({"pieces": 0})"),
                ElementsAre(HasSubstr("/kit/0/paddle/pieces")));
    EXPECT_THAT(problems_with("/kit/0/lies", R"("left")"), ElementsAre(HasSubstr("/kit/0/lies")));
}

} // namespace
} // namespace tumpline::planner
