#include "planner/conditions/forecast.h"

#include "planner/conditions/calendar.h"
#include "planner/quantities/quantities.h"
#include "planner/trip/laid_over.h"

#include <algorithm>
#include <cmath>

namespace tumpline::planner {

namespace {

/// The hours at which an entry begins and ends, on one day.
void add_cuts(const WeatherEntry& entry, std::vector<double>& cuts_s) {
    if (!entry.hours)
        return;
    for (const double hour_s : {entry.hours->from_s, entry.hours->to_s}) {
        cuts_s.push_back(hour_s);
        cuts_s.push_back(hour_s + s_per_day);
    }
}

} // namespace

Forecast::Forecast(const Trip& trip)
    : start_(trip.start), throughout_(trip.weather), entries_(trip.forecast) {}

bool Forecast::on_day(const WeatherEntry& entry, int day) const {
    if (!entry.days.empty() &&
        std::find(entry.days.begin(), entry.days.end(), day) == entry.days.end())
        return false;
    return !entry.dates || (start_.ok() && entry.dates->holds(date_of(start_, day)));
}

bool Forecast::applies(const WeatherEntry& entry, const LegOnDay& where) const {
    return on_day(entry, where.day) &&
           (entry.legs.empty() ||
            std::find(entry.legs.begin(), entry.legs.end(), where.leg.name) != entry.legs.end());
}

Weather Forecast::at(const LegOnDay& where, double after_midnight_s) const {
    const double days = std::floor(after_midnight_s / s_per_day);
    const LegOnDay that{where.leg, where.day + static_cast<int>(days)};
    const double hour_s = after_midnight_s - days * s_per_day;
    Weather weather = entries_.empty() ? throughout_ : Weather{};
    const auto lay = [&](const WeatherEntry& entry) {
        if (applies(entry, that) && (!entry.hours || entry.hours->holds(hour_s)))
            weather = laid_over(weather, entry.says);
    };
    for (const WeatherEntry& entry : entries_)
        lay(entry);
    if (where.leg.spec.weather)
        lay(*where.leg.spec.weather);
    return weather;
}

std::vector<WeatherSpell> Forecast::spells(const LegOnDay& where) const {
    std::vector<double> cuts_s{0.0};
    if (!even()) {
        cuts_s.push_back(s_per_day);
        for (const WeatherEntry& entry : entries_)
            add_cuts(entry, cuts_s);
        if (where.leg.spec.weather)
            add_cuts(*where.leg.spec.weather, cuts_s);
    }
    std::sort(cuts_s.begin(), cuts_s.end());
    cuts_s.erase(std::unique(cuts_s.begin(), cuts_s.end()), cuts_s.end());
    std::vector<WeatherSpell> spells;
    for (const double cut_s : cuts_s) {
        const Weather weather = at(where, cut_s);
        if (!spells.empty() && spells.back().weather == weather)
            continue;
        if (!spells.empty())
            spells.back().to_s = cut_s;
        spells.push_back({cut_s, HUGE_VAL, weather});
    }
    return spells;
}

std::optional<double> Forecast::deepest_snow_m(const LegOnDay& where) const {
    std::optional<double> deepest_m;
    for (const WeatherSpell& spell : spells(where))
        if (spell.from_s < s_per_day && spell.weather.snow_depth_m)
            deepest_m = std::max(deepest_m.value_or(0.0), *spell.weather.snow_depth_m);
    return deepest_m;
}

std::optional<bool> Forecast::snow_lies(const LegOnDay& where) const {
    if (const std::optional<double> deepest_m = deepest_snow_m(where))
        return *deepest_m > 0.0;
    std::optional<bool> lies;
    for (const WeatherSpell& spell : spells(where))
        if (spell.from_s < s_per_day && spell.weather.snow)
            lies = lies.value_or(false) || *spell.weather.snow;
    return lies;
}

bool Forecast::snow_changes_by_day(const RouteLeg& leg) const {
    const auto by_day = [](const WeatherEntry& entry) {
        return entry.says.snow_depth_m && (!entry.days.empty() || entry.dates);
    };
    return std::any_of(entries_.begin(), entries_.end(), by_day) ||
           (leg.spec.weather && by_day(*leg.spec.weather));
}

std::vector<std::size_t> Forecast::on_no_day_of(int days) const {
    std::vector<std::size_t> never;
    for (std::size_t i = 0; i < entries_.size(); ++i) {
        bool met = false;
        for (int day = 1; day <= days && !met; ++day)
            met = on_day(entries_[i], day);
        if (!met)
            never.push_back(i + 1);
    }
    return never;
}

std::optional<double> Forecast::warmest_c(int day) const {
    std::optional<double> warmest_c;
    if (entries_.empty())
        return throughout_.high_c;
    for (const WeatherEntry& entry : entries_) {
        if (!on_day(entry, day) || !entry.says.high_c)
            continue;
        // What holds all day everywhere replaces what was said before; the rest is beside it.
        if (!warmest_c || (!entry.hours && entry.legs.empty()))
            warmest_c = entry.says.high_c;
        else
            warmest_c = std::max(*warmest_c, *entry.says.high_c);
    }
    return warmest_c;
}

} // namespace tumpline::planner
