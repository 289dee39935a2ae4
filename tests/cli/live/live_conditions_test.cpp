#include "cli/live/live_view.h"
#include "planner/trip/trip_file.h"
#include "planner/trip/trip_text.h"
#include "tests/support/source_tree.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <filesystem>
#include <string>
#include <vector>

namespace tumpline::cli {

namespace {

/// The sliders of the saddle's sample, its weather put in the place of the file's.
Json sliders_in(const std::string& weather) {
    LiveTrip trip(test::root / "sample-routes" / "saddle" / "trip.json");
    const LivePlan live = trip.planned({{planner::Edit::Way::add, "/weather", weather}});
    return live_conditions(
        live, Figures(planner::UnitSystem::metric, live.plan.trip.time_zone, Blank::kept));
}

Json slider_named(const Json& sliders, const std::string& id) {
    const auto found = std::find_if(
        sliders.begin(), sliders.end(), [&](const Json& slider) { return slider.at("id") == id; });
    return found == sliders.end() ? Json() : *found;
}

TEST(LiveConditions, OneWeatherHasOneSliderEachForWindAndRain) {
    const Json sliders = sliders_in(R"({"high": "16 C", "wind": "3 m/s", "water": "9 C"})");
    const Json wind = slider_named(sliders, "wind");
    EXPECT_EQ(wind.at("at"), 3); // stops of 1 m/s from 0
    EXPECT_EQ(wind.at("stops").at(5).at("edits").at(0).at("path"), "/weather/wind");
    EXPECT_EQ(slider_named(sliders, "rain").at("value"), "not given");
}

TEST(LiveConditions, EachEntryOfAListHasTheSlidersOfWhatItNames) {
    const Json sliders = sliders_in(R"([{"wind": "2 m/s", "wind_from": 240, "water": "9 C"},
                                        {"hours": ["13:00", "18:00"], "wind": "8 m/s"},
                                        {"days": [2, 3], "rain": true}])");
    const Json always = slider_named(sliders, "wind-0");
    EXPECT_EQ(always.at("label"), "Wind from 240°");
    EXPECT_EQ(always.at("at"), 2);
    const Json afternoon = slider_named(sliders, "wind-1");
    EXPECT_EQ(afternoon.at("label"), "Wind, 13:00 to 18:00");
    EXPECT_EQ(afternoon.at("at"), 8);
    EXPECT_EQ(afternoon.at("stops").at(4).at("edits").at(0).at("path"), "/weather/1/wind");
    EXPECT_EQ(afternoon.at("stops").at(4).at("edits").at(0).at("value"), "4 m/s");
    const Json rain = slider_named(sliders, "rain-2");
    EXPECT_EQ(rain.at("label"), "Rain, days 2, 3");
    EXPECT_EQ(rain.at("stops").at(0).at("edits").at(0).at("path"), "/weather/2/rain");
    EXPECT_TRUE(
        slider_named(sliders, "rain-0").is_null()); // what an entry does not name, it leaves
    EXPECT_TRUE(slider_named(sliders, "wind-2").is_null());
}

TEST(LiveConditions, NoStopIsAboveTheGusts) {
    const Json wind =
        slider_named(sliders_in(R"([{"wind": "2 m/s", "gusts": "5.5 m/s"}])"), "wind-0");
    EXPECT_EQ(wind.at("stops").size(), 6U); // 0, 1, 2, 3, 4 and 5 m/s
    EXPECT_EQ(wind.at("at"), 2);
}

TEST(LiveConditions, EveryStopOfAListIsATrip) {
    const std::filesystem::path saddle = test::root / "sample-routes" / "saddle" / "trip.json";
    const std::string weather =
        R"([{"wind": "2 m/s", "wind_from": 240}, {"hours": ["13:00", "18:00"], "wind": "8 m/s", "gusts": "9 m/s"}])";
    const std::string text = LiveTrip(saddle).text();
    for (const Json& slider : sliders_in(weather))
        for (const Json& stop : slider.at("stops")) {
            std::vector<planner::Edit> edits{{planner::Edit::Way::add, "/weather", weather}};
            for (const Json& edit : stop.at("edits"))
                edits.push_back({planner::Edit::Way::add,
                                 edit.at("path").get<std::string>(),
                                 edit.at("value").dump()});
            EXPECT_NO_THROW((void)planner::edited_trip(text, saddle, edits)) << stop.dump();
        }
}

} // namespace

} // namespace tumpline::cli
