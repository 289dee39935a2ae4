#include "planner/decisions/craft_compared.h"

#include "tests/support/plain_trip.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <string>
#include <vector>

namespace tumpline::planner {
namespace {

using testing::Contains;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::Not;

/// A boat for one, all of it known.
CraftChoice boat_of(const std::string& name, double mass_kg) {
    CraftChoice choice;
    choice.name = name;
    choice.mass_kg = mass_kg;
    choice.kind = CraftKind::packraft;
    choice.calm_speed_mps = 1.0;
    choice.river_class = 2;
    choice.payload_kg = 150.0;
    choice.price = 500.0;
    return choice;
}

/// 4 km on foot with the boat on the back, then 3 km down a river of class II; Ada's own boat has
/// neither class nor payload.
test::PlainTrip over_and_down(std::vector<CraftChoice> choices) {
    test::PlainTrip plain = test::plain_trip({test::walk(4000.0), test::river(3000.0, 0.001)});
    plain.route.legs[1].spec.river_class = 2;
    plain.trip.party[0].river_class = 3;
    plain.trip.kit = {test::thing("sack", 10.0)};
    plain.trip.craft_choices = std::move(choices);
    return plain;
}

CraftComparison compared(const test::PlainTrip& plain) {
    return compare_craft(plain.trip, plain.route, {});
}

/// Names of the choices in their order; "own" for the trip's boats.
std::vector<std::string> order(const CraftComparison& comparison) {
    std::vector<std::string> names;
    for (const CraftOption& option : comparison.options)
        names.push_back(option.boats.boats == Boats::own ? "own" : option.boats.name);
    return names;
}

TEST(CraftCompared, LighterPackDecidesAmongThoseThatServe) {
    const CraftComparison comparison =
        compared(over_and_down({boat_of("heavy", 4.0), boat_of("light", 2.0)}));
    EXPECT_THAT(order(comparison), ElementsAre("light", "heavy", "own"));
    EXPECT_EQ(comparison.decides, CraftRule::pack);
    EXPECT_TRUE(comparison.any());
    const CraftOption& light = comparison.options[0];
    const CraftOption& heavy = comparison.options[1];
    // 2 kg less on the back, over 4 km: 8 kg km; a little less food besides
    EXPECT_NEAR(heavy.figures.heaviest_kg - light.figures.heaviest_kg, 2.0, 0.1);
    EXPECT_NEAR(heavy.figures.carried_kg_km - light.figures.carried_kg_km, 8.0, 0.4);
    EXPECT_EQ(light.river_class.left, 0.0);
    EXPECT_THAT(comparison.for_runner_up, Not(Contains(CraftGain::pack)));
}

TEST(CraftCompared, WhatIsNotKnownIsNotCountedAsGood) {
    CraftChoice unknown = boat_of("feather", 1.0);
    unknown.payload_kg.reset();
    const CraftComparison comparison = compared(over_and_down({unknown, boat_of("heavy", 4.0)}));
    EXPECT_THAT(order(comparison), ElementsAre("heavy", "feather", "own"));
    EXPECT_EQ(comparison.decides, CraftRule::known);
    EXPECT_THAT(comparison.for_runner_up, Contains(CraftGain::pack));
    EXPECT_THAT(comparison.for_runner_up, Not(Contains(CraftGain::payload)));
}

TEST(CraftCompared, WhatCannotBeDoneIsLastWithItsFirstReason) {
    CraftChoice flat = boat_of("flat", 1.5);
    flat.river_class = 1;
    CraftChoice broad = boat_of("broad", 5.0);
    broad.seats = 2;
    const CraftComparison comparison = compared(over_and_down({flat, broad}));
    EXPECT_THAT(order(comparison), ElementsAre("own", "flat", "broad"));
    EXPECT_EQ(comparison.options[1].level(), VerdictLevel::cannot);
    EXPECT_EQ(comparison.options[1].river_class.left, -1.0);
    EXPECT_THAT(comparison.options[1].reason, HasSubstr("Class II is harder than flat (Ada)"));
    EXPECT_FALSE(comparison.options[2].plan);
    EXPECT_THAT(comparison.options[2].reason, HasSubstr("it has 2 seats"));
    EXPECT_FALSE(comparison.decides) << "no other can be done";
}

TEST(CraftCompared, WhatBreaksAWishComesAfterWhatKeepsIt) {
    test::PlainTrip plain = over_and_down({boat_of("light", 2.0), boat_of("heavy", 9.0)});
    plain.trip.craft[0].mass_kg = 9.5;
    plain.trip.party[0].carry_limit_kg = 18.0; // sack 10, food and water about 3, boat 2 or 9
    const CraftComparison comparison = compared(plain);
    EXPECT_THAT(order(comparison), ElementsAre("light", "heavy", "own"));
    EXPECT_EQ(comparison.options[0].level(), VerdictLevel::clear);
    EXPECT_EQ(comparison.options[1].level(), VerdictLevel::breaks);
    EXPECT_EQ(comparison.decides, CraftRule::verdict);
    EXPECT_FALSE(comparison.options[1].reason.empty());
}

TEST(CraftCompared, PriceDecidesBetweenTwinsAndAnUnknownOneIsTheDearer) {
    CraftChoice dear = boat_of("dear", 2.0);
    dear.price = 900.0;
    CraftChoice unpriced = boat_of("unpriced", 2.0);
    unpriced.price.reset();
    const CraftComparison comparison =
        compared(over_and_down({unpriced, dear, boat_of("cheap", 2.0)}));
    EXPECT_THAT(order(comparison), ElementsAre("cheap", "dear", "unpriced", "own"));
    EXPECT_EQ(comparison.decides, CraftRule::price);
    EXPECT_THAT(comparison.for_runner_up, ElementsAre());
}

TEST(CraftCompared, NothingTellsTwinsApartButTheFile) {
    const CraftComparison comparison =
        compared(over_and_down({boat_of("second", 2.0), boat_of("first", 2.0)}));
    EXPECT_THAT(order(comparison), ElementsAre("second", "first", "own"));
    EXPECT_EQ(comparison.decides, CraftRule::file);
}

TEST(CraftCompared, RunnerUpIsAheadInWhatDoesNotDecide) {
    CraftChoice strong = boat_of("strong", 4.0);
    strong.river_class = 4;
    strong.payload_kg = 190.0;
    strong.wind_ceiling_mps = 12.0;
    strong.price = 400.0;
    strong.calm_speed_mps = 1.6;
    CraftChoice light = boat_of("light", 2.0);
    light.wind_ceiling_mps = 8.0;
    const CraftComparison comparison = compared(over_and_down({strong, light}));
    EXPECT_THAT(order(comparison), ElementsAre("light", "strong", "own"));
    EXPECT_THAT(comparison.for_runner_up,
                ElementsAre(CraftGain::time,
                            CraftGain::river_class,
                            CraftGain::payload,
                            CraftGain::wind,
                            CraftGain::price));
}

TEST(CraftCompared, NoneServesWhereAllAreRefused) {
    CraftChoice flat = boat_of("flat", 1.5);
    flat.river_class = 1;
    test::PlainTrip plain = over_and_down({flat});
    plain.trip.craft[0].river_class = 1;
    EXPECT_FALSE(compared(plain).any());
}

TEST(CraftCompared, PlansTheTripsOwnBoatsAsTheyAre) {
    const test::PlainTrip plain = over_and_down({boat_of("light", 2.0)});
    test::PlainTrip alone = plain;
    alone.trip.craft_choices.clear();
    EXPECT_EQ(compared(plain).options[1].figures.under_way_s,
              compared(alone).options[0].figures.under_way_s);
}

TEST(CraftCompared, EveryRuleAndGainHasAWord) {
    for (int k = 0; k <= static_cast<int>(CraftRule::file); ++k)
        EXPECT_FALSE(name_of(static_cast<CraftRule>(k)).empty()) << k;
    for (int k = 0; k <= static_cast<int>(CraftGain::price); ++k)
        EXPECT_FALSE(name_of(static_cast<CraftGain>(k)).empty()) << k;
}

} // namespace
} // namespace tumpline::planner
