#include "planner/defaults/uncertainty_defaults.h"

#include <gtest/gtest.h>

#include <set>
#include <string_view>

namespace tumpline::planner {
namespace {

TEST(UncertaintyDefaults, AreFilledAndListed) {
    const AssumedSpread spread = assume_spread({});
    EXPECT_EQ(spread.defaults.size(), 7U);
    EXPECT_EQ(spread.of(Assumption::pace_on_foot), 0.12);
    EXPECT_EQ(spread.of(Assumption::pace_afloat), 0.12);
    EXPECT_EQ(spread.of(Assumption::day_form), 0.05);
    EXPECT_EQ(spread.of(Assumption::wind), 0.5);
    EXPECT_EQ(spread.of(Assumption::current), 0.25);
    EXPECT_EQ(spread.of(Assumption::changeovers), 0.25);
    EXPECT_EQ(spread.of(Assumption::drinking), 0.2);
    EXPECT_EQ(spread.of(Assumption::eating), 0.1);
}

TEST(UncertaintyDefaults, WhatIsGivenStandsInItsOwnPlace) {
    Spread given;
    given.pace = 0.01;
    given.day_form = 0.02;
    given.wind = 0.03;
    given.current = 0.04;
    given.changeovers = 0.05;
    given.drinking = 0.06;
    given.eating = 0.07;
    const AssumedSpread spread = assume_spread(given);
    EXPECT_TRUE(spread.defaults.empty());
    const double wanted[] = {0.01, 0.01, 0.02, 0.03, 0.04, 0.05, 0.06, 0.07};
    for (std::size_t i = 0; i < all_assumptions.size(); ++i)
        EXPECT_EQ(spread.of(all_assumptions[i]), wanted[i]) << name_of(all_assumptions[i]);
    given.eating.reset();
    ASSERT_EQ(assume_spread(given).defaults.size(), 1U);
    EXPECT_EQ(assume_spread(given).defaults[0].key, "/spread/eating");
    EXPECT_EQ(assume_spread(given).defaults[0].value, "0.1");
}

/// A pace that nobody learned spreads as people do: ln 1.44 = 0.3646 and ln 0.82 = -0.1985 on foot,
/// ln 1.25 = 0.2231 and ln 0.85 = -0.1625 afloat.
TEST(UncertaintyDefaults, OfAPaceNotKnownAreThoseBetweenPeople) {
    const AssumedSpread spread = assume_spread({}, {.on_foot = false, .afloat = false});
    EXPECT_NEAR(spread.on_foot.slower, 0.3646, 1e-4);
    EXPECT_NEAR(spread.on_foot.faster, 0.1985, 1e-4);
    EXPECT_NEAR(spread.afloat.slower, 0.2231, 1e-4);
    EXPECT_NEAR(spread.afloat.faster, 0.1625, 1e-4);
    const AssumedSpread boats = assume_spread({}, {.on_foot = false, .afloat = true});
    EXPECT_EQ(boats.afloat.slower, 0.12);
    Spread given;
    given.pace = 0.05;
    EXPECT_EQ(assume_spread(given, {.on_foot = false, .afloat = false}).on_foot.slower, 0.05);
}

TEST(UncertaintyDefaults, NamesDiffer) {
    std::set<std::string_view> names;
    for (const Assumption one : all_assumptions)
        names.insert(name_of(one));
    EXPECT_EQ(names.size(), all_assumptions.size());
}

} // namespace
} // namespace tumpline::planner
