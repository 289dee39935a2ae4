#include "planner/conditions/calendar.h"

#include <gtest/gtest.h>

#include <chrono>

namespace tumpline::planner {
namespace {

using namespace std::chrono_literals;
using std::chrono::sys_days;

constexpr TripDays over_the_change{.start = 2027y / 3 / 27,
                                   .time_zone = "Europe/Oslo",
                                   .first_set_off_s = 9.0 * 3600.0,
                                   .set_off_s = 1.0 * 3600.0};

TEST(Calendar, CountsDaysFromTheFirst) {
    EXPECT_EQ(date_of(2027y / 2 / 27, 1), 2027y / 2 / 27);
    EXPECT_EQ(date_of(2027y / 2 / 27, 3), 2027y / 3 / 1);
    EXPECT_EQ(date_of(2028y / 2 / 27, 3), 2028y / 2 / 29);
}

TEST(Calendar, TheFirstDayHasItsOwnHourOfSettingOff) {
    // 27 March, 09:00 of UTC+1; two hours on by the clock: 11:00, 10:00 UTC.
    EXPECT_EQ(instant(over_the_change, {1, 11.0 * 3600.0}), sys_days{2027y / 3 / 27} + 10h);
}

TEST(Calendar, AChangeOfTheClocksWithinTheDayMovesNothing) {
    // 28 March: from 02:00 to 03:00. Set off at 01:00 of UTC+1, 00:00 UTC; what is five hours after
    // midnight by the plan is four hours later, 04:00 UTC, though clocks then show 06:00.
    EXPECT_EQ(instant(over_the_change, {2, 5.0 * 3600.0}), sys_days{2027y / 3 / 28} + 4h);
}

TEST(Calendar, ADuskJustAfterMidnightIsThatOfTheEveningBefore) {
    geo::Daylight light;
    light.twilight.rise = sys_days{2027y / 6 / 1} + 3h;
    light.twilight.set = sys_days{2027y / 6 / 1} + 21h;
    EXPECT_EQ(evening_dusk(light), light.twilight.set);
    light.twilight.set = sys_days{2027y / 6 / 1} + 20min;
    EXPECT_FALSE(evening_dusk(light));
    light.twilight = {};
    EXPECT_FALSE(evening_dusk(light));
}

TEST(Calendar, APlaceIsClosedOnItsDatesAndWeekdays) {
    TripPlace hut;
    hut.closed = {2027y / 6 / 18};
    hut.closed_weekdays = {7}; // Sundays
    EXPECT_TRUE(is_closed(hut, 2027y / 6 / 18));
    EXPECT_FALSE(is_closed(hut, 2027y / 6 / 19)); // a Saturday
    EXPECT_TRUE(is_closed(hut, 2027y / 6 / 20));
}

} // namespace
} // namespace tumpline::planner
