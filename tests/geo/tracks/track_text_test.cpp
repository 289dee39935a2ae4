#include "geo/tracks/track_text.h"

#include <gtest/gtest.h>

#include <chrono>

namespace tumpline::geo {
namespace {

TEST(Number, IsADecimalAndNothingElse) {
    EXPECT_EQ(to_number(" +12.50\n"), 12.5);
    EXPECT_EQ(to_number("-0.25"), -0.25);
    EXPECT_EQ(to_number("1e3"), 1000.0);
    for (const char* text :
         {"", " ", "+", "+-1", "--1", "1,5", "1.5 m", "0x10", "nan", "inf", "-inf", "1e999", "one"})
        EXPECT_FALSE(to_number(text)) << text;
}

Instant utc(int hour, int minute, int second) {
    using namespace std::chrono;
    return sys_days(year{1996} / 12 / 20) + hours(hour) + minutes(minute) + seconds(second);
}

/// The examples of RFC 3339, section 5.8, and of XML Schema Part 2, section 3.2.7.
TEST(Time, ReadsTheExamplesOfTheStandards) {
    using namespace std::chrono;
    EXPECT_EQ(to_instant("1996-12-19T16:39:57-08:00"), utc(0, 39, 57));
    EXPECT_EQ(to_instant("1985-04-12T23:20:50.52Z"),
              Instant(sys_days(year{1985} / 4 / 12) + 23h + 20min + 50s + 520ms));
    EXPECT_EQ(to_instant("1990-12-31T23:59:60Z"), Instant(sys_days(year{1991} / 1 / 1)));
    EXPECT_EQ(to_instant("1990-12-31T15:59:60-08:00"), Instant(sys_days(year{1991} / 1 / 1)));
    EXPECT_EQ(to_instant("1937-01-01T12:00:27.87+00:20"),
              Instant(sys_days(year{1937} / 1 / 1) + 11h + 40min + 27s + 870ms));
    EXPECT_EQ(to_instant("2002-10-10T12:00:00-05:00"), to_instant("2002-10-10T17:00:00Z"));
    EXPECT_EQ(to_instant("1999-12-31T24:00:00Z"), to_instant("2000-01-01T00:00:00Z"));
}

TEST(Time, WithoutAnOffsetIsUtc) {
    EXPECT_EQ(to_instant(" 1996-12-20T00:39:57 "), utc(0, 39, 57));
}

TEST(Time, IsNothingElse) {
    for (const char* text : {"",
                             "1996-12-20",
                             "1996-02-30T00:00:00Z",
                             "1996-12-20T25:00:00Z",
                             "1996-12-20T00:60:00Z",
                             "1996-12-20T00:00:61Z",
                             "1996-12-20T00:00:00.Z",
                             "1996-12-20T00:00:00+99:00",
                             "1996-12-20T00:00:00Zx",
                             "96-12-20T00:00:00Z",
                             "1996-12-20T00:00:00 Z",
                             "1996-12-2"})
        EXPECT_FALSE(to_instant(text)) << text;
}

} // namespace
} // namespace tumpline::geo
