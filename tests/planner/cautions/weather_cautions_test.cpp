#include "planner/cautions/weather_cautions.h"

#include "tests/support/plain_trip.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace tumpline::planner {
namespace {

using test::cautions_of;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::SizeIs;

constexpr double hour_s = 3600.0;

/// Two kilometres on foot and three of lake, 1 m/s and from 13:00 to 18:00 9 m/s.
test::PlainTrip windy_afternoons() {
    test::PlainTrip plain = test::plain_trip({test::walk(2000.0), test::lake(3000.0)});
    WeatherEntry all;
    all.says.wind_mps = 1.0;
    WeatherEntry afternoon;
    afternoon.hours = HoursOfDay{13.0 * hour_s, 18.0 * hour_s};
    afternoon.says.wind_mps = 9.0;
    plain.trip.forecast = {all, afternoon};
    plain.trip.weather.wind_mps = 9.0;
    return plain;
}

TEST(WeatherCautions, SayByWhenToBeOffTheLake) {
    test::PlainTrip plain = windy_afternoons();
    ASSERT_THAT(cautions_of(plain, "wind-rises"), SizeIs(1));
    EXPECT_THAT(cautions_of(plain, "wind-rises")[0], HasSubstr("Off the water by 13:00"));
    EXPECT_THAT(cautions_of(plain, "wind-rises")[0], HasSubstr("The plan is off it at "));
    EXPECT_THAT(cautions_of(plain, "wind-over-ceiling"), IsEmpty()); // it is met in the morning
    plain.trip.days.set_off = seconds{13 * 3600};
    EXPECT_THAT(cautions_of(plain, "wind-over-ceiling"), SizeIs(1));
    EXPECT_THAT(cautions_of(plain, "wind-rises"), IsEmpty()); // it blows already
}

TEST(WeatherCautions, HoldCeilingsAgainstGusts) {
    test::PlainTrip plain = windy_afternoons();
    plain.trip.forecast[0].says.gusts_mps = 8.0; // the packraft's ceiling is 7.9 m/s
    ASSERT_THAT(cautions_of(plain, "wind-over-ceiling"), SizeIs(1));
    EXPECT_THAT(cautions_of(plain, "wind-over-ceiling")[0], HasSubstr("Wind in gusts of 29 km/h"));
}

TEST(WeatherCautions, NoWindForTheHoursOnTheLakeIsNotCalm) {
    test::PlainTrip plain = windy_afternoons();
    plain.trip.forecast.erase(plain.trip.forecast.begin());
    EXPECT_THAT(cautions_of(plain, "wind-unknown"), SizeIs(1));
}

TEST(WeatherCautions, SpeakOfWavesByTheFetch) {
    test::PlainTrip plain = test::plain_trip({test::lake(3000.0)});
    plain.trip.weather.wind_mps = 10.0; // over 3 km 0.28 m, over 10 km 0.50 m
    EXPECT_THAT(cautions_of(plain, "waves"), IsEmpty());
    plain.route.legs[0].spec.fetch_m = 10'000.0;
    ASSERT_THAT(cautions_of(plain, "waves"), SizeIs(1));
    EXPECT_THAT(cautions_of(plain, "waves")[0], HasSubstr("about 0.5 m every 2.2 s"));
    plain = test::plain_trip({test::lake(10'000.0)});
    plain.trip.weather.wind_mps = 10.0;
    ASSERT_THAT(cautions_of(plain, "waves"), SizeIs(1));
    EXPECT_THAT(cautions_of(plain, "waves")[0], HasSubstr("its fetch is not known"));
}

TEST(WeatherCautions, TellHeatByHumidity) {
    test::PlainTrip plain = test::plain_trip({test::walk(2000.0)});
    plain.trip.weather.high_c = 30.0;
    plain.trip.weather.humidity = 0.5;
    // 0.567 x 30 + 0.393 x 21.2 + 3.94 = 29.3: category 2 (from 27.8), and the row 26.5 to 29.4.
    ASSERT_THAT(cautions_of(plain, "heat"), SizeIs(1));
    EXPECT_THAT(cautions_of(plain, "heat")[0], HasSubstr("about 29 C"));
    EXPECT_THAT(cautions_of(plain, "heat")[0], HasSubstr("50 min"));
    EXPECT_THAT(cautions_of(plain, "heat")[0], HasSubstr("30 min"));
    plain.trip.weather.humidity = 0.1; // 0.567 x 30 + 0.393 x 4.2 + 3.94 = 22.6
    EXPECT_THAT(cautions_of(plain, "heat"), IsEmpty());
}

TEST(WeatherCautions, TellWindChillAndFrostbite) {
    test::PlainTrip plain = test::plain_trip({test::walk(2000.0)});
    plain.trip.weather.low_c = -20.0;
    plain.trip.weather.wind_mps = 60.0 / 3.6; // the chart: -36
    ASSERT_THAT(cautions_of(plain, "wind-chill"), SizeIs(1));
    EXPECT_THAT(cautions_of(plain, "wind-chill")[0], HasSubstr("as -36"));
    EXPECT_THAT(cautions_of(plain, "wind-chill")[0], HasSubstr("10 to 30 minutes"));
    plain.trip.weather.low_c = 0.0; // the chart: -9
    EXPECT_THAT(cautions_of(plain, "wind-chill"), IsEmpty());
}

TEST(WeatherCautions, FrostNeedsANight) {
    test::PlainTrip plain = test::plain_trip({test::walk(2000.0)});
    plain.trip.weather.low_c = -3.0;
    EXPECT_THAT(cautions_of(plain, "frost"), IsEmpty());
    plain = test::plain_trip({test::walk(30'000.0), test::walk(30'000.0)});
    plain.trip.weather.low_c = -3.0;
    EXPECT_THAT(cautions_of(plain, "frost"), SizeIs(1));
}

TEST(WeatherCautions, AnEntryForADayThatThePlanDoesNotHaveIsNamed) {
    test::PlainTrip plain = test::plain_trip({test::walk(2000.0)}); // one day
    WeatherEntry first;
    first.days = {1};
    first.says.wind_mps = 2.0;
    WeatherEntry ninth;
    ninth.days = {9};
    ninth.says.wind_mps = 20.0;
    plain.trip.forecast = {first, ninth};
    ASSERT_THAT(cautions_of(plain, "weather-other-days"), SizeIs(1));
    EXPECT_THAT(cautions_of(plain, "weather-other-days")[0], HasSubstr("Entry 2 "));
}

TEST(WeatherCautions, WishToBeInCampBeforeDark) {
    test::PlainTrip plain = test::plain_trip({test::walk(30'000.0), test::walk(30'000.0)});
    EXPECT_THAT(cautions_of(plain, "camp-late"), IsEmpty());
    plain.trip.days.in_camp_before_dark = seconds{12 * 3600};
    EXPECT_THAT(cautions_of(plain, "camp-late"), testing::Not(IsEmpty()));
}

} // namespace
} // namespace tumpline::planner
