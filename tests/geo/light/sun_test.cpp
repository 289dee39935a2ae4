#include "geo/light/sun.h"

#include "geo/light/solar_position.h"
#include "tests/support/published_value.h"

#include <fmt/format.h>
#include <gtest/gtest.h>

#include <charconv>
#include <chrono>
#include <cmath>
#include <limits>
#include <map>
#include <optional>
#include <set>
#include <stdexcept>
#include <string>
#include <string_view>

namespace tumpline::geo {
namespace {

using std::chrono::days;
using std::chrono::year_month_day;
using test::PublishedValue;

int number(std::string_view text, std::size_t first, std::size_t count) {
    int value = 0;
    std::from_chars(text.data() + first, text.data() + first + count, value);
    return value;
}

year_month_day date_of(std::string_view text) { // "2003-10-17..."
    return std::chrono::year(number(text, 0, 4)) /
           std::chrono::month(static_cast<unsigned>(number(text, 5, 2))) /
           std::chrono::day(static_cast<unsigned>(number(text, 8, 2)));
}

sys_seconds instant_of(std::string_view text) { // "2003-10-17T19:30:30Z"
    return sys_seconds(std::chrono::sys_days(date_of(text))) +
           std::chrono::seconds(3600 * number(text, 11, 2) + 60 * number(text, 14, 2) +
                                number(text, 17, 2));
}

/// The zone of a whole-hour offset east of Greenwich; its name counts westwards.
std::string zone_at(double offset_h) {
    return offset_h == 0.0 ? std::string("UTC")
                           : fmt::format("Etc/GMT{:+d}", -static_cast<int>(std::lround(offset_h)));
}

Position place_of(const PublishedValue& row) {
    return {.lat_deg = row.input("lat_deg"), .lon_deg = row.input("lon_deg")};
}

// Rows of the sources that this program does not compute, and why.
const std::map<std::string, std::string>& exceptions() {
    static const std::map<std::string, std::string> reasons{
        {"heliocentric_longitude", "of the full theory (VSOP87), which is not used here"},
        {"heliocentric_latitude", "of the full theory; the short one takes it as zero"},
        {"nutation_in_longitude", "the short theory has one term of nutation, not separated"},
        {"nutation_in_obliquity", "the short theory has one term of nutation, not separated"},
        {"refraction_by_weather", "no weather: times use the usual 34 arc minutes"},
        {"refraction", "times use the usual 34 arc minutes at the horizon"},
        {"apparent_altitude", "times use the usual 34 arc minutes at the horizon"},
        {"sidereal_time", "hour angles come from the equation of time"},
        {"transit_of_venus_estimate", "a planet"},
        {"transit_of_venus", "a planet"},
        {"rise_of_venus", "a planet"},
        {"set_of_venus", "a planet"},
        {"almanac_day", "a step of another algorithm"},
        {"almanac_time", "a step of another algorithm"},
        {"almanac_anomaly", "a step of another algorithm"},
    };
    return reasons;
}

/// What the row asks for as this program computes it; empty for other kinds of rows.
std::optional<double> computed(const PublishedValue& row) {
    double centuries = 0.0;
    std::optional<SunPlace> seen;
    if (const auto jde = row.input_if("jde_d")) {
        centuries = (*jde - 2451545.0) / 36525.0;
    } else if (row.texts.count("utc_time") != 0) {
        const sys_seconds instant = instant_of(row.text("utc_time"));
        centuries = julian_centuries(static_cast<double>(instant.time_since_epoch().count()));
        seen = sun_place(instant, place_of(row));
    } else if (row.texts.count("calendar") != 0) { // 4.81 October is 4 October 19:26:24
        const sys_seconds instant = instant_of("1957-10-04T19:26:24Z");
        centuries = julian_centuries(static_cast<double>(instant.time_since_epoch().count()));
    } else if (row.formula == "altitude_at_hour_angle") {
        return horizontal({.lat_deg = row.input("lat_deg"),
                           .declination_deg = row.input("dec_deg"),
                           .hour_angle_deg = row.input("hour_angle_deg")})
            .altitude_deg;
    } else {
        return std::nullopt;
    }
    const SolarPosition sun = solar_position(centuries);
    const auto hour_angle_deg = [&] {
        const std::string& time = row.text("utc_time");
        const double minutes =
            60.0 * number(time, 11, 2) + number(time, 14, 2) + number(time, 17, 2) / 60.0;
        return (minutes + sun.equation_of_time_min + 4.0 * row.input("lon_deg")) / 4.0 - 180.0;
    };
    const std::string& what = row.formula;
    if (what == "julian_day")
        return 2451545.0 + 36525.0 * centuries;
    if (what == "julian_century")
        return centuries;
    if (what == "mean_longitude")
        return sun.mean_longitude_deg;
    if (what == "mean_anomaly")
        return sun.mean_anomaly_deg;
    if (what == "mean_anomaly_reduced")
        return std::fmod(std::fmod(sun.mean_anomaly_deg, 360.0) + 360.0, 360.0);
    if (what == "eccentricity")
        return sun.eccentricity;
    if (what == "equation_of_centre")
        return sun.centre_deg;
    if (what == "radius")
        return sun.radius_au;
    if (what == "apparent_longitude")
        return sun.apparent_longitude_deg;
    if (what == "mean_obliquity")
        return sun.mean_obliquity_deg;
    if (what == "obliquity")
        return sun.obliquity_deg;
    if (what == "right_ascension")
        return sun.right_ascension_deg;
    if (what == "declination")
        return sun.declination_deg;
    if (what == "equation_of_time")
        return sun.equation_of_time_min;
    if (what == "hour_angle")
        return hour_angle_deg();
    if (what == "altitude")
        return seen->altitude_deg;
    if (what == "zenith") // printed with 0.016 degrees of refraction, within the row's tolerance
        return 90.0 - seen->altitude_deg;
    if (what == "azimuth")
        return seen->azimuth_deg;
    return std::nullopt;
}

SunCrossings crossings_of(const PublishedValue& row, days later = days(0)) {
    const std::string zone = zone_at(row.input("day_utc_offset_h"));
    const year_month_day date(std::chrono::sys_days(date_of(row.text("date"))) + later);
    return sun_crossings(
        {.date = date, .zone = zone}, place_of(row), row.input("sun_altitude_deg"));
}

/// The row's event in its own unit after its own midnight. Guards are dated by the sun, which may
/// differ from the zone's date by one: of three days the nearest event counts.
std::optional<double> event(const PublishedValue& row) {
    const std::map<std::string, double> unit_s{{"h", 3600.0}, {"min", 60.0}, {"s", 1.0}};
    const auto midnight =
        sys_seconds(std::chrono::sys_days(date_of(row.text("date")))) -
        std::chrono::seconds(std::lround(3600.0 * row.input("printed_utc_offset_h")));
    std::optional<double> nearest;
    for (int later = row.published ? 0 : -1; later <= (row.published ? 0 : 1); ++later) {
        const SunCrossings found = crossings_of(row, days(later));
        const auto& instant = row.formula == "rise" ? found.rise : found.set;
        if (!instant)
            continue;
        const double time =
            static_cast<double>((*instant - midnight).count()) / unit_s.at(row.unit);
        if (!nearest || std::abs(time - row.expected) < std::abs(*nearest - row.expected))
            nearest = time;
    }
    return nearest;
}

class PublishedSun : public testing::TestWithParam<PublishedValue> {};

TEST_P(PublishedSun, AgreesWithPrintedFigures) {
    const PublishedValue& row = GetParam();
    const auto exception = exceptions().find(row.formula);
    if (exception != exceptions().end()) {
        EXPECT_FALSE(computed(row)) << "no exception any more";
        return;
    }
    if (row.formula == "day_without_crossing") {
        EXPECT_EQ(crossings_of(row).day,
                  row.expected_text == "always_above" ? SunDay::always_above
                                                      : SunDay::always_below);
        return;
    }
    const std::optional<double> found =
        row.formula == "rise" || row.formula == "set" ? event(row) : computed(row);
    ASSERT_TRUE(found);
    EXPECT_NEAR(*found, row.expected, row.tolerance);
}

INSTANTIATE_TEST_SUITE_P(Sun,
                         PublishedSun,
                         testing::ValuesIn(test::published("sun")),
                         test::row_name);

TEST(Sun, ThePrintedRowsAreAllThere) {
    std::size_t printed = 0;
    for (const PublishedValue& row : test::published("sun"))
        printed += row.published ? 1 : 0;
    EXPECT_EQ(printed, 176U);
}

constexpr auto y2019 = std::chrono::year(2019);
constexpr Position far_north{.lat_deg = 80.0, .lon_deg = 0.0};

// US Naval Observatory, table of 2019 for 80 N 0 E: 13 April has a sunrise at 00:57 and no sunset,
// 30 August a sunset at 23:01 and no sunrise.
TEST(Sun, ADayMayHaveOneEventOnly) {
    const SunCrossings april = daylight(y2019 / 4 / 13, far_north, "UTC").sun;
    EXPECT_EQ(april.day, SunDay::rises_only);
    ASSERT_TRUE(april.rise);
    EXPECT_NEAR(static_cast<double>((*april.rise - instant_of("2019-04-13T00:57:00Z")).count()),
                0.0,
                180.0);
    EXPECT_FALSE(april.set);
    const SunCrossings august = daylight(y2019 / 8 / 30, far_north, "UTC").sun;
    EXPECT_EQ(august.day, SunDay::sets_only);
    ASSERT_TRUE(august.set);
    EXPECT_NEAR(static_cast<double>((*august.set - instant_of("2019-08-30T23:01:00Z")).count()),
                0.0,
                180.0);
}

// NREL prints the sunset of the UT day, 17:20:19, which is that of the local 16 October. On the
// 17th the sun sets a minute and a half earlier.
TEST(Sun, DaysAreLocalCalendarDays) {
    const Position golden{.lat_deg = 39.742476, .lon_deg = -105.1786};
    const auto october = std::chrono::year(2003) / std::chrono::October;
    const SunCrossings before = daylight(october / 16, golden, "Etc/GMT+7").sun;
    const SunCrossings after = daylight(october / 17, golden, "Etc/GMT+7").sun;
    EXPECT_NEAR(
        static_cast<double>((*before.set - instant_of("2003-10-17T00:20:19Z")).count()), 0.0, 20.0);
    EXPECT_NEAR(
        static_cast<double>((*after.set - instant_of("2003-10-18T00:18:51Z")).count()), 0.0, 20.0);
}

TEST(Sun, SummerTimeMovesTheClockNotTheSun) {
    const Position oslo{.lat_deg = 59.91, .lon_deg = 10.75};
    const auto march = std::chrono::year(2027) / std::chrono::March;
    const SunCrossings before = daylight(march / 27, oslo, "Europe/Oslo").sun;
    const SunCrossings after = daylight(march / 28, oslo, "Europe/Oslo").sun; // a day of 23 hours
    const double day_s = static_cast<double>((*after.rise - *before.rise).count());
    EXPECT_NEAR(day_s, 86'400.0, 300.0);
}

TEST(Sun, AnswersFromPoleToPoleOnEveryDay) {
    for (const double lat_deg : {-90.0, -89.99, -66.6, 0.0, 66.6, 78.2, 89.99, 90.0})
        for (const double lon_deg : {-180.0, 0.0, 123.0, 180.0})
            for (int day = 0; day < 365; day += 5) {
                const year_month_day date(std::chrono::sys_days(y2019 / 1 / 1) + days(day));
                const Daylight light =
                    daylight(date, {.lat_deg = lat_deg, .lon_deg = lon_deg}, "UTC");
                for (const SunCrossings& found : {light.sun, light.twilight}) {
                    EXPECT_EQ(found.rise.has_value(),
                              found.day == SunDay::rises_and_sets ||
                                  found.day == SunDay::rises_only);
                    EXPECT_EQ(found.set.has_value(),
                              found.day == SunDay::rises_and_sets ||
                                  found.day == SunDay::sets_only);
                }
                if (light.sun.day == SunDay::always_above) {
                    EXPECT_EQ(light.twilight.day, SunDay::always_above);
                }
            }
}

TEST(Sun, RisesOnceAYearAtThePole) {
    int rises = 0;
    int sets = 0;
    for (int day = 0; day < 365; ++day) {
        const year_month_day date(std::chrono::sys_days(y2019 / 1 / 1) + days(day));
        const SunCrossings found = daylight(date, {.lat_deg = 90.0, .lon_deg = 0.0}, "UTC").sun;
        rises += found.rise ? 1 : 0;
        sets += found.set ? 1 : 0;
    }
    EXPECT_EQ(rises, 1);
    EXPECT_EQ(sets, 1);
}

TEST(Sun, EveryCrossingIsAtTheAltitudeAskedFor) {
    for (const double lat_deg : {-55.0, 0.0, 48.0, 61.0, 66.7, 69.6, 80.0})
        for (int day = 0; day < 365; day += 3) {
            const year_month_day date(std::chrono::sys_days(y2019 / 1 / 1) + days(day));
            const Position place{.lat_deg = lat_deg, .lon_deg = 25.0};
            const Daylight light = daylight(date, place, "Europe/Helsinki");
            for (const auto& instant : {light.sun.rise, light.sun.set})
                if (instant) {
                    EXPECT_NEAR(sun_place(*instant, place).altitude_deg, -50.0 / 60.0, 0.005);
                }
            for (const auto& instant : {light.twilight.rise, light.twilight.set})
                if (instant) {
                    EXPECT_NEAR(sun_place(*instant, place).altitude_deg, -6.0, 0.005);
                }
        }
}

/// The first minute of a day that begins below the horizon and ends above it, and the last that
/// begins above it and ends below, each looked at.
SunCrossings by_the_minute(const year_month_day& date, const Position& place) {
    constexpr double upper_limb_deg = -50.0 / 60.0;
    SunCrossings seen;
    const sys_seconds midnight = std::chrono::sys_days(date);
    bool above = sun_place(midnight, place).altitude_deg >= upper_limb_deg;
    for (int minute = 1; minute <= 1440; ++minute) {
        const sys_seconds now = midnight + std::chrono::minutes(minute);
        const bool is_above = sun_place(now, place).altitude_deg >= upper_limb_deg;
        if (is_above && !above && !seen.rise)
            seen.rise = now;
        if (!is_above && above)
            seen.set = now;
        above = is_above;
    }
    return seen;
}

TEST(Sun, FindsWhatALookEveryMinuteFinds) {
    int events = 0;
    int none = 0;
    for (int north = 640; north <= 700; north += 2)
        for (int day = 0; day < 365; day += 11) {
            const year_month_day date(std::chrono::sys_days(y2019 / 1 / 1) + days(day));
            const Position place{.lat_deg = north / 10.0, .lon_deg = 0.37 * day - 60.0};
            SCOPED_TRACE(fmt::format("{} N, day {}", place.lat_deg, day));
            const SunCrossings seen = by_the_minute(date, place);
            const SunCrossings found = daylight(date, place, "UTC").sun;
            for (const auto crossing : {&SunCrossings::rise, &SunCrossings::set}) {
                if (!(seen.*crossing)) {
                    ++none;
                    continue;
                }
                ++events;
                ASSERT_TRUE(found.*crossing);
                const auto later_s = (*(seen.*crossing) - *(found.*crossing)).count();
                EXPECT_GE(later_s, 0);
                EXPECT_LE(later_s, 60);
            }
        }
    EXPECT_GT(events, 1500);
    EXPECT_GT(none, 100);
}

TEST(Sun, FindsASunThatShowsItselfForMinutes) {
    // At 67.2 N the first sun of the year stays for less than the search's own step on some
    // longitude.
    int shortest_s = std::numeric_limits<int>::max();
    for (int north = 6650; north < 6800; ++north) {
        const SunCrossings found = daylight(std::chrono::year(2026) / 12 / 21,
                                            {.lat_deg = north / 100.0, .lon_deg = 15.0},
                                            "Europe/Oslo")
                                       .sun;
        if (found.rise && found.set)
            shortest_s = std::min(shortest_s, static_cast<int>((*found.set - *found.rise).count()));
    }
    EXPECT_LT(shortest_s, 1200);
}

TEST(Sun, RefusesAnUnknownZone) {
    EXPECT_THROW((void)daylight(y2019 / 4 / 13, far_north, "Mars/Olympus"), std::invalid_argument);
}

} // namespace
} // namespace tumpline::geo
