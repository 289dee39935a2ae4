#include "cli/live/live_view.h"
#include "cli/words/words.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

/// The sliders: each a row of stops, each stop with the edits that it stands for and how it reads.
namespace tumpline::cli {

namespace {

Json stop(std::string text, Json edits) {
    return {{"text", std::move(text)}, {"edits", std::move(edits)}};
}

/// A slider while its stops are added; it stands at the stop nearest to the plan's own value.
struct Slider {
    std::string id;
    std::string label;
    Json stops = Json::array();
    double nearest = 1e300;
    std::size_t at = 0;

    void add(Json one, double off) {
        if (std::abs(off) < nearest) {
            nearest = std::abs(off);
            at = stops.size();
        }
        stops.push_back(std::move(one));
    }

    /// `value`: as the plan has it now, where that may lie between two stops.
    [[nodiscard]] Json json(const std::string& value) const {
        return {{"id", id}, {"label", label}, {"value", value}, {"at", at}, {"stops", stops}};
    }
};

Json set_off_json(const LivePlan& live, const Figures& shown) {
    Slider slider{.id = "set-off", .label = "Set off"};
    const std::string now =
        live.plan.days.empty() ? std::string("08:00") : shown.clock(live.plan.days.front().set_off);
    const int now_min = std::stoi(now.substr(0, 2)) * 60 + std::stoi(now.substr(3, 2));
    for (int minutes = 4 * 60; minutes <= 12 * 60; minutes += 15) {
        const std::string clock = fmt::format("{:02}:{:02}", minutes / 60, minutes % 60);
        slider.add(stop(clock, Json::array({added("/days/set_off", clock)})), minutes - now_min);
    }
    return slider.json(now);
}

/// Of everybody at once, as a factor on what the trip file says.
Json pace_json(const LivePlan& live) {
    Slider slider{.id = "pace", .label = "Pace"};
    const std::vector<planner::Member>& party = live.on_file.party;
    const double on_file = party.front().pace.value_or(1.0);
    const double factor = live.plan.trip.party.front().pace.value_or(1.0) / on_file;
    for (int percent = 70; percent <= 130; percent += 5) {
        Json edits = Json::array();
        for (std::size_t i = 0; i < party.size(); ++i)
            edits.push_back(
                added(fmt::format("/party/{}/pace", i),
                      std::round(party[i].pace.value_or(1.0) * percent * 10.0) / 1000.0));
        slider.add(stop(fmt::format("{} %", percent), std::move(edits)), percent / 100.0 - factor);
    }
    return slider.json(fmt::format("{:.0f} %", 100.0 * factor));
}

std::string clock_text(double after_midnight_s) {
    const int minutes = static_cast<int>(std::lround(after_midnight_s / 60.0));
    return fmt::format("{:02}:{:02}", minutes / 60 % 24, minutes % 60);
}

/// When and where an entry of the weather holds, ", days 3 and 4, 13:00 to 18:00".
std::string limits_text(const planner::WeatherEntry& entry) {
    std::vector<std::string> parts;
    if (!entry.days.empty())
        parts.push_back(fmt::format(
            "{} {}", entry.days.size() == 1 ? "day" : "days", fmt::join(entry.days, ", ")));
    if (entry.dates)
        parts.push_back(entry.dates->first == entry.dates->last
                            ? short_date(entry.dates->first)
                            : fmt::format("{} to {}",
                                          short_date(entry.dates->first),
                                          short_date(entry.dates->last)));
    if (entry.hours)
        parts.push_back(fmt::format(
            "{} to {}", clock_text(entry.hours->from_s), clock_text(entry.hours->to_s)));
    if (!entry.legs.empty())
        parts.push_back(fmt::format("{}", fmt::join(entry.legs, ", ")));
    return parts.empty() ? std::string() : fmt::format(", {}", fmt::join(parts, ", "));
}

/// An entry of the trip file's weather and where it is written.
struct WrittenWeather {
    std::string at; ///< "/weather" or "/weather/2"
    std::string id; ///< "" or "-2"
    planner::WeatherEntry entry;
};

std::vector<WrittenWeather> written_weather(const planner::Trip& trip) {
    std::vector<planner::WeatherEntry> entries = trip.forecast;
    if (entries.empty())
        entries.push_back({.says = trip.weather,
                           .days = {},
                           .dates = std::nullopt,
                           .hours = std::nullopt,
                           .legs = {}});
    std::vector<WrittenWeather> written;
    for (std::size_t i = 0; i < entries.size(); ++i)
        written.push_back({.at = trip.weather_listed ? fmt::format("/weather/{}", i) : "/weather",
                           .id = trip.weather_listed ? fmt::format("-{}", i) : std::string(),
                           .entry = std::move(entries[i])});
    return written;
}

/// The strongest wind that the slider goes to: no wind may be stronger than its gusts.
double most_wind_mps(const planner::Trip& trip) {
    double most_mps = 16.0;
    for (const WrittenWeather& one : written_weather(trip))
        most_mps = std::min(most_mps, one.entry.says.gusts_mps.value_or(most_mps));
    for (const planner::TripLeg& leg : trip.route.legs)
        if (leg.weather)
            most_mps = std::min(most_mps, leg.weather->says.gusts_mps.value_or(most_mps));
    return most_mps;
}

Json wind_json(const WrittenWeather& written, double most_mps, const Figures& shown) {
    const std::optional<double> now = written.entry.says.wind_mps;
    const std::optional<double> from = written.entry.says.wind_from_deg;
    Slider slider{.id = "wind" + written.id,
                  .label = (from ? fmt::format("Wind from {:.0f}°", *from) : std::string("Wind")) +
                           limits_text(written.entry)};
    for (int wind_mps = 0; wind_mps <= static_cast<int>(most_mps); ++wind_mps)
        slider.add(
            stop(shown.speed(wind_mps),
                 Json::array({added(written.at + "/wind", fmt::format("{} m/s", wind_mps))})),
            wind_mps - now.value_or(0.0));
    return slider.json(now ? shown.speed(*now) : std::string("not given"));
}

Json rain_json(const WrittenWeather& written) {
    const std::optional<bool> now = written.entry.says.rain;
    Slider slider{.id = "rain" + written.id, .label = "Rain" + limits_text(written.entry)};
    slider.add(stop("no", Json::array({added(written.at + "/rain", false)})),
               now.value_or(false) ? 1 : 0);
    slider.add(stop("yes", Json::array({added(written.at + "/rain", true)})),
               now.value_or(false) ? 0 : 1);
    return slider.json(!now ? "not given" : *now ? "yes" : "no");
}

/// Of a list, each entry that names the wind or rain has a slider of its own; what an entry does
/// not name stays with the entry below it.
void add_weather(Json& sliders, const planner::Trip& trip, const Figures& shown) {
    const double most_mps = most_wind_mps(trip);
    for (const WrittenWeather& written : written_weather(trip)) {
        if (!trip.weather_listed || written.entry.says.wind_mps)
            sliders.push_back(wind_json(written, most_mps, shown));
        if (!trip.weather_listed || written.entry.says.rain)
            sliders.push_back(rain_json(written));
    }
}

Json current_json(const planner::TripLeg& leg, std::size_t index, const Figures& shown) {
    Slider slider{.id = fmt::format("current-{}", index), .label = leg.name};
    const double sign = *leg.current_mps < 0.0 ? -1.0 : 1.0;
    for (int half_kmh = 0; half_kmh <= 24; ++half_kmh) {
        const double kmh = sign * half_kmh / 2.0;
        slider.add(stop(shown.speed(kmh / 3.6),
                        Json::array({added(fmt::format("/route/legs/{}/current", index),
                                           fmt::format("{:.1f} km/h", kmh))})),
                   kmh / 3.6 - *leg.current_mps);
    }
    return slider.json(shown.speed(*leg.current_mps));
}

Json hours_json(const LivePlan& live) {
    Slider slider{.id = "hours", .label = "Hours a day"};
    const std::optional<double> now = live.plan.trip.days.hours;
    const double most_h = std::min(14.0, live.plan.trip.days.hours_limit.value_or(14.0));
    for (int half = 2; half <= static_cast<int>(2.0 * most_h); ++half)
        slider.add(
            stop(fmt::format("{} h", half / 2.0), Json::array({added("/days/hours", half / 2.0)})),
            half / 2.0 - now.value_or(8.0));
    return slider.json(now ? fmt::format("{} h", *now) : std::string("not given"));
}

} // namespace

Json live_conditions(const LivePlan& live, const Figures& shown) {
    Json sliders = Json::array();
    sliders.push_back(set_off_json(live, shown));
    sliders.push_back(hours_json(live));
    sliders.push_back(pace_json(live));
    add_weather(sliders, live.plan.trip, shown);
    const std::vector<planner::TripLeg>& legs = live.plan.trip.route.legs;
    for (std::size_t i = 0; i < legs.size(); ++i)
        if (legs[i].current_mps && legs[i].instead_of.empty())
            sliders.push_back(current_json(legs[i], i, shown));
    return sliders;
}

} // namespace tumpline::cli
