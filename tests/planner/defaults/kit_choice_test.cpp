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
    ASSERT_EQ(comes.comes.size(), 1U);
    EXPECT_EQ(comes.comes[0].leg, 2U);
    const KitChoice stays = choice(from_class(3));
    EXPECT_FALSE(stays.brought.at(0));
    ASSERT_EQ(stays.stays_home.size(), 1U);
    EXPECT_EQ(stays.stays_home[0].why, "the hardest water is class II, not III");
}

TEST(KitChoice, ThePriceIsMassTimesTheWayOnFoot) {
    // 0.8 kg over 10 km and 500 m up; the river carries for nothing.
    const KitChoice stays = choice(from_class(3));
    EXPECT_NEAR(stays.stays_home.at(0).mass_kg, 0.8, 1e-9);
    EXPECT_NEAR(stays.stays_home[0].saved_kg_km, 8.0, 1e-2);
    EXPECT_NEAR(stays.stays_home[0].saved_kg_m_up, 400.0, 1e-6);
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

TEST(KitChoice, AWordOfTheLeaderStandsOverTheConditions) {
    test::PlainTrip plain = test::plain_trip({test::walk(10e3)});
    KitItem item = test::thing("thing", 0.4);
    Condition snow;
    snow.snow = true;
    item.when = {snow};
    item.bring = true;
    plain.trip.kit = {item};
    const KitChoice choice = choose_kit(plain.trip, plain.route, assume(plain.trip));
    EXPECT_TRUE(choice.brought.at(0));
    ASSERT_EQ(choice.comes.size(), 1U);
    EXPECT_TRUE(choice.comes[0].override_recorded);
}

} // namespace
} // namespace tumpline::planner
