#pragma once

#include "planner/route/route.h"
#include "planner/trip/trip.h"

#include <optional>
#include <vector>

/// The weather that the trip file expects, asked for by place and hour. All other rooms ask here.
namespace tumpline::planner {

/// A leg of the route on a day of the trip (from 1).
struct LegOnDay {
    const RouteLeg& leg;
    int day;
};

/// Weather that lasts from one moment of a day to another, seconds after its midnight.
struct WeatherSpell {
    double from_s;
    double to_s;
    Weather weather;
};

class Forecast {
  public:
    Forecast() = default;
    explicit Forecast(const Trip& trip);

    /// Whether the weather is the same on every leg at every hour.
    [[nodiscard]] bool even() const { return entries_.empty(); }

    /// What holds on a leg at an hour of a day: of the entries that apply, key by key, the last; a
    /// leg's own weather lies on top. What nobody gave stays empty.
    [[nodiscard]] Weather at(const LegOnDay& where, double after_midnight_s) const;

    /// The same from the day's midnight on, one spell after the other; the last one has no end.
    /// Hours past the next midnight are those of the next day.
    [[nodiscard]] std::vector<WeatherSpell> spells(const LegOnDay& where) const;

    /// The warmest that is expected on a day anywhere, if that is given.
    [[nodiscard]] std::optional<double> warmest_c(int day) const;

    /// The deepest snow that is expected on a leg on a day, if that is given.
    [[nodiscard]] std::optional<double> deepest_snow_m(const LegOnDay& where) const;

    /// Whether snow lies on a leg on a day; empty where nobody says.
    [[nodiscard]] std::optional<bool> snow_lies(const LegOnDay& where) const;

    /// Whether the depth of the snow on a leg may differ from day to day.
    [[nodiscard]] bool snow_changes_by_day(const RouteLeg& leg) const;

    /// The entries of the list (from 1) whose days or dates are none of a trip of so many days.
    [[nodiscard]] std::vector<std::size_t> on_no_day_of(int days) const;

  private:
    [[nodiscard]] bool applies(const WeatherEntry& entry, const LegOnDay& where) const;
    [[nodiscard]] bool on_day(const WeatherEntry& entry, int day) const;

    Date start_{};
    Weather throughout_;
    std::vector<WeatherEntry> entries_;
};

} // namespace tumpline::planner
