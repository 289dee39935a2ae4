#include "planner/trip/weather_check.h"

#include "planner/quantities/spelling.h"
#include "planner/trip/laid_over.h"

#include <fmt/format.h>

#include <algorithm>
#include <string>
#include <string_view>
#include <vector>

namespace tumpline::planner {

namespace {

class WeatherCheck {
  public:
    WeatherCheck(const Trip& trip, Problems& problems) : trip_(trip), problems_(problems) {}

    void run() {
        if (trip_.forecast.empty())
            figures(trip_.weather, trip_.weather, trip_.weather_listed ? "/weather/0" : "/weather");
        Weather base;
        for (std::size_t i = 0; i < trip_.forecast.size(); ++i) {
            const WeatherEntry& entry = trip_.forecast[i];
            const std::string place =
                trip_.weather_listed ? fmt::format("/weather/{}", i) : std::string("/weather");
            limits(entry, place);
            const Weather together = laid_over(base, entry.says);
            figures(together, entry.says, place);
            if (!entry.limited())
                base = together;
        }
        for (std::size_t i = 0; i < trip_.route.legs.size(); ++i)
            if (trip_.route.legs[i].weather)
                of_leg(*trip_.route.legs[i].weather, fmt::format("/route/legs/{}/weather", i));
    }

  private:
    void figures(const Weather& together, const Weather& says, const std::string& place);
    void limits(const WeatherEntry& entry, const std::string& place);
    void of_leg(const WeatherEntry& entry, const std::string& place);

    const Trip& trip_;
    Problems& problems_;
};

void WeatherCheck::figures(const Weather& together, const Weather& says, const std::string& place) {
    const auto shown = [](double value_c) {
        return plain_quantity(value_c, Dimension::temperature);
    };
    if (together.high_c && together.low_c && *together.low_c > *together.high_c) {
        const bool low = says.low_c.has_value();
        problems_.add(
            place + (low ? "/low" : "/high"),
            {.found = shown(low ? *together.low_c : *together.high_c),
             .expected = low ? fmt::format("no more than the high, {}", shown(*together.high_c))
                             : fmt::format("no less than the low, {}", shown(*together.low_c)),
             .advice = {}});
    }
    if (says.gusts_mps && together.wind_mps && *says.gusts_mps < *together.wind_mps)
        problems_.add(
            place + "/gusts",
            {.found = plain_quantity(*says.gusts_mps, Dimension::speed),
             .expected = fmt::format("no less than the wind, {}",
                                     plain_quantity(*together.wind_mps, Dimension::speed)),
             .advice = {}});
}

void WeatherCheck::limits(const WeatherEntry& entry, const std::string& place) {
    if (entry.dates && !trip_.start.ok())
        problems_.add(place + "/dates",
                      {.found = "dates on a trip without \"start\"",
                       .expected = "\"days\", or the date on which the trip starts",
                       .advice = "add \"start\""});
    std::vector<std::string_view> names;
    for (const TripLeg& leg : trip_.route.legs)
        if (!leg.name.empty())
            names.push_back(leg.name);
    for (std::size_t i = 0; i < entry.legs.size(); ++i) {
        if (std::find(names.begin(), names.end(), entry.legs[i]) != names.end())
            continue;
        const std::string nearest = nearest_word(entry.legs[i], names);
        problems_.add(
            fmt::format("{}/legs/{}", place, i),
            {.found = fmt::format("\"{}\"", entry.legs[i]),
             .expected =
                 names.empty() ? "a leg by its name; /route/legs names none" : "the name of a leg",
             .advice = nearest.empty() ? std::string() : fmt::format("write \"{}\"", nearest)});
    }
}

void WeatherCheck::of_leg(const WeatherEntry& entry, const std::string& place) {
    figures(entry.says, entry.says, place);
    if (entry.dates && !trip_.start.ok())
        limits({.says = {}, .days = {}, .dates = entry.dates, .hours = {}, .legs = {}}, place);
}

} // namespace

void check_weather(const Trip& trip, Problems& problems) {
    WeatherCheck(trip, problems).run();
}

} // namespace tumpline::planner
