#include "planner/solution/snow_by_day.h"

#include "planner/make_plan.h"
#include "tests/support/plain_trip.h"

#include <gtest/gtest.h>

namespace tumpline::planner {
namespace {

/// Two days' walk of 20 km each, with snow of 20 cm on the second.
test::PlainTrip snowy_second_day() {
    test::PlainTrip plain = test::plain_trip({test::walk(20'000.0), test::walk(20'000.0)});
    test::add_place(plain, PlaceKind::camp, "Bare camp", 20'000.0);
    plain.trip.days.nights = {"Bare camp"};
    plain.trip.forecast = {WeatherEntry{}};
    WeatherEntry snow;
    snow.says.snow_depth_m = 0.2;
    snow.days = {2};
    plain.trip.forecast.push_back(snow);
    return plain;
}

TEST(SnowByDay, CopiesNothingWhereSnowIsTheSameEveryDay) {
    test::PlainTrip plain = test::plain_trip({test::walk(1000.0)});
    plain.trip.weather.snow_depth_m = 0.2;
    const Prepared prepared = prepare(plain.trip, plain.route);
    SnowByDay snow(plain.route, prepared.stretches, prepared.assumed, nullptr);
    EXPECT_EQ(&snow.stretches(), &prepared.stretches);
    EXPECT_EQ(snow.shared(), nullptr);
}

TEST(SnowByDay, LaysItOnTheDaysThatItIsSaidOf) {
    const test::PlainTrip plain = snowy_second_day();
    const Plan plan = make_plan(plain.trip, plain.route);
    ASSERT_EQ(plan.legs.size(), 2U);
    EXPECT_FALSE(plan.legs[0].snow_m);
    EXPECT_EQ(plan.legs[1].snow_m, 0.2);
    // Both legs are level and of one length; the load hardly changes.
    EXPECT_NEAR(plan.legs[1].moving_s / plan.legs[0].moving_s, 2.2, 0.06);
    EXPECT_GT(plan.legs[1].loads[0].energy_j, 2.0 * plan.legs[0].loads[0].energy_j);
    test::PlainTrip other = snowy_second_day();
    other.trip.forecast.back().days = {1};
    const Plan turned = make_plan(other.trip, other.route);
    EXPECT_EQ(turned.legs[0].snow_m, 0.2);
    EXPECT_FALSE(turned.legs[1].snow_m);
}

TEST(SnowByDay, OfAPlanStaysThatOfItsDraws) {
    const test::PlainTrip plain = snowy_second_day();
    const Prepared prepared = prepare(plain.trip, plain.route);
    const Solved settled = settle_trip(prepared);
    ASSERT_NE(settled.on_snow, nullptr);
    const Solved draw = solve(prepared, {.nights = settled.nights, .packed = &settled});
    EXPECT_EQ(draw.on_snow, settled.on_snow);
}

} // namespace
} // namespace tumpline::planner
