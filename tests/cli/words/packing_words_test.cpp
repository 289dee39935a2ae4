#include "cli/words/packing_words.h"

#include <gtest/gtest.h>

namespace tumpline::cli {
namespace {

using planner::Account;
using planner::ItemUse;
using planner::PackedItem;
using planner::Part;
using planner::Stowage;

TEST(PackingWords, NameHowManyAndWhose) {
    PackedItem gloves;
    gloves.item = "gloves";
    EXPECT_EQ(thing_words(gloves), "gloves");
    EXPECT_EQ(owned_words(gloves), "gloves"); // the party's
    gloves.count = 2;
    gloves.owner = "Ada";
    EXPECT_EQ(thing_words(gloves), "2 × gloves");
    EXPECT_EQ(owned_words(gloves), "2 × gloves (Ada)");
    PackedItem boat;
    boat.part = Part::craft;
    boat.item = "red boat";
    boat.owner = "Ada";
    EXPECT_EQ(owned_words(boat), "red boat");
}

TEST(PackingWords, CountThingsOfOneNameAndSayWhoseTheyAre) {
    EXPECT_EQ(carried_words({"tent"}), "tent");
    EXPECT_EQ(carried_words({"pack", 1, {"Ada"}}), "pack");
    EXPECT_EQ(carried_words({"pack", 2, {"Ada", "Bram"}}), "2 × pack (Ada, Bram)");
    EXPECT_EQ(carried_words({"barrel", 2}), "2 × barrel");
    planner::Plan plan;
    for (const char* owner : {"Ada", "Bram", ""}) {
        planner::KitItem& item = plan.trip.kit.emplace_back();
        item.name = *owner == '\0' ? "pot" : "pack";
        item.owner = owner;
    }
    EXPECT_EQ(stowed_words(plan, {"pack", 3.3, {0, 1}}), "2 × pack (Ada, Bram)");
    EXPECT_EQ(stowed_words(plan, {"pack", 1.6, {0}}), "pack");
    EXPECT_EQ(stowed_words(plan, {"barrel", 4.0, {0, 2}}), "barrel"); // holds both
    EXPECT_EQ(stowed_words(plan, {"food", 2.0, {}}), "food");
}

TEST(PackingWords, TellWhereAThingIsAtTheStartAndAfloat) {
    PackedItem thing;
    EXPECT_EQ(start_words(thing), ""); // at home
    thing.at_start = Account::pack;
    thing.stowage = Stowage::right;
    EXPECT_EQ(start_words(thing), "pack");
    EXPECT_EQ(afloat_words(thing), "right bag");
    thing.stowage = Stowage::left;
    EXPECT_EQ(afloat_words(thing), "left bag");
    thing.at_start = Account::worn;
    thing.afloat = ItemUse::worn;
    EXPECT_EQ(start_words(thing), "worn");
    EXPECT_EQ(afloat_words(thing), "worn");
    thing.at_start = Account::in_use;
    thing.afloat = ItemUse::used;
    EXPECT_EQ(start_words(thing), "in hand");
    EXPECT_EQ(afloat_words(thing), "in use");
    thing.part = Part::craft;
    EXPECT_EQ(start_words(thing), "on the water");
}

TEST(PackingWords, GiveTheReasonInTheReadersUnits) {
    PackedItem suit;
    suit.why = "water at 9 C, below 14 C";
    EXPECT_EQ(why_words(suit, planner::UnitSystem::imperial), "water at 9 C, below 14 C");
    suit.imperial = "water at 48 F, below 57 F";
    EXPECT_EQ(why_words(suit, planner::UnitSystem::imperial), "water at 48 F, below 57 F");
    EXPECT_EQ(why_words(suit, planner::UnitSystem::metric), "water at 9 C, below 14 C");
}

} // namespace
} // namespace tumpline::cli
