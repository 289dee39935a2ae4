#include "cli/live/live_view.h"
#include "cli/words/words.h"
#include "planner/trip/json_pointer.h"

#include <fmt/format.h>

#include <cmath>
#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

/// The sliders: each a row of stops, each stop with the edits that it stands for and how it reads.
namespace tumpline::cli {

namespace {

using planner::JsonValue;

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
    Slider slider{.id = "pace", .label = "Pace of the party"};
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

/// A trip file may describe its weather hour by hour; then no one slider stands for it.
bool one_weather(const LivePlan& live) {
    const JsonValue* weather = live.document.find("weather");
    return weather == nullptr || weather->kind == JsonValue::Kind::object;
}

Json wind_json(const LivePlan& live, const Figures& shown) {
    const std::optional<double> now = live.plan.trip.weather.wind_mps;
    const std::optional<double> from = live.plan.trip.weather.wind_from_deg;
    Slider slider{.id = "wind",
                  .label = from ? fmt::format("Wind from {:.0f}°", *from) : std::string("Wind")};
    for (int wind_mps = 0; wind_mps <= 16; ++wind_mps)
        slider.add(stop(shown.speed(wind_mps),
                        Json::array({added("/weather/wind", fmt::format("{} m/s", wind_mps))})),
                   wind_mps - now.value_or(0.0));
    return slider.json(now ? shown.speed(*now) : std::string("not given"));
}

Json rain_json(const LivePlan& live) {
    const std::optional<bool> now = live.plan.trip.weather.rain;
    Slider slider{.id = "rain", .label = "Rain"};
    slider.add(stop("no", Json::array({added("/weather/rain", false)})),
               now.value_or(false) ? 1 : 0);
    slider.add(stop("yes", Json::array({added("/weather/rain", true)})),
               now.value_or(false) ? 0 : 1);
    return slider.json(!now ? "not given" : *now ? "yes" : "no");
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
    Slider slider{.id = "hours", .label = "Moving hours wished a day"};
    const std::optional<double> now = live.plan.trip.days.hours;
    for (int half = 6; half <= 28; ++half)
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
    if (one_weather(live)) {
        sliders.push_back(wind_json(live, shown));
        sliders.push_back(rain_json(live));
    }
    const std::vector<planner::TripLeg>& legs = live.plan.trip.route.legs;
    for (std::size_t i = 0; i < legs.size(); ++i)
        if (legs[i].current_mps && legs[i].instead_of.empty())
            sliders.push_back(current_json(legs[i], i, shown));
    return sliders;
}

} // namespace tumpline::cli
