#include "planner/decisions/craft_choice_trips.h"

#include "tests/support/plain_trip.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <string>

namespace tumpline::planner {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;

CraftChoice offered(const std::string& name, double mass_kg, int seats) {
    CraftChoice choice;
    choice.name = name;
    choice.mass_kg = mass_kg;
    choice.seats = seats;
    return choice;
}

/// Ada alone in one boat, Ben and Cato in another.
test::PlainTrip two_boats() {
    test::PlainTrip plain = test::plain_trip({test::walk(1000.0), test::lake(2000.0)});
    test::add_member(plain, "Ben", 30.0);
    test::add_member(plain, "Cato", 30.0);
    Craft canoe;
    canoe.name = "canoe";
    canoe.mass_kg = 20.0;
    canoe.payload_kg = 300.0;
    canoe.crew = {"Ben", "Cato"};
    plain.trip.craft.push_back(canoe);
    return plain;
}

TEST(OtherBoats, TakeThePlaceOfThoseWithAsManyAboardAndGetTheirCrews) {
    test::PlainTrip plain = two_boats();
    plain.trip.craft_choices = {offered("light", 2.0, 1), offered("double", 5.0, 2)};
    plain.trip.craft_choices[1].price = 800.0;
    const auto all = other_boats(plain.trip, plain.route, {});
    ASSERT_EQ(all.size(), 3U);
    EXPECT_EQ(all[0].boats, Boats::own);
    EXPECT_EQ(all[0].price, 0.0);
    EXPECT_EQ(all[0].trip.craft[0].name, "boat");

    EXPECT_THAT(all[1].replaces, ElementsAre("boat"));
    EXPECT_EQ(all[1].count, 1);
    EXPECT_FALSE(all[1].price) << "a price that is not given is not known";
    EXPECT_EQ(all[1].trip.craft[0].name, "light (Ada)");
    EXPECT_EQ(all[1].trip.craft[0].mass_kg, 2.0);
    EXPECT_EQ(all[1].trip.craft[1].name, "canoe") << "nobody replaced it";

    EXPECT_THAT(all[2].replaces, ElementsAre("canoe"));
    EXPECT_EQ(all[2].price, 800.0);
    EXPECT_THAT(all[2].trip.craft[1].crew, ElementsAre("Ben", "Cato"));
    EXPECT_FALSE(all[2].trip.craft[1].payload_kg) << "nothing of the old boat's goes over";
}

TEST(OtherBoats, OfOneKindAreAsManyAsTheBoatsAndCostSoManyTimes) {
    test::PlainTrip plain = two_boats();
    plain.trip.craft[1].crew = {"Ben"};
    plain.trip.craft_choices = {offered("light", 2.0, 1)};
    plain.trip.craft_choices[0].price = 450.0;
    const auto all = other_boats(plain.trip, plain.route, {});
    EXPECT_EQ(all[1].count, 2);
    EXPECT_EQ(all[1].price, 900.0); // 2 x 450
    EXPECT_EQ(all[1].trip.craft[0].name, "light (Ada)");
    EXPECT_EQ(all[1].trip.craft[1].name, "light (Ben)");
}

TEST(OtherBoats, TakeThePlaceOfThoseThatTheyNameOnlyIfThePeopleFit) {
    test::PlainTrip plain = two_boats();
    plain.trip.craft_choices = {offered("big", 4.0, 3), offered("light", 2.0, 1)};
    for (CraftChoice& choice : plain.trip.craft_choices)
        choice.replaces = {"canoe"};
    const auto all = other_boats(plain.trip, plain.route, {});
    EXPECT_THAT(all[1].refused, IsEmpty());
    EXPECT_EQ(all[1].trip.craft[0].name, "boat");
    EXPECT_EQ(all[1].trip.craft[1].name, "big (Ben, Cato)");
    EXPECT_EQ(all[2].refused, "it has 1 seat, and 2 sit in canoe");
}

TEST(OtherBoats, ThatFitNobodySaySo) {
    test::PlainTrip plain = two_boats();
    plain.trip.craft_choices = {offered("long", 9.0, 3)};
    const auto all = other_boats(plain.trip, plain.route, {});
    EXPECT_EQ(all[1].count, 0);
    EXPECT_EQ(all[1].refused, "it has 3 seats, and no boat of the trip has as many aboard");
}

TEST(OtherBoats, SeatAPartyThatHasNoneInItsOrder) {
    test::PlainTrip plain = two_boats();
    plain.trip.craft.clear();
    plain.trip.craft_choices = {offered("double", 5.0, 2)};
    const auto all = other_boats(plain.trip, plain.route, {});
    ASSERT_EQ(all[1].trip.craft.size(), 2U); // three people, two to a boat
    EXPECT_THAT(all[1].trip.craft[0].crew, ElementsAre("Ada", "Ben"));
    EXPECT_THAT(all[1].trip.craft[1].crew, ElementsAre("Cato"));
    EXPECT_EQ(all[1].count, 2);
}

TEST(OtherBoats, StayAtHomeWhereNoLegIsAfloat) {
    test::PlainTrip dry = test::plain_trip({test::walk(1000.0)});
    KitItem paddle = test::thing("paddle", 1.0);
    paddle.afloat = ItemUse::used;
    dry.trip.kit = {test::thing("sack", 8.0), paddle};
    dry.trip.craft = two_boats().trip.craft;
    const auto all = other_boats(dry.trip, dry.route, {});
    ASSERT_EQ(all.size(), 2U);
    EXPECT_EQ(all[1].boats, Boats::none);
    EXPECT_THAT(all[1].trip.craft, IsEmpty());
    ASSERT_EQ(all[1].trip.kit.size(), 1U);
    EXPECT_EQ(all[1].trip.kit[0].name, "sack");

    const test::PlainTrip wet = two_boats();
    EXPECT_EQ(other_boats(wet.trip, wet.route, {}).size(), 1U);
}

TEST(OtherBoats, StayAtHomeOnAWayByAlternativesWithoutWater) {
    const test::PlainTrip wet = two_boats();
    const test::PlainTrip dry = test::plain_trip({test::walk(3500.0)});
    OtherRoute way;
    way.by = {"shore"};
    way.trip = dry.trip;
    way.route = dry.route;
    const auto all = other_boats(wet.trip, wet.route, {way});
    ASSERT_EQ(all.size(), 2U);
    EXPECT_EQ(all[1].boats, Boats::none);
    EXPECT_THAT(all[1].by, ElementsAre("shore"));
    EXPECT_NEAR(all[1].route.length_m, 3500.0, 1e-6);
}

KitItem a_paddle(const std::string& name, const std::string& owner) {
    KitItem item;
    item.name = name;
    item.mass_kg = 0.9;
    item.owner = owner;
    item.volume_l = 5.0;
    item.afloat = ItemUse::used;
    item.paddle = PaddleSpec{.length_m = 2.2};
    return item;
}

CraftChoice short_paddle() {
    CraftChoice choice = offered("short paddle", 1.1, 1);
    choice.is_paddle = true;
    choice.paddle = PaddleSpec{.length_m = 1.97, .stroke = Stroke::high};
    choice.price = 150.0;
    return choice;
}

TEST(OtherBoats, APaddleTakesThePlaceOfPaddlesAndBoatsStay) {
    test::PlainTrip plain = two_boats();
    plain.trip.kit = {a_paddle("paddle", "Ada"), test::thing("tent", 2.0), a_paddle("old", "Ben")};
    plain.trip.craft_choices = {short_paddle(), short_paddle()};
    plain.trip.craft_choices[1].replaces = {"old"};
    const auto all = other_boats(plain.trip, plain.route, {});
    ASSERT_EQ(all.size(), 3U);
    EXPECT_TRUE(all[1].paddle);
    EXPECT_FALSE(all[0].paddle);
    EXPECT_THAT(all[1].replaces, ElementsAre("paddle", "old"));
    EXPECT_EQ(all[1].count, 2);
    EXPECT_EQ(all[1].price, 300.0);
    EXPECT_EQ(all[1].trip.craft[0].name, "boat");
    const KitItem& mine = all[1].trip.kit[0];
    EXPECT_EQ(mine.name, "short paddle");
    EXPECT_EQ(mine.mass_kg, 1.1);
    EXPECT_EQ(mine.owner, "Ada");
    EXPECT_EQ(mine.afloat, ItemUse::used);
    EXPECT_EQ(mine.paddle.value().length_m, 1.97);
    EXPECT_FALSE(mine.volume_l) << "that of the old one";
    EXPECT_EQ(all[1].trip.kit[1].name, "tent");
    EXPECT_EQ(all[2].trip.kit[0].name, "paddle") << "not named";
    EXPECT_EQ(all[2].trip.kit[2].name, "short paddle");
    EXPECT_EQ(all[2].count, 1);
}

TEST(OtherBoats, APaddleIsRefusedWhereTheKitHasNone) {
    test::PlainTrip plain = two_boats();
    plain.trip.kit = {test::thing("paddle", 0.9)}; // no key says that it is one
    plain.trip.craft_choices = {short_paddle()};
    const auto all = other_boats(plain.trip, plain.route, {});
    EXPECT_THAT(all.at(1).refused, HasSubstr("no thing of the kit says that it is a paddle"));
}

TEST(OtherBoats, WhatIsLeftOnTheWayIsLeftByItsNewName) {
    test::PlainTrip plain = two_boats();
    plain.trip.kit = {a_paddle("paddle", "Ada")};
    Leave leave;
    leave.at = "Tarn";
    leave.things = {"boat", "paddle"};
    plain.trip.leaves = {leave};
    plain.trip.craft_choices = {offered("light", 2.0, 1), short_paddle()};
    const auto all = other_boats(plain.trip, plain.route, {});
    EXPECT_THAT(all.at(1).trip.leaves[0].things, testing::Contains("light (Ada)"));
    EXPECT_THAT(all.at(2).trip.leaves[0].things, testing::Contains("short paddle"));
    EXPECT_THAT(all.at(0).trip.leaves[0].things, ElementsAre("boat", "paddle"));
}

} // namespace
} // namespace tumpline::planner
