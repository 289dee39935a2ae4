#include "planner/solution/winds.h"

#include "planner/make_plan.h"
#include "planner/models/paddling.h"
#include "tests/support/plain_trip.h"

#include <gtest/gtest.h>

namespace tumpline::planner {
namespace {

constexpr double hour_s = 3600.0;

/// Twelve kilometres of lake due north, set off at 12:00, calm; from 13:00 5 m/s from ahead.
test::PlainTrip lake_under_a_rising_wind() {
    test::PlainTrip plain = test::plain_trip({test::lake(12'000.0)});
    plain.trip.days.set_off = seconds{12 * 3600};
    plain.trip.days.rest_per_hour = seconds{0};
    plain.trip.changeovers.boots_to_boat = seconds{35 * 60};
    WeatherEntry all;
    all.says.wind_mps = 0.0;
    WeatherEntry later;
    later.hours = HoursOfDay{13.0 * hour_s, 23.0 * hour_s};
    later.says.wind_mps = 5.0;
    later.says.wind_from_deg = 0.0;
    plain.trip.forecast = {all, later};
    plain.trip.weather.wind_mps = 5.0;
    return plain;
}

double moving_s(const test::PlainTrip& plain) {
    return make_plan(plain.trip, plain.route).totals.moving_s;
}

TEST(Winds, EachPartOfACrossingHasTheWindOfItsHour) {
    test::PlainTrip plain = lake_under_a_rising_wind();
    const Plan plan = make_plan(plain.trip, plain.route);
    test::PlainTrip calm = plain;
    calm.trip.forecast.clear();
    calm.trip.weather.wind_mps = 0.0;
    test::PlainTrip windy = calm;
    windy.trip.weather.wind_mps = 5.0;
    windy.trip.weather.wind_from_deg = 0.0;
    const double calm_s = moving_s(calm);
    const double windy_s = moving_s(windy);
    ASSERT_GT(windy_s, 1.1 * calm_s);
    // Afloat from 12:35, 25 minutes go at the calm pace, the rest of the way at the windy one. The
    // food for the longer day weighs some grams more: a thousandth of the time.
    const double calm_part_s = 25.0 * 60.0;
    const double share = calm_part_s / calm_s;
    EXPECT_NEAR(plan.totals.moving_s, calm_part_s + (1.0 - share) * windy_s, 0.001 * windy_s);
    EXPECT_EQ(plan.legs.front().wind_mps, 5.0); // the strongest that it meets
}

TEST(Winds, AWindThatIsOverChangesNothing) {
    test::PlainTrip plain = lake_under_a_rising_wind();
    plain.trip.forecast[1].hours = HoursOfDay{1.0 * hour_s, 11.0 * hour_s};
    test::PlainTrip calm = plain;
    calm.trip.forecast.clear();
    calm.trip.weather.wind_mps = 0.0;
    EXPECT_NEAR(moving_s(plain), moving_s(calm), 0.5);
    EXPECT_EQ(make_plan(plain.trip, plain.route).legs.front().wind_mps, 0.0);
}

TEST(Winds, AListThatSaysTheSameThroughoutIsOneObject) {
    test::PlainTrip plain = lake_under_a_rising_wind();
    plain.trip.forecast[1].hours = {};
    test::PlainTrip one = plain;
    one.trip.forecast.clear();
    one.trip.weather.wind_from_deg = 0.0;
    EXPECT_NEAR(moving_s(plain), moving_s(one), 0.5);
}

TEST(Winds, NobodyGaveOneIsTold) {
    test::PlainTrip plain = lake_under_a_rising_wind();
    plain.trip.forecast.erase(plain.trip.forecast.begin());
    EXPECT_FALSE(make_plan(plain.trip, plain.route).legs.front().wind_known);
    EXPECT_TRUE(make_plan(lake_under_a_rising_wind().trip, plain.route).legs.front().wind_known);
}

TEST(MiddayHalt, WaitsOnHotDaysOnlyAndMovesNothingElse) {
    test::PlainTrip plain = test::plain_trip({test::walk(25'000.0)});
    plain.trip.weather.high_c = 34.0;
    const Plan mild = make_plan(plain.trip, plain.route);
    plain.trip.days.halt = MiddayHalt{12.0 * hour_s, 16.0 * hour_s, 35.0};
    EXPECT_EQ(make_plan(plain.trip, plain.route).days[0].arrive, mild.days[0].arrive);
    plain.trip.weather.high_c = 35.0;
    const Plan hot = make_plan(plain.trip, plain.route);
    plain.trip.days.halt = {};
    const Plan without = make_plan(plain.trip, plain.route);
    // Set off at 08:00, under way at 12:00: four hours later at the end, but for what the water
    // for these hours weighs.
    EXPECT_NEAR(test::in_seconds(hot.days[0].arrive - without.days[0].arrive), 4.0 * hour_s, 120.0);
    EXPECT_NEAR(hot.totals.moving_s, without.totals.moving_s, 120.0);
    EXPECT_NEAR(hot.totals.rest_s - without.totals.rest_s, 4.0 * hour_s, 1.0);
}

} // namespace
} // namespace tumpline::planner
