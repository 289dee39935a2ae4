#include "tests/support/small_trip_file.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace tumpline::planner {
namespace {

using test::problems_with;
using test::small_trip_with;
using testing::ElementsAre;
using testing::HasSubstr;

TEST(SectionParty, ReadsEveryKeyOfAMember) {
    const Member ben = small_trip_with("/party/1", R"({"name": "Ben", "body": "176 lb",
        "height": "1.83 m", "age": 44, "sex": "male", "carry_limit": "24 kg",
        "portage_limit": "30 kg", "pack_volume": "70 L", "pace": 0.9, "level_speed": "4.5 km/h",
        "class": "III", "fitness": "24 min"})")
                           .party.at(1);
    EXPECT_EQ(ben.name, "Ben");
    EXPECT_DOUBLE_EQ(ben.body_kg, 176.0 * 0.45359237); // the international pound
    EXPECT_DOUBLE_EQ(ben.height_m.value(), 1.83);
    EXPECT_EQ(ben.age_years, 44.0);
    EXPECT_EQ(ben.sex, Sex::male);
    EXPECT_DOUBLE_EQ(ben.carry_limit_kg.value(), 24.0);
    EXPECT_DOUBLE_EQ(ben.portage_limit_kg.value(), 30.0);
    EXPECT_DOUBLE_EQ(ben.pack_volume_l.value(), 70.0);
    EXPECT_EQ(ben.pace, 0.9);
    EXPECT_DOUBLE_EQ(ben.level_speed_mps.value(), 1.25); // 4.5 / 3.6
    EXPECT_EQ(ben.river_class, 3);
    EXPECT_EQ(ben.fitness, std::chrono::minutes{24});
}

TEST(SectionParty, ReadsEveryKeyOfACraft) {
    const Craft craft =
        small_trip_with("/craft/0", R"({"name": "long canoe", "kind": "tandem-canoe",
        "mass": "27 kg", "payload": "380 kg", "crew": ["Ben", "Ada"], "calm_speed": "5.4 km/h",
        "bags": ["60 L", "70 L"], "wet": 0.05, "class": "II", "wind_ceiling": "8 m/s",
        "rolled": "9 L", "borne_by": 2, "rolls_up": false, "waterplane": "2.6 m2",
        "freeboard": "31 cm"})")
            .craft.at(0);
    EXPECT_EQ(craft.name, "long canoe");
    EXPECT_EQ(craft.kind, CraftKind::tandem_canoe);
    EXPECT_DOUBLE_EQ(craft.mass_kg, 27.0);
    EXPECT_DOUBLE_EQ(craft.payload_kg.value(), 380.0);
    EXPECT_THAT(craft.crew, ElementsAre("Ben", "Ada"));
    EXPECT_DOUBLE_EQ(craft.calm_speed_mps.value(), 1.5); // 5.4 / 3.6
    EXPECT_THAT(craft.bags_l, ElementsAre(60.0, 70.0));
    EXPECT_EQ(craft.wet_fraction, 0.05);
    EXPECT_EQ(craft.river_class, 2);
    EXPECT_DOUBLE_EQ(craft.wind_ceiling_mps.value(), 8.0);
    EXPECT_DOUBLE_EQ(craft.rolled_l.value(), 9.0);
    EXPECT_EQ(craft.borne_by, 2);
    EXPECT_EQ(craft.rolls_up, false);
    EXPECT_DOUBLE_EQ(craft.waterplane_m2.value(), 2.6);
    EXPECT_DOUBLE_EQ(craft.freeboard_m.value(), 0.31);
}

TEST(SectionParty, BagsAreTwoOrNone) {
    EXPECT_TRUE(small_trip_with("/craft/0/bags", "[]").craft.at(0).bags_l.empty());
    EXPECT_THAT(problems_with("/craft/0/bags", R"(["60 L"])"),
                ElementsAre(HasSubstr("two bags, left and right, or none")));
}

TEST(SectionParty, AMassWithoutAUnitIsAskedForOne) {
    EXPECT_THAT(
        problems_with("/party/0/body", "68"),
        ElementsAre(testing::AllOf(HasSubstr("/party/0/body"), HasSubstr("write \"68 kg\""))));
}

TEST(SectionParty, ReadsTheDeckAndTheWaterOfABoat) {
    const Craft craft = small_trip_with("/craft/0", R"({"name": "long canoe", "mass": "27 kg",
        "deck": "self-bailing", "thigh_straps": false, "suits": ["lake", "river III", "river", "sea"]})")
                            .craft.at(0);
    EXPECT_EQ(craft.deck, Deck::self_bailing);
    EXPECT_EQ(craft.thigh_straps, false);
    ASSERT_EQ(craft.suits.size(), 4U);
    EXPECT_EQ(craft.suits[0].water, Water::lake);
    EXPECT_EQ(craft.suits[1].water, Water::river);
    EXPECT_EQ(craft.suits[1].hardest, 3);
    EXPECT_EQ(craft.suits[2].hardest, 0);
    EXPECT_EQ(craft.suits[3].water, Water::sea);
    EXPECT_DOUBLE_EQ(
        small_trip_with("/party/0/pack_length", R"("62 cm")").party.at(0).pack_length_m.value(),
        0.62);
}

TEST(SectionParty, TellsMistakesOfDeckAndWater) {
    EXPECT_THAT(problems_with("/craft/0/deck", R"("closed")"),
                ElementsAre(HasSubstr("/craft/0/deck")));
    EXPECT_THAT(problems_with("/craft/0/suits", "[]"), ElementsAre(HasSubstr("/craft/0/suits")));
    EXPECT_THAT(
        problems_with("/craft/0/suits", R"(["lkae"])"),
        ElementsAre(testing::AllOf(HasSubstr("/craft/0/suits/0"), HasSubstr("write \"lake\""))));
    EXPECT_THAT(
        problems_with("/craft/0/suits", R"(["lake", "river IX"])"),
        ElementsAre(testing::AllOf(HasSubstr("/craft/0/suits/1"), HasSubstr("\"river III\""))));
    EXPECT_THAT(problems_with("/party/0/pack_length", R"("62 m")"),
                ElementsAre(HasSubstr("/party/0/pack_length")));
}

} // namespace
} // namespace tumpline::planner
