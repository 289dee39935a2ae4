#include "planner/defaults/kit_choice.h"

#include "tests/support/plain_trip.h"

#include <gtest/gtest.h>

#include <optional>

namespace tumpline::planner {
namespace {

Condition from_class(RiverClass river_class) {
    Condition condition;
    condition.river_class = river_class;
    return condition;
}

Condition below_c(std::optional<double> water_c, std::optional<double> night_c = {}) {
    Condition condition;
    condition.water_below_c = water_c;
    condition.night_below_c = night_c;
    return condition;
}

Condition in_rain() {
    Condition condition;
    condition.rain = true;
    return condition;
}

Weather weather(std::optional<double> water_c, std::optional<double> low_c = {}) {
    Weather weather;
    weather.water_c = water_c;
    weather.low_c = low_c;
    return weather;
}

/// 10 km on foot that climb 500 m, then a river of a class; one thing under a condition.
KitChoice
choice(const Condition& condition, RiverClass river_class = 2, const Weather& weather = Weather()) {
    test::PlainTrip plain = test::plain_trip({test::walk(10e3, 0.05), test::river(5000.0, 0.0)});
    plain.route.legs[1].spec.river_class = river_class;
    plain.trip.weather = weather;
    KitItem item = test::thing("thing", 0.4);
    item.count = 2;
    item.when = {condition};
    plain.trip.kit = {item};
    return choose_kit(plain.trip, plain.route, assume(plain.trip));
}

TEST(KitChoice, AClassBringsWhatIsForItAndHarder) {
    const KitChoice comes = choice(from_class(2));
    EXPECT_TRUE(comes.brought.at(0));
    EXPECT_EQ(comes.reasons.at(0).leg, LegNumber{2});
    const KitChoice stays = choice(from_class(3));
    EXPECT_FALSE(stays.brought.at(0));
    EXPECT_EQ(stays.reasons.at(0).why.metric, "the hardest water is class II, not III");
}

TEST(KitChoice, WhatIsNotKnownComes) {
    EXPECT_TRUE(choice(below_c(14.0)).brought.at(0));
    EXPECT_TRUE(choice(below_c(14.0), 2, weather(13.9)).brought.at(0));
    EXPECT_FALSE(choice(below_c(14.0), 2, weather(14.0)).brought.at(0));
    EXPECT_TRUE(choice(below_c({}, 0.0)).brought.at(0));
    EXPECT_FALSE(choice(below_c({}, 0.0), 2, weather({}, 1.0)).brought.at(0));
    EXPECT_TRUE(choice(in_rain()).brought.at(0));
    Weather dry;
    dry.rain = false;
    EXPECT_FALSE(choice(in_rain(), 2, dry).brought.at(0));
}

TEST(KitChoice, EveryKeyOfAConditionMustHold) {
    Condition both = from_class(2);
    both.water_below_c = 10.0;
    EXPECT_TRUE(choice(both, 2, weather(9.0)).brought.at(0));
    EXPECT_FALSE(choice(both, 1, weather(9.0)).brought.at(0));
    EXPECT_FALSE(choice(both, 2, weather(11.0)).brought.at(0));
}

/// 4 km uphill at one in ten, then a lake; the water has 9 C.
test::PlainTrip uphill_to_a_lake() {
    test::PlainTrip plain = test::plain_trip({test::walk(4000.0, 0.1), test::lake(1000.0)});
    plain.trip.weather.water_c = 9.0;
    return plain;
}

KitChoice chosen(const test::PlainTrip& plain) {
    return choose_kit(plain.trip, plain.route, assume(plain.trip));
}

TEST(KitChoice, GivesEachThingAReasonOfItsOwn) {
    test::PlainTrip plain = uphill_to_a_lake();
    plain.trip.kit = {
        test::thing("dry suit", 1.0), test::thing("dry suit", 1.0), test::thing("pot", 1.0)};
    Condition cold, colder;
    cold.water_below_c = 10.0;
    colder.water_below_c = 8.0;
    plain.trip.kit[0].when = {cold};
    plain.trip.kit[1].when = {colder};
    const KitChoice choice = chosen(plain);
    EXPECT_EQ(choice.brought, (std::vector<bool>{true, false, true}));
    EXPECT_EQ(choice.reasons[0].why.metric, "water at 9 C, below 10 C");
    EXPECT_EQ(choice.reasons[1].why.metric, "water at 9 C, not below 8 C");
    EXPECT_EQ(choice.reasons[2].why.metric, "");
}

TEST(KitChoice, AnyOfSeveralConditionsSufficesAndNoneIsToldWithAll) {
    test::PlainTrip plain = uphill_to_a_lake();
    plain.trip.kit = {test::thing("suit", 1.0), test::thing("straps", 1.0)};
    Condition cold, rapids, snow;
    cold.water_below_c = 10.0;
    rapids.river_class = 3;
    snow.snow = true;
    plain.trip.kit[0].when = {rapids, cold};
    plain.trip.kit[1].when = {rapids, snow};
    const KitChoice choice = chosen(plain);
    EXPECT_TRUE(choice.brought[0]);
    EXPECT_EQ(choice.reasons[0].why.metric, "water at 9 C, below 10 C");
    EXPECT_FALSE(choice.brought[1]);
    EXPECT_EQ(choice.reasons[1].why.metric,
              "no water of class III or harder is named; no snow is expected");
}

TEST(KitChoice, AnOverrideSaysAgainstWhatItWas) {
    test::PlainTrip plain = uphill_to_a_lake();
    plain.trip.kit = {
        test::thing("straps", 1.0), test::thing("pot", 1.0), test::thing("suit", 1.0)};
    Condition rapids, cold;
    rapids.river_class = 3;
    cold.water_below_c = 10.0;
    plain.trip.kit[0].when = {rapids};
    plain.trip.kit[0].bring = true;
    plain.trip.kit[1].bring = false;
    plain.trip.kit[2].when = {cold};
    plain.trip.kit[2].bring = true; // as its condition would have it
    const KitChoice choice = chosen(plain);
    EXPECT_EQ(choice.brought, (std::vector<bool>{true, false, true}));
    EXPECT_EQ(choice.reasons[0].why.metric,
              "brought by the trip file, although no water of class III or harder is named");
    EXPECT_TRUE(choice.reasons[0].overridden);
    EXPECT_EQ(choice.reasons[1].why.metric, "left by the trip file, although it always comes");
    EXPECT_TRUE(choice.reasons[1].overridden);
    EXPECT_FALSE(choice.reasons[2].overridden);
}

} // namespace
} // namespace tumpline::planner
