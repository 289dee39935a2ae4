#include "planner/decisions/nights_compared.h"

#include "tests/support/level_trip.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace tumpline::planner {
namespace {

using testing::ElementsAre;

/// 36 km at 1 m/s, 10 h; camps every 6 km.
test::RandomTrip six_camps() {
    test::RandomTrip made = test::level_trip({{.length_m = 36e3}},
                                             {{"A", PlaceKind::camp, 6e3},
                                              {"B", PlaceKind::camp, 12e3},
                                              {"C", PlaceKind::camp, 18e3},
                                              {"D", PlaceKind::camp, 24e3},
                                              {"E", PlaceKind::camp, 30e3}});
    made.trip.days.hours = 5.0;
    made.trip.days.hours_limit = 6.0;
    return made;
}

TEST(NightsCompared, TheEvenCutIsBest) {
    const test::RandomTrip made = six_camps();
    const NightsPlan plan = plan_nights(made.trip, made.route);
    // 18 km are 5 h: both days as long as wished. 12 and 24 km would be 3 h 20 min and 6 h 40 min.
    EXPECT_THAT(plan.best.nights, ElementsAre("C"));
    EXPECT_EQ(plan.places, 5U);
    EXPECT_TRUE(plan.camps);
    EXPECT_TRUE(plan.listed.empty());
    EXPECT_EQ(plan.best.broken, 0U);
    ASSERT_EQ(plan.best.days.size(), 2U);
    for (const NightsOption& other : plan.next)
        EXPECT_NE(other.nights, plan.best.nights);
}

TEST(NightsCompared, AreSearchedNoFurtherThanSomebodyWaits) {
    const test::RandomTrip made = six_camps();
    std::size_t last = 0;
    const auto whole = watched_nights(made.trip, made.route, [&](std::size_t weighed) {
        EXPECT_EQ(weighed, last + 1); // told of every day
        last = weighed;
        return true;
    });
    ASSERT_TRUE(whole.has_value());
    EXPECT_THAT(whole->best.nights, ElementsAre("C")); // as without a watch
    ASSERT_GT(last, 5U);
    for (const std::size_t most : {std::size_t{1}, last / 2, last}) {
        std::size_t told = 0;
        EXPECT_FALSE(watched_nights(made.trip, made.route, [&](std::size_t weighed) {
                         told = weighed;
                         return weighed < most;
                     }).has_value());
        EXPECT_EQ(told, most) << "not a day more is weighed";
    }
}

TEST(NightsCompared, WhatTheFileListsStandsBeside) {
    test::RandomTrip made = six_camps();
    made.trip.days.nights = {"A", "D"};
    const NightsPlan plan = plan_nights(made.trip, made.route);
    ASSERT_EQ(plan.listed.size(), 1U);
    EXPECT_THAT(plan.listed[0].nights, ElementsAre("A", "D"));
    EXPECT_EQ(plan.listed[0].plan.days.size(), 3U);
    EXPECT_EQ(plan.listed[0].broken, 0U); // 1 h 40 min, 5 h, 3 h 20 min
    EXPECT_THAT(plan.best.nights, ElementsAre("C"));
}

TEST(NightsCompared, AListedDayBeyondTheLimitIsBroken) {
    test::RandomTrip made = six_camps();
    made.trip.days.nights = {"D"}; // 24 km, 6 h 40 min, over the 6 h
    const NightsPlan plan = plan_nights(made.trip, made.route);
    ASSERT_EQ(plan.listed.size(), 1U);
    EXPECT_NE(plan.listed[0].broken, 0U);
}

} // namespace
} // namespace tumpline::planner
