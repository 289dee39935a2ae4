/// When it is dark, and what that does to a walk.

#include "planner/journey/darkness.h"

#include "planner/make_plan.h"
#include "tests/support/level_trip.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <string>

namespace tumpline::planner {
namespace {

constexpr double dark_hour_s = 3600.0;
constexpr Darkness usual{
    .dawn_s = 5.0 * dark_hour_s, .dusk_s = 20.0 * dark_hour_s, .next_dawn_s = 29.0 * dark_hour_s};

Walk walk_from(double start_h, double by_day_h) {
    return {.start_s = start_h * dark_hour_s,
            .by_day_s = by_day_h * dark_hour_s,
            .moved_before_s = 0.0,
            .rest_per_hour_s = 0.0,
            .dark_factor = 1.25};
}

TEST(Darkness, ByDayChangesNothing) {
    const Walked day = walked(walk_from(8.0, 7.3), usual);
    EXPECT_EQ(day.moving_s, 7.3 * dark_hour_s);
    EXPECT_EQ(day.dark_s, 0.0);
}

TEST(Darkness, WhatIsLeftAtDuskTakesTheTimeOfTheNight) {
    // From 18:00, four hours by day: two of them before dusk at 20:00, two at 1.25.
    const Walked late = walked(walk_from(18.0, 4.0), usual);
    EXPECT_NEAR(late.dark_s, 2.5 * dark_hour_s, 1e-6);
    EXPECT_NEAR(late.moving_s, 4.5 * dark_hour_s, 1e-6);
}

TEST(Darkness, AnHourBeforeDawnCoversLess) {
    // From 04:00 at 1.5625: the hour to dawn covers 0.64 of an hour by day, 2.36 are left.
    Walk early = walk_from(4.0, 3.0);
    early.dark_factor = 1.5625;
    const Walked out = walked(early, usual);
    EXPECT_NEAR(out.dark_s, 1.0 * dark_hour_s, 1e-6);
    EXPECT_NEAR(out.moving_s, 3.36 * dark_hour_s, 1e-6);
}

TEST(Darkness, EndsWithTheNextDawn) {
    // From 04:00 of the next day, counted on.
    EXPECT_NEAR(walked(walk_from(28.0, 3.0), usual).dark_s, 1.0 * dark_hour_s, 1e-6);
}

TEST(Darkness, RestsBringDuskNearer) {
    // From 18:00 with ten minutes after each hour: 3600 s, a rest to 19:10, 3000 s to dusk; 4200 s
    // are left. At 1.25 the next 600 s in the dark (480 by day) fill the second hour; 3720 are left
    // and take 4650. In the dark: 5250; in all 6600 + 5250.
    Walk resting = walk_from(18.0, 3.0);
    resting.rest_per_hour_s = 600.0;
    const Walked late = walked(resting, usual);
    EXPECT_NEAR(late.dark_s, 5250.0, 1e-6);
    EXPECT_NEAR(late.moving_s, 11850.0, 1e-6);
}

TEST(Darkness, HoldsAllDayInThePolarNight) {
    Assumed assumed{};
    assumed.start = std::chrono::year{2027} / std::chrono::December / 20;
    assumed.time_zone = "UTC";
    assumed.times.set_off_s = assumed.times.first_set_off_s = 8.0 * dark_hour_s;
    const geo::Position far_north{.lat_deg = 80.0, .lon_deg = 15.0};
    const Darkness night = darkness_on(assumed, 2, far_north);
    EXPECT_TRUE(night.all_day());
    EXPECT_NEAR(walked(walk_from(9.0, 4.0), night).moving_s, 5.0 * dark_hour_s, 1e-6);
    assumed.start = std::chrono::year{2027} / std::chrono::June / 20;
    const Darkness summer = darkness_on(assumed, 2, far_north);
    EXPECT_FALSE(summer.at(0.0));
    EXPECT_FALSE(summer.at(23.0 * dark_hour_s));
    EXPECT_EQ(summer.next_change_s(10.0 * dark_hour_s), HUGE_VAL);
}

TEST(Darkness, DuskAfterMidnightIsThatOfTheEveningBefore) {
    Assumed assumed{};
    assumed.start = std::chrono::year{2027} / std::chrono::June / 7;
    assumed.time_zone = "UTC";
    assumed.times.set_off_s = assumed.times.first_set_off_s = 12.0 * dark_hour_s;
    const Darkness west = darkness_on(assumed, 1, {.lat_deg = 45.0, .lon_deg = -75.0});
    // Dusk of 7 June is at about 01:20 UTC on the 8th; light from about 08:30 until then.
    EXPECT_GT(west.dusk_s, 25.0 * dark_hour_s);
    EXPECT_LT(west.dusk_s, 26.0 * dark_hour_s);
    EXPECT_FALSE(west.at(23.5 * dark_hour_s));
    EXPECT_TRUE(west.at(27.0 * dark_hour_s));
}

double seconds_to(geo::sys_seconds from, geo::sys_seconds to) {
    return static_cast<double>((to - from).count());
}

TEST(Darkness, OfAPlanIsToldByItsClock) {
    // 60 km at 1 m/s from 06:00: 16 h 40 min by day, dusk in between.
    const test::RandomTrip made = test::level_trip({{.length_m = 60e3}}, {});
    const Plan plan = make_plan(made.trip, made.route);
    const PlanDay& day = plan.days.at(0);
    const double light_s = seconds_to(day.set_off, day.light.twilight.set.value());
    ASSERT_LT(light_s, 60e3);
    const double dark_s = (60e3 - light_s) * 1.25; // on a path
    EXPECT_NEAR(plan.legs[0].dark_s, dark_s, 0.5);
    EXPECT_NEAR(plan.legs[0].moving_s, light_s + dark_s, 0.5);
    EXPECT_NEAR(seconds_to(day.set_off, day.arrive), light_s + dark_s, 1.0);
}

TEST(Darkness, IsNotCountedTwiceWhereTheLegSaysNight) {
    test::RandomTrip made = test::level_trip({{.length_m = 60e3}}, {});
    made.route.legs[0].spec.night = true;
    EXPECT_NEAR(make_plan(made.trip, made.route).legs[0].moving_s, 60e3 * 1.25, 1e-6);
}

std::ptrdiff_t times_said(const Plan& plan, const std::string& code) {
    return std::count_if(plan.cautions.begin(), plan.cautions.end(), [&](const Caution& one) {
        return one.code == code;
    });
}

TEST(Darkness, OnTheWaterIsACautionOfItsOwn) {
    using test::LevelLeg;
    // 70 km at 1.2 m/s are 16 h 12 min from 06:00.
    const test::RandomTrip lake =
        test::level_trip({LevelLeg{.travel = Travel::paddle, .length_m = 70e3}}, {});
    EXPECT_EQ(times_said(make_plan(lake.trip, lake.route), "after-dusk-afloat"), 1);
    const test::RandomTrip by_day =
        test::level_trip({LevelLeg{.travel = Travel::paddle, .length_m = 40e3}}, {});
    EXPECT_EQ(times_said(make_plan(by_day.trip, by_day.route), "after-dusk-afloat"), 0);
    test::RandomTrip river = test::level_trip(
        {LevelLeg{.travel = Travel::paddle, .length_m = 100e3, .current_mps = 0.5}}, {});
    river.route.legs[0].spec.river_class = 1;
    EXPECT_EQ(times_said(make_plan(river.trip, river.route), "after-dusk-afloat"), 0);
    river.route.legs[0].spec.river_class = 2;
    EXPECT_EQ(times_said(make_plan(river.trip, river.route), "after-dusk-afloat"), 1);
}

} // namespace
} // namespace tumpline::planner
