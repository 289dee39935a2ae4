#include "planner/trip/weather_check.h"

#include "geo/input_error.h"
#include "planner/trip/trip_file.h"

#include <gtest/gtest.h>

#include <string>

namespace tumpline::planner {
namespace {

/// The first problem of a trip with this weather, "place: expected"; empty if there is none.
std::string weather_problem(const std::string& weather, const std::string& start = "2027-06-18") {
    const std::string dated = start.empty() ? "" : "\"start\": \"" + start + "\", ";
    try {
        (void)read_trip_text(
            "{\"tumpline\": 1, " + dated +
                R"("route": {"tracks": ["a.gpx"], "legs": [{"name": "Over the saddle"}]},
                                 "party": [{"name": "Ada", "body": "68 kg"}], "weather": )" +
                weather + "}",
            "t.json");
    } catch (const geo::InputError& error) {
        return error.problems().front().place + ": " + error.problems().front().expected;
    }
    return {};
}

TEST(WeatherCheck, TakesWhatIsRight) {
    EXPECT_EQ(weather_problem(R"([{"high": "20 C"}, {"legs": ["Over the saddle"], "low": "4 C"},
        {"dates": ["2027-06-19", "2027-06-19"], "hours": ["22:00", "04:00"], "wind": "4 m/s", "gusts": "4 m/s"}])"),
              "");
}

TEST(WeatherCheck, RefusesAnEmptyIntervalOfHours) {
    EXPECT_EQ(weather_problem(R"([{"hours": ["13:00", "13:00"], "wind": "8 m/s"}])"),
              "/weather/0/hours: two times of day that differ: between these lies nothing");
}

TEST(WeatherCheck, RefusesLowsAboveTheHighThatHoldsThen) {
    EXPECT_EQ(weather_problem(R"([{"high": "10 C"}, {"days": [2], "low": "12 C"}])"),
              "/weather/1/low: no more than the high, 10 C");
    EXPECT_EQ(weather_problem(R"([{"low": "12 C"}, {"days": [2], "high": "10 C"}])"),
              "/weather/1/high: no less than the low, 12 C");
    EXPECT_EQ(weather_problem(R"([{"days": [1], "high": "10 C"}, {"days": [2], "low": "12 C"}])"),
              "");
}

TEST(WeatherCheck, RefusesGustsBelowTheirWind) {
    EXPECT_EQ(weather_problem(R"({"wind": "5 m/s", "gusts": "4 m/s"})"),
              "/weather/gusts: no less than the wind, 18 km/h");
}

TEST(WeatherCheck, RefusesLegsThatThereAreNotAndDatesWithoutAStart) {
    EXPECT_EQ(weather_problem(R"([{"legs": ["Over the sadle"], "rain": true}])"),
              "/weather/0/legs/0: the name of a leg");
    EXPECT_EQ(weather_problem(R"([{"dates": ["2027-06-19", "2027-06-20"], "rain": true}])", ""),
              "/weather/0/dates: \"days\", or the date on which the trip starts");
    EXPECT_EQ(weather_problem(R"([{"dates": ["2027-06-20", "2027-06-19"], "rain": true}])"),
              "/weather/0/dates: the earlier date first");
}

} // namespace
} // namespace tumpline::planner
