#include "geo/light/time_zone.h"

#include <gtest/gtest.h>

#include <chrono>
#include <stdexcept>

namespace tumpline::geo {
namespace {

using std::chrono::hours;
using std::chrono::minutes;
using std::chrono::seconds;

local_seconds local(std::chrono::year_month_day date, minutes time) {
    return local_seconds(std::chrono::local_days(date)) + time;
}

sys_seconds utc(std::chrono::year_month_day date, minutes time) {
    return sys_seconds(std::chrono::sys_days(date)) + time;
}

constexpr auto y2027 = std::chrono::year(2027);

TEST(TimeZone, KnowsTheNamesOfTheDatabase) {
    EXPECT_TRUE(is_time_zone("Europe/Oslo"));
    EXPECT_TRUE(is_time_zone("America/Argentina/Ushuaia"));
    EXPECT_TRUE(is_time_zone("UTC"));
    EXPECT_TRUE(has_time_zone_database());
    EXPECT_TRUE(is_time_zone("Etc/UTC"));
    EXPECT_FALSE(is_time_zone(""));
    EXPECT_FALSE(is_time_zone("Europe/Olso"));
    EXPECT_FALSE(is_time_zone("Europe"));
    EXPECT_FALSE(is_time_zone("../zoneinfo/Europe/Oslo"));
    EXPECT_FALSE(is_time_zone("tzdata.zi"));
    EXPECT_FALSE(is_time_zone("zone.tab"));
}

TEST(TimeZone, OffersTheNearestNameForAMisspeltOne) {
    EXPECT_EQ(nearest_time_zone("Europe/Olso"), "Europe/Oslo");
    EXPECT_EQ(nearest_time_zone("europe/oslo"), "Europe/Oslo");
    EXPECT_EQ(nearest_time_zone("Oslo"), "Europe/Oslo");
    EXPECT_EQ(nearest_time_zone("Amercia/Winnipeg"), "America/Winnipeg");
    EXPECT_EQ(nearest_time_zone("utc"), "UTC");
    EXPECT_EQ(nearest_time_zone("a lake without a name"), "");
    EXPECT_EQ(nearest_time_zone(std::string(100'000, 'x')), "");
    EXPECT_EQ(nearest_time_zone(""), "");
}

// Offsets and dates of change: Directive 2000/84/EC, articles 2 and 3 (one o'clock UTC in the
// morning of the last Sundays of March and October); 28 March and 31 October in 2027.
TEST(TimeZone, FollowsEuropeanSummerTime) {
    EXPECT_EQ(to_instant(local(y2027 / 6 / 18, hours(8)), "Europe/Oslo"),
              utc(y2027 / 6 / 18, hours(6)));
    EXPECT_EQ(to_instant(local(y2027 / 1 / 18, hours(8)), "Europe/Oslo"),
              utc(y2027 / 1 / 18, hours(7)));
    EXPECT_EQ(to_local(utc(y2027 / 3 / 28, minutes(59)), "Europe/Oslo"),
              local(y2027 / 3 / 28, hours(1) + minutes(59)));
    EXPECT_EQ(to_local(utc(y2027 / 3 / 28, minutes(60)), "Europe/Oslo"),
              local(y2027 / 3 / 28, hours(3)));
}

TEST(TimeZone, TakesATimeThatDoesNotExistAsTheMomentOfTheChange) {
    EXPECT_EQ(to_instant(local(y2027 / 3 / 28, hours(2) + minutes(30)), "Europe/Oslo"),
              utc(y2027 / 3 / 28, hours(1)));
}

TEST(TimeZone, TakesATimeThatExistsTwiceAsTheEarlier) {
    EXPECT_EQ(to_instant(local(y2027 / 10 / 31, hours(2) + minutes(30)), "Europe/Oslo"),
              utc(y2027 / 10 / 31, minutes(30)));
}

TEST(TimeZone, WritesRfc3339WithTheOffsetOfTheInstant) {
    EXPECT_EQ(rfc3339(utc(y2027 / 6 / 18, hours(6)), "Europe/Oslo"), "2027-06-18T08:00:00+02:00");
    EXPECT_EQ(rfc3339(utc(y2027 / 10 / 31, minutes(30)), "Europe/Oslo"),
              "2027-10-31T02:30:00+02:00");
    EXPECT_EQ(rfc3339(utc(y2027 / 10 / 31, minutes(90)), "Europe/Oslo"),
              "2027-10-31T02:30:00+01:00");
    EXPECT_EQ(rfc3339(utc(y2027 / 6 / 18, hours(6)), "UTC"), "2027-06-18T06:00:00+00:00");
    // RFC 3339, section 5.8: the same instant in two notations.
    EXPECT_EQ(rfc3339(utc(std::chrono::year(1996) / 12 / 20, minutes(39)) + seconds(57),
                      "America/Los_Angeles"),
              "1996-12-19T16:39:57-08:00");
    EXPECT_EQ(rfc3339(utc(y2027 / 1 / 1, hours(12)), "America/St_Johns"),
              "2027-01-01T08:30:00-03:30");
}

TEST(TimeZone, KeepsSummerTimeBeyondTheEndOfTheDatabase) {
    for (int year = 2027; year <= 2090; ++year) {
        const auto june = std::chrono::year(year) / 6 / 18;
        EXPECT_EQ(to_instant(local(june, hours(8)), "Europe/Oslo"), utc(june, hours(6))) << year;
        EXPECT_EQ(to_local(utc(june, hours(6)), "Europe/Oslo"), local(june, hours(8))) << year;
        const auto january = std::chrono::year(year) / 1 / 18;
        EXPECT_EQ(to_instant(local(january, hours(8)), "Europe/Oslo"), utc(january, hours(7)))
            << year;
    }
}

// The last Sundays of March and October 2040 are the 25th and the 28th: 1 January is a Sunday.
TEST(TimeZone, ChangesOnTheLastSundayBeyondTheEndOfTheDatabase) {
    const std::chrono::year y2040(2040);
    EXPECT_EQ(rfc3339(utc(y2040 / 3 / 24, hours(12)), "Europe/Oslo"), "2040-03-24T13:00:00+01:00");
    EXPECT_EQ(rfc3339(utc(y2040 / 3 / 25, hours(12)), "Europe/Oslo"), "2040-03-25T14:00:00+02:00");
    EXPECT_EQ(rfc3339(utc(y2040 / 10 / 27, hours(12)), "Europe/Oslo"), "2040-10-27T14:00:00+02:00");
    EXPECT_EQ(rfc3339(utc(y2040 / 10 / 28, hours(12)), "Europe/Oslo"), "2040-10-28T13:00:00+01:00");
}

TEST(TimeZone, ThereAndBackIsTheSameInstant) {
    for (int hour = 0; hour < 24 * 365; ++hour) {
        const sys_seconds instant = utc(y2027 / 1 / 1, hours(hour));
        const sys_seconds back =
            to_instant(to_local(instant, "America/Winnipeg"), "America/Winnipeg");
        const bool second_time = instant - back == hours(1); // the hour that exists twice
        EXPECT_TRUE(back == instant || second_time) << rfc3339(instant, "UTC");
    }
}

TEST(TimeZone, RefusesAnUnknownZone) {
    EXPECT_THROW((void)to_instant(local(y2027 / 6 / 18, hours(8)), "Mars/Olympus"),
                 std::invalid_argument);
    EXPECT_THROW((void)to_local(utc(y2027 / 6 / 18, hours(8)), ""), std::invalid_argument);
    EXPECT_THROW((void)rfc3339(utc(y2027 / 6 / 18, hours(8)), "Mars/Olympus"),
                 std::invalid_argument);
}

} // namespace
} // namespace tumpline::geo
