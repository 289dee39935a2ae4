#include "planner/cautions/safety_gear_cautions.h"

#include "planner/make_plan.h"
#include "tests/support/plain_trip.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <string>
#include <vector>

namespace tumpline::planner {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;

KitItem gear(SafetyGear is, const std::string& name) {
    KitItem item = test::thing(name, 0.5);
    item.is = is;
    item.afloat = ItemUse::worn;
    return item;
}

KitItem left(SafetyGear is, const std::string& name) {
    KitItem item = gear(is, name);
    item.bring = false;
    return item;
}

std::vector<Caution> found(const test::PlainTrip& plain, const std::string& code) {
    std::vector<Caution> all;
    for (const Caution& caution : make_plan(plain.trip, plain.route).cautions)
        if (caution.code == code)
            all.push_back(caution);
    return all;
}

std::string unlisted(const test::PlainTrip& plain) {
    for (const NotJudged& one : make_plan(plain.trip, plain.route).verdict.unknown)
        if (one.code == "safety-gear")
            return one.title;
    return {};
}

/// An hour on foot, a lake, and a river of class III.
test::PlainTrip to_the_rapids() {
    test::PlainTrip plain =
        test::plain_trip({test::walk(2000.0), test::lake(2000.0), test::river(2000.0, 0.001)});
    plain.route.legs[2].spec.river_class = 3;
    plain.trip.party[0].river_class = 3;
    return plain;
}

TEST(SafetyGear, LifeJacketLeftAtHomeBreaksAndNamesTheFirstLegAfloat) {
    test::PlainTrip plain = to_the_rapids();
    plain.trip.kit = {left(SafetyGear::life_jacket, "red vest")};
    const std::vector<Caution> cautions = found(plain, "left-at-home");
    ASSERT_EQ(cautions.size(), 1U);
    EXPECT_EQ(cautions[0].leg, LegNumber{2});
    EXPECT_EQ(cautions[0].day, 1);
    EXPECT_EQ(cautions[0].subject, "Ada's red vest");
    EXPECT_EQ(make_plan(plain.trip, plain.route).verdict.level, VerdictLevel::breaks);
    plain.trip.kit[0].bring = {};
    EXPECT_THAT(found(plain, "left-at-home"), IsEmpty());
}

TEST(SafetyGear, NothingIsGuessedFromAName) {
    test::PlainTrip plain = to_the_rapids();
    plain.trip.kit = {left(SafetyGear::life_jacket, "life jacket")};
    plain.trip.kit[0].is = {};
    EXPECT_THAT(found(plain, "left-at-home"), IsEmpty());
    EXPECT_THAT(unlisted(plain), HasSubstr("life jacket"));
}

TEST(SafetyGear, HelmetIsWantedFromClassThreeAndAThrowBagFromTwo) {
    test::PlainTrip plain = to_the_rapids();
    plain.trip.kit = {left(SafetyGear::helmet, "hat"), left(SafetyGear::throw_bag, "line")};
    ASSERT_EQ(found(plain, "left-at-home").size(), 2U);
    EXPECT_EQ(found(plain, "left-at-home")[0].leg, LegNumber{3});
    plain.route.legs[2].spec.river_class = 2;
    ASSERT_EQ(found(plain, "left-at-home").size(), 1U);
    EXPECT_THAT(found(plain, "left-at-home")[0].text, HasSubstr("Ada's line stays at home"));
    plain.route.legs[2].spec.river_class = 1;
    EXPECT_THAT(found(plain, "left-at-home"), IsEmpty());
}

TEST(SafetyGear, SuitFollowsTheWatersTemperature) {
    test::PlainTrip plain = to_the_rapids();
    plain.trip.kit = {left(SafetyGear::cold_suit, "suit")};
    const auto codes_at = [&](double water_c) {
        plain.trip.weather.water_c = water_c;
        return std::pair(found(plain, "left-at-home").size(),
                         found(plain, "cool-water-suit").size());
    };
    EXPECT_EQ(codes_at(9.9), std::pair(std::size_t{1}, std::size_t{0}));
    EXPECT_EQ(codes_at(10.0), std::pair(std::size_t{0}, std::size_t{1}));
    EXPECT_EQ(codes_at(14.9), std::pair(std::size_t{0}, std::size_t{1}));
    EXPECT_EQ(codes_at(15.0), std::pair(std::size_t{0}, std::size_t{0}));
}

TEST(SafetyGear, SuitLeftByItsConditionSaysWhyInBothSystems) {
    test::PlainTrip plain = to_the_rapids();
    plain.trip.weather.water_c = 9.0;
    KitItem suit = gear(SafetyGear::cold_suit, "suit");
    suit.when.resize(1);
    suit.when[0].water_below_c = 8.0;
    plain.trip.kit = {suit};
    const std::vector<Caution> cautions = found(plain, "left-at-home");
    ASSERT_EQ(cautions.size(), 1U);
    EXPECT_THAT(cautions[0].text, HasSubstr("(water at 9 C, not below 8 C)"));
    EXPECT_THAT(cautions[0].imperial, HasSubstr("48 F"));
}

TEST(SafetyGear, FirstAidAndLightAreWantedOnAnyTripShelterForANight) {
    test::PlainTrip plain = test::plain_trip({test::walk(2000.0)});
    plain.trip.kit = {left(SafetyGear::first_aid, "aid"),
                      left(SafetyGear::light, "lamp"),
                      left(SafetyGear::shelter, "tarp")};
    EXPECT_EQ(found(plain, "left-at-home").size(), 2U); // one day: no night out
    plain = test::plain_trip({test::walk(20000.0), test::walk(20000.0)});
    plain.trip.days.hours = 6.0;
    plain.trip.kit = {left(SafetyGear::shelter, "tarp")};
    EXPECT_EQ(found(plain, "left-at-home").size(), 1U);
}

TEST(SafetyGear, LifeJacketInABagIsNone) {
    test::PlainTrip plain = to_the_rapids();
    plain.trip.kit = {gear(SafetyGear::life_jacket, "vest")};
    EXPECT_THAT(found(plain, "jacket-stowed"), IsEmpty());
    plain.trip.kit[0].afloat = ItemUse::packed;
    EXPECT_EQ(found(plain, "jacket-stowed").size(), 1U);
}

TEST(SafetyGear, UnlistedGearIsNotKnownAndNamesWhoHasNone) {
    test::PlainTrip plain = test::plain_trip({test::lake(2000.0)});
    Member bo = plain.trip.party[0];
    bo.name = "Bo";
    plain.trip.party.push_back(bo);
    plain.trip.craft[0].crew = {"Ada", "Bo"};
    EXPECT_EQ(unlisted(plain),
              "whether there is safety gear (life jacket, first aid, light and spare paddle)");
    plain.trip.kit = {gear(SafetyGear::life_jacket, "vest"),
                      gear(SafetyGear::first_aid, "aid"),
                      gear(SafetyGear::light, "lamp"),
                      gear(SafetyGear::spare_paddle, "blade")};
    EXPECT_EQ(unlisted(plain), "whether there is safety gear (life jacket of Bo)");
    plain.trip.kit[0].owner.clear();
    plain.trip.kit[0].count = 2;
    EXPECT_EQ(unlisted(plain), "");
}

} // namespace
} // namespace tumpline::planner
