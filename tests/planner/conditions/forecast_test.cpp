#include "planner/conditions/forecast.h"

#include <gtest/gtest.h>

#include <chrono>
#include <vector>

namespace tumpline::planner {
namespace {

using namespace std::chrono_literals;

constexpr double hour_s = 3600.0;

WeatherEntry of_wind(double wind_mps) {
    WeatherEntry entry;
    entry.says.wind_mps = wind_mps;
    return entry;
}

RouteLeg leg_named(const std::string& name) {
    RouteLeg leg{.name = name,
                 .travel = Travel::paddle,
                 .spec = {},
                 .line = geo::Polyline(
                     {{.lat_deg = 61.5, .lon_deg = 13.1}, {.lat_deg = 61.6, .lon_deg = 13.1}}),
                 .profile = {}};
    return leg;
}

/// 2 m/s from 240, every afternoon 8 m/s, on day 3 over the saddle rain.
Trip changing() {
    Trip trip;
    trip.start = 2027y / 6 / 18;
    WeatherEntry all = of_wind(2.0);
    all.says.wind_from_deg = 240.0;
    all.says.high_c = 31.0;
    WeatherEntry afternoon = of_wind(8.0);
    afternoon.hours = HoursOfDay{13.0 * hour_s, 18.0 * hour_s};
    afternoon.says.gusts_mps = 12.0;
    WeatherEntry third;
    third.days = {3};
    third.legs = {"Over the saddle"};
    third.says.rain = true;
    third.says.high_c = 12.0;
    trip.forecast = {all, afternoon, third};
    return trip;
}

TEST(Forecast, MergesKeyByKeyTheLaterEntryWinning) {
    const Forecast forecast(changing());
    const RouteLeg lake = leg_named("Across");
    const Weather morning = forecast.at({lake, 1}, 9.0 * hour_s);
    EXPECT_EQ(morning.wind_mps, 2.0);
    EXPECT_EQ(morning.wind_from_deg, 240.0);
    EXPECT_FALSE(morning.gusts_mps);
    const Weather afternoon = forecast.at({lake, 1}, 13.0 * hour_s);
    EXPECT_EQ(afternoon.wind_mps, 8.0);
    EXPECT_EQ(afternoon.wind_from_deg, 240.0); // left as it was
    EXPECT_EQ(afternoon.gusts_mps, 12.0);
    EXPECT_EQ(forecast.at({lake, 1}, 18.0 * hour_s).wind_mps, 2.0); // the end is not in it
}

TEST(Forecast, KeepsToDaysAndLegs) {
    const Forecast forecast(changing());
    EXPECT_EQ(forecast.at({leg_named("Over the saddle"), 3}, 9.0 * hour_s).rain, true);
    EXPECT_FALSE(forecast.at({leg_named("Over the saddle"), 2}, 9.0 * hour_s).rain);
    EXPECT_FALSE(forecast.at({leg_named("Across"), 3}, 9.0 * hour_s).rain);
}

TEST(Forecast, TellsTheDeepestSnowOfADay) {
    Trip trip = changing();
    WeatherEntry snow;
    snow.says.snow_depth_m = 0.1;
    snow.days = {2};
    trip.forecast.push_back(snow);
    snow.says.snow_depth_m = 0.3;
    snow.hours = HoursOfDay{18.0 * hour_s, 22.0 * hour_s};
    trip.forecast.push_back(snow);
    const Forecast forecast(trip);
    const RouteLeg leg = leg_named("Over the saddle");
    EXPECT_FALSE(forecast.deepest_snow_m({leg, 1}));
    EXPECT_FALSE(forecast.snow_lies({leg, 1}));
    EXPECT_EQ(forecast.deepest_snow_m({leg, 2}), 0.3);
    EXPECT_EQ(forecast.snow_lies({leg, 2}), true);
    EXPECT_TRUE(forecast.snow_changes_by_day(leg));
    EXPECT_FALSE(Forecast(changing()).snow_changes_by_day(leg));
}

TEST(Forecast, KeepsToDatesOfATripWithAStart) {
    Trip trip = changing();
    WeatherEntry dated = of_wind(5.0);
    dated.dates = DateSpan{2027y / 6 / 19, 2027y / 6 / 20}; // days 2 and 3
    trip.forecast.push_back(dated);
    const Forecast forecast(trip);
    const RouteLeg lake = leg_named("Across");
    EXPECT_EQ(forecast.at({lake, 1}, 9.0 * hour_s).wind_mps, 2.0);
    EXPECT_EQ(forecast.at({lake, 2}, 9.0 * hour_s).wind_mps, 5.0);
    EXPECT_EQ(forecast.at({lake, 3}, 9.0 * hour_s).wind_mps, 5.0);
    EXPECT_EQ(forecast.at({lake, 4}, 9.0 * hour_s).wind_mps, 2.0);
}

TEST(Forecast, HoursMayGoOverMidnightAndPastIt) {
    Trip trip = changing();
    WeatherEntry night = of_wind(6.0);
    night.hours = HoursOfDay{22.0 * hour_s, 4.0 * hour_s};
    night.days = {2};
    trip.forecast.push_back(night);
    const Forecast forecast(trip);
    const RouteLeg lake = leg_named("Across");
    EXPECT_EQ(forecast.at({lake, 2}, 23.0 * hour_s).wind_mps, 6.0);
    EXPECT_EQ(forecast.at({lake, 2}, 3.0 * hour_s).wind_mps, 6.0);
    EXPECT_EQ(forecast.at({lake, 2}, 4.0 * hour_s).wind_mps, 2.0);
    EXPECT_EQ(forecast.at({lake, 1}, 26.0 * hour_s).wind_mps, 6.0); // 02:00 of day 2
}

TEST(Forecast, ALegsOwnWeatherLiesOnTop) {
    Trip trip = changing();
    RouteLeg lake = leg_named("Across");
    lake.spec.weather = of_wind(1.0);
    const Weather weather = Forecast(trip).at({lake, 1}, 14.0 * hour_s);
    EXPECT_EQ(weather.wind_mps, 1.0);
    EXPECT_EQ(weather.high_c, 31.0);
}

TEST(Forecast, SpellsFollowOneAnotherWithoutAGap) {
    const Forecast forecast(changing());
    const std::vector<WeatherSpell> spells = forecast.spells({leg_named("Across"), 1});
    // Morning, afternoon, evening and next morning as one, the next afternoon, the rest.
    ASSERT_EQ(spells.size(), 5U);
    EXPECT_EQ(spells[0].from_s, 0.0);
    EXPECT_EQ(spells[1].from_s, 13.0 * hour_s);
    EXPECT_EQ(spells[2].from_s, 18.0 * hour_s);
    EXPECT_EQ(spells[3].from_s, 37.0 * hour_s);
    EXPECT_EQ(spells[4].from_s, 42.0 * hour_s);
    for (std::size_t k = 0; k + 1 < spells.size(); ++k)
        EXPECT_EQ(spells[k].to_s, spells[k + 1].from_s);
    EXPECT_EQ(spells[1].weather.wind_mps, 8.0);
    EXPECT_EQ(spells[2].weather.wind_mps, 2.0);
}

TEST(Forecast, WithoutAListThereIsOneSpell) {
    Trip trip;
    trip.weather.wind_mps = 3.0;
    trip.weather.high_c = 20.0;
    const Forecast forecast(trip);
    EXPECT_TRUE(forecast.even());
    EXPECT_EQ(forecast.spells({leg_named("Across"), 1}).size(), 1U);
    EXPECT_EQ(forecast.at({leg_named("Across"), 7}, 0.0).wind_mps, 3.0);
    EXPECT_EQ(forecast.warmest_c(1), 20.0);
}

TEST(Forecast, TheWarmestOfADayIsThatOfItsEntries) {
    Trip trip = changing();
    WeatherEntry cool;
    cool.days = {2};
    cool.says.high_c = 18.0;
    trip.forecast.push_back(cool);
    const Forecast forecast(trip);
    EXPECT_EQ(forecast.warmest_c(1), 31.0);
    EXPECT_EQ(forecast.warmest_c(2), 18.0); // all of that day, everywhere
    EXPECT_EQ(forecast.warmest_c(3), 31.0); // 12 C on one leg only
}

TEST(Forecast, KnowsTheEntriesThatNoDayOfTheTripHas) {
    Trip trip = changing(); // all, every afternoon, day 3
    EXPECT_EQ(Forecast(trip).on_no_day_of(3), std::vector<std::size_t>{});
    EXPECT_EQ(Forecast(trip).on_no_day_of(2), std::vector<std::size_t>{3});
    WeatherEntry dated = of_wind(5.0);
    dated.dates = DateSpan{2027y / 6 / 21, 2027y / 6 / 30}; // day 4 is the 21st
    trip.forecast.insert(trip.forecast.begin(), dated);
    EXPECT_EQ(Forecast(trip).on_no_day_of(3), std::vector<std::size_t>{1});
    EXPECT_EQ(Forecast(trip).on_no_day_of(4), std::vector<std::size_t>{});
}

} // namespace
} // namespace tumpline::planner
