#include "planner/trip/sections.h"

#include <utility>

namespace tumpline::planner {

namespace {

using Kind = JsonValue::Kind;

void read_weather_days(const TripValue& value, WeatherEntry& entry) {
    for (const TripValue& item : value.items("the number of a day"))
        if (const std::optional<int> day = item.whole_number({1, 400}))
            entry.days.push_back(*day);
    if (value.json().kind == Kind::list && value.json().items.empty())
        value.add_problem("at least one day", "leave \"days\" out for every day");
}

void read_weather_dates(const TripValue& value, WeatherEntry& entry) {
    put(entry.dates, read_dates(value));
}

void read_weather_hours(const TripValue& value, WeatherEntry& entry) {
    put(entry.hours, read_hours(value));
}

void read_weather_legs(const TripValue& value, WeatherEntry& entry) {
    for (const TripValue& item : value.items("the name of a leg"))
        if (std::optional<std::string> name = item.name())
            entry.legs.push_back(std::move(*name));
    if (value.json().kind == Kind::list && value.json().items.empty())
        value.add_problem("at least one leg", "leave \"legs\" out for every leg");
}

/// The higher or lower of two figures of which either may be open.
void harder(std::optional<double>& so_far, const std::optional<double>& next, bool higher) {
    if (next && (!so_far || (higher ? *next > *so_far : *next < *so_far)))
        so_far = next;
}

void either_of(std::optional<bool>& so_far, const std::optional<bool>& next) {
    if (next)
        so_far = so_far.value_or(false) || *next;
}

/// What a trip must be ready for: of each figure the hardest that some entry says.
void make_harder(Weather& all, const Weather& one) {
    harder(all.high_c, one.high_c, true);
    harder(all.low_c, one.low_c, false);
    harder(all.wind_mps, one.wind_mps, true);
    harder(all.gusts_mps, one.gusts_mps, true);
    harder(all.humidity, one.humidity, true);
    harder(all.water_c, one.water_c, false);
    harder(all.snow_depth_m, one.snow_depth_m, true);
    either_of(all.rain, one.rain);
    either_of(all.snow, one.snow);
}

/// Where the wind comes from, if that is the same throughout.
std::optional<double> even_bearing(const std::vector<WeatherEntry>& entries) {
    std::optional<double> bearing_deg;
    for (const WeatherEntry& entry : entries) {
        if (!entry.says.wind_from_deg)
            continue;
        if (bearing_deg && *bearing_deg != *entry.says.wind_from_deg)
            return std::nullopt;
        bearing_deg = entry.says.wind_from_deg;
    }
    return bearing_deg;
}

} // namespace

std::optional<HoursOfDay> read_hours(const TripValue& value) {
    const std::vector<TripValue> items = value.items("a time of day");
    if (items.size() != 2) {
        if (value.json().kind == Kind::list)
            value.add_problem("two times of day, from and to",
                              "for instance [\"13:00\", \"18:00\"]");
        return std::nullopt;
    }
    const auto from = items[0].time_of_day();
    const auto to = items[1].time_of_day();
    if (!from || !to)
        return std::nullopt;
    if (*from == *to) {
        value.add_problem("two times of day that differ: between these lies nothing",
                          "leave \"hours\" out for the whole day");
        return std::nullopt;
    }
    return HoursOfDay{static_cast<double>(from->count()), static_cast<double>(to->count())};
}

const Section<WeatherEntry>& weather_section() {
    using Entry = WeatherEntry;
    static const Section<Entry> section{
        "weather",
        "the weather",
        {
            {"high",
             Need::may,
             [](const TripValue& v, Entry& e) {
                 put(e.says.high_c, v.quantity(sensible_temperature));
             }},
            {"low",
             Need::may,
             [](const TripValue& v, Entry& e) {
                 put(e.says.low_c, v.quantity(sensible_temperature));
             }},
            {"wind",
             Need::may,
             [](const TripValue& v, Entry& e) { put(e.says.wind_mps, v.quantity(sensible_wind)); }},
            {"wind_from",
             Need::may,
             [](const TripValue& v, Entry& e) {
                 put(e.says.wind_from_deg, v.number({0.0, 360.0}));
             }},
            {"gusts",
             Need::may,
             [](const TripValue& v, Entry& e) {
                 put(e.says.gusts_mps, v.quantity(sensible_wind));
             }},
            {"rain",
             Need::may,
             [](const TripValue& v, Entry& e) { put(e.says.rain, v.yes_or_no()); }},
            {"humidity",
             Need::may,
             [](const TripValue& v, Entry& e) {
                 put(e.says.humidity, v.number({0.0, 1.0}));
             }},
            {"water",
             Need::may,
             [](const TripValue& v, Entry& e) {
                 put(e.says.water_c, v.quantity({Dimension::temperature, -2.0, 40.0}));
             }},
            {"snow",
             Need::may,
             [](const TripValue& v, Entry& e) { put(e.says.snow, v.yes_or_no()); }},
            {"snow_depth",
             Need::may,
             [](const TripValue& v, Entry& e) {
                 put(e.says.snow_depth_m, v.quantity({Dimension::length, 0.0, 10.0}));
             }},
            {"days", Need::may, read_weather_days},
            {"dates", Need::may, read_weather_dates},
            {"hours", Need::may, read_weather_hours},
            {"legs", Need::may, read_weather_legs},
        }};
    return section;
}

const Section<WeatherEntry>& leg_weather_section() {
    static const Section<WeatherEntry> section = [] {
        Section<WeatherEntry> own{"leg_weather", "the weather of a leg", {}};
        for (const Key<WeatherEntry>& key : weather_section().keys)
            if (key.name != "legs")
                own.keys.push_back(key);
        return own;
    }();
    return section;
}

void read_weather(const TripValue& value, Trip& trip) {
    trip.weather_listed = value.json().kind == Kind::list;
    if (!trip.weather_listed)
        read_section(value, weather_section(), trip.forecast.emplace_back());
    else if (is_short_enough(value, most_weather, "keep the entries that change a plan"))
        read_list(value, weather_section(), trip.forecast);
}

void sum_up_weather(Trip& trip) {
    std::vector<WeatherEntry> entries = trip.forecast;
    bool of_legs = false;
    for (const TripLeg& leg : trip.route.legs)
        if (leg.weather) {
            entries.push_back(*leg.weather);
            of_legs = true;
        }
    for (const WeatherEntry& entry : entries)
        make_harder(trip.weather, entry.says);
    trip.weather.wind_from_deg = even_bearing(entries);
    if (trip.weather.snow_depth_m && !trip.weather.snow)
        trip.weather.snow = *trip.weather.snow_depth_m > 0.0;
    if (of_legs && trip.forecast.empty())
        trip.forecast.emplace_back();
    if (!of_legs && trip.forecast.size() == 1 && !trip.forecast.front().limited())
        trip.forecast.clear();
}

} // namespace tumpline::planner
