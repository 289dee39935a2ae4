#include "planner/trip/trip_file.h"

#include <gtest/gtest.h>

#include <string>

namespace tumpline::planner {
namespace {

Trip with_weather(const std::string& weather, const std::string& leg = "{\"name\": \"a leg\"}") {
    return read_trip_text(R"({"tumpline": 1, "start": "2027-06-18", "route": {"tracks": ["a.gpx"],
        "legs": [)" + leg + R"(]}, "party": [{"name": "Ada", "body": "68 kg"}], "weather": )" +
                              weather + "}",
                          "t.json");
}

TEST(SectionWeather, OneObjectHoldsThroughout) {
    const Trip trip = with_weather(R"({"high": "20 C", "wind": "3 m/s", "humidity": 0.5})");
    EXPECT_TRUE(trip.forecast.empty());
    EXPECT_FALSE(trip.weather_listed);
    EXPECT_EQ(trip.weather.wind_mps, 3.0);
    EXPECT_EQ(trip.weather.humidity, 0.5);
}

TEST(SectionWeather, AListIsSummedUpByWhatIsHardest) {
    const Trip trip = with_weather(
        R"([{"high": "20 C", "low": "8 C", "wind": "3 m/s", "wind_from": 90, "water": "12 C", "rain": false},
            {"days": [2], "high": "28 C", "low": "-2 C", "gusts": "9 m/s", "water": "7 C", "rain": true},
            {"hours": ["13:00", "18:00"], "wind": "6 m/s", "snow_depth": "20 cm"}])");
    ASSERT_EQ(trip.forecast.size(), 3U);
    EXPECT_EQ(trip.weather.high_c, 28.0);
    EXPECT_EQ(trip.weather.low_c, -2.0);
    EXPECT_EQ(trip.weather.wind_mps, 6.0);
    EXPECT_EQ(trip.weather.gusts_mps, 9.0);
    EXPECT_EQ(trip.weather.wind_from_deg, 90.0);
    EXPECT_EQ(trip.weather.water_c, 7.0);
    EXPECT_EQ(trip.weather.rain, true);
    EXPECT_EQ(trip.weather.snow, true); // 20 cm of it lie
    EXPECT_EQ(trip.forecast[2].hours->from_s, 13.0 * 3600.0);
    EXPECT_EQ(trip.forecast[2].hours->to_s, 18.0 * 3600.0);
}

TEST(SectionWeather, WindsFromTwoSidesHaveNoBearingTogether) {
    const Trip trip =
        with_weather(R"([{"wind": "3 m/s", "wind_from": 90}, {"days": [2], "wind_from": 270}])");
    EXPECT_FALSE(trip.weather.wind_from_deg);
}

TEST(SectionWeather, ALegsOwnWeatherCountsForTheTripAndMakesItUneven) {
    const Trip trip = with_weather(R"({"high": "20 C", "water": "12 C"})",
                                   R"({"name": "a leg", "weather": {"water": "4 C"}})");
    EXPECT_EQ(trip.weather.water_c, 4.0);
    ASSERT_EQ(trip.forecast.size(), 1U);
    EXPECT_EQ(trip.forecast[0].says.water_c, 12.0);
}

} // namespace
} // namespace tumpline::planner
