#include "planner/cautions/weather_cautions.h"

#include "planner/cautions/caution_list.h"
#include "planner/models/cold.h"
#include "planner/models/heat.h"
#include "planner/models/waves.h"
#include "planner/trip/vocabulary.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace tumpline::planner {

namespace {

/// From here on the heat has a category in one of the two tables that asks walkers to rest.
constexpr double warm_wbgt_c = 25.5;
constexpr double cool_water_c = 15.0; // below it another note speaks
constexpr double mild_water_c = 21.0;
/// A warm wet afternoon; common practice, no source.
constexpr double stormy_c = 20.0;
constexpr double stormy_from_s = 12.0 * s_per_h;
constexpr double stormy_to_s = 18.0 * s_per_h;

/// The worst of a day, and where.
struct WorstOfDay {
    double figure;
    LegNumber leg;
    Weather weather;
};

/// Minutes of work in an hour: "20", "not at all".
std::string minutes_words(int minutes) {
    return minutes == 0 ? std::string("not at all") : fmt::format("{} min", minutes);
}

/// Who says how far the open water reaches.
std::string_view fetch_words(FetchFrom from) {
    switch (from) {
    case FetchFrom::trip:
        return "";
    case FetchFrom::layers:
        return " by the map's layers";
    case FetchFrom::length:
        return " at least: its fetch is not known (\"fetch\")";
    }
    return "";
}

class WeatherWatch {
  public:
    WeatherWatch(const Assembly& draft, const Plan& plan) : draft_(draft), plan_(plan) {}

    std::vector<Caution> run() {
        for (const PlanLeg& leg : plan_.legs) {
            list_.at(leg.day, leg.leg);
            waves(leg);
            wind_rises(leg);
            thunderstorms(leg);
        }
        list_.anywhere();
        heat();
        chill();
        frost();
        mild_water();
        camp_late();
        other_days();
        return list_.take();
    }

  private:
    void waves(const PlanLeg& leg);
    void wind_rises(const PlanLeg& leg);
    void thunderstorms(const PlanLeg& leg);
    void heat();
    /// At its worst on `day`; asked to rest on all of `days`.
    void heat_on(int day, const WorstOfDay& worst, const std::vector<int>& days);
    void chill();
    void frost();
    void mild_water();
    void camp_late();
    void other_days();

    /// Of each day the spell of weather met under way with the highest figure.
    template <typename Figure> std::map<int, WorstOfDay> worst_of_days(Figure figure) const;

    [[nodiscard]] const TripLeg& spec(const PlanLeg& leg) const {
        return draft_.prepared.route.legs[leg.leg.index()].spec;
    }

    [[nodiscard]] std::string clock(sys_seconds at) const {
        return clock_words(at, draft_.prepared.assumed.time_zone);
    }

    const Assembly& draft_;
    const Plan& plan_;
    CautionList list_;
};

void WeatherWatch::waves(const PlanLeg& leg) {
    if (!leg.waves || leg.waves->height_m < steep_waves_m)
        return;
    const PlanWaves& waves = *leg.waves;
    const bool crossing = spec(leg).open_crossing.value_or(false);
    const std::vector<AssumedCraft>& craft = draft_.prepared.assumed.craft;
    const bool all_kayaks = std::all_of(craft.begin(), craft.end(), [](const AssumedCraft& one) {
        return one.kind == HullKind::kayak;
    });
    const bool over = waves.height_m >= most_waves_m;
    const UnitText height(fmt::format("{:.1f} m", waves.height_m),
                          fmt::format("{:.1f} ft", waves.height_m / m_per_foot));
    Caution& caution = list_.add(
        over && crossing && !all_kayaks ? Level::stop : Level::caution,
        "waves",
        format_both("Waves of about {} every {:.1f} s under {} of wind over {} of open water{}; "
                    "one in a hundred is half as high again. {}",
                    height,
                    waves.period_s,
                    wind_words(waves.wind_mps),
                    in_both(show_distance, waves.fetch_m),
                    fetch_words(waves.fetch_from),
                    over ? "Open and inflatable boats do not cross in that: wait, or carry."
                         : "Short and steep: hug the sheltered shore, and cross nothing wide."),
        "CEM2015");
    set_figure(caution, height, waves.height_m);
}

void WeatherWatch::wind_rises(const PlanLeg& leg) {
    if (!leg.wind_rises)
        return;
    const WindRise& rise = *leg.wind_rises;
    const auto left_s = static_cast<double>((rise.at - leg.end).count());
    list_.add(Level::note,
              "wind-rises",
              format_both("Off the water by {}: then the wind rises to {}, above the ceiling of {} "
                          "for {}. {}",
                          clock(rise.at),
                          wind_words(rise.wind_mps),
                          wind_words(rise.ceiling_mps),
                          rise.craft,
                          left_s >= 0.0
                              ? fmt::format("The plan is off it at {}, {} before.",
                                            clock(leg.end),
                                            show_duration(left_s))
                              : fmt::format("The plan is on it until {}: set off earlier, or wait "
                                            "for the evening.",
                                            clock(leg.end))));
}

/// An afternoon's note for open water, on a day that is warm and wet.
void WeatherWatch::thunderstorms(const PlanLeg& leg) {
    if (!afloat(leg.travel) || spec(leg).on_water() == Water::river)
        return;
    for (std::size_t i = 0; i < draft_.settled.timeline.stretches.size(); ++i) {
        const StretchTime& time = draft_.settled.timeline.stretches[i];
        if (draft_.prepared.stretches.stretches[i].leg != leg.leg || time.day != leg.day ||
            time.end_s <= stormy_from_s || time.start_s >= stormy_to_s)
            continue;
        const RouteLeg& route_leg = draft_.prepared.route.legs[leg.leg.index()];
        const Weather weather = draft_.prepared.assumed.forecast.at(
            {route_leg, leg.day}, std::max(time.start_s, stormy_from_s));
        if (!weather.rain.value_or(false) || weather.high_c.value_or(0.0) < stormy_c)
            continue;
        list_.add(Level::note,
                  "thunderstorms",
                  fmt::format("On open water from {} to {} on a warm day with rain: thunderstorms "
                              "grow in the afternoon. Off the water at the first thunder, and "
                              "cross in the morning if you can. The forecast of the day decides.",
                              clock(leg.start),
                              clock(leg.end)));
        return;
    }
}

template <typename Figure>
std::map<int, WorstOfDay> WeatherWatch::worst_of_days(Figure figure) const {
    std::map<int, WorstOfDay> worst;
    const Prepared& prepared = draft_.prepared;
    for (std::size_t i = 0; i < draft_.settled.timeline.stretches.size(); ++i) {
        const StretchTime& time = draft_.settled.timeline.stretches[i];
        const LegNumber leg = prepared.stretches.stretches[i].leg;
        for (const WeatherSpell& spell :
             prepared.assumed.forecast.spells({prepared.route.legs[leg.index()], time.day})) {
            if (spell.to_s <= time.start_s || spell.from_s >= time.end_s)
                continue;
            const std::optional<double> here = figure(spell.weather);
            const auto so_far = worst.find(time.day);
            if (here && (so_far == worst.end() || *here > so_far->second.figure))
                worst.insert_or_assign(time.day, WorstOfDay{*here, leg, spell.weather});
        }
    }
    return worst;
}

void WeatherWatch::heat() {
    const auto index = [](const Weather& weather) -> std::optional<double> {
        if (!weather.high_c || !weather.humidity)
            return std::nullopt;
        return wbgt_c({.temperature_c = *weather.high_c, .humidity = *weather.humidity});
    };
    std::vector<int> days;
    std::optional<std::pair<int, WorstOfDay>> hottest;
    for (const auto& [day, worst] : worst_of_days(index)) {
        if (worst.figure < warm_wbgt_c)
            continue;
        days.push_back(day);
        if (!hottest || worst.figure > hottest->second.figure)
            hottest.emplace(day, worst);
    }
    if (hottest)
        heat_on(hottest->first, hottest->second, days);
    list_.anywhere();
}

void WeatherWatch::heat_on(int day, const WorstOfDay& worst, const std::vector<int>& days) {
    list_.at(day, worst.leg);
    const std::optional<int> category = heat_category(worst.figure);
    const auto used_to = [&](Effort effort) {
        const int minutes = category ? work_minutes(*category, effort) : 60;
        return minutes == 60 ? std::string("without a limit") : minutes_words(minutes);
    };
    const auto not_used_to = [&](Effort effort) {
        return minutes_words(unused_work_minutes(worst.figure, effort).value_or(60));
    };
    const UnitText about = in_both(show_temperature, std::round(worst.figure));
    Caution& caution = list_.add(
        Level::caution,
        "heat",
        format_both(
            "Air of {} at {:.0f} % humidity is about {} by the index of heat at work (wet-bulb "
            "globe, in sun and light wind){}. In each hour people used to it walk under a pack {} "
            "and "
            "carry {}; people not used to it walk {} and carry {}, with {:.2f} L and {:.2f} L to "
            "drink. The plan's times hold none of these rests: walk early, halt at midday, and "
            "heed local heat warnings.",
            in_both(show_temperature, *worst.weather.high_c),
            100.0 * *worst.weather.humidity,
            about,
            days.size() > 1 ? fmt::format("; hot on days {}", fmt::join(days, ", ")) : "",
            used_to(Effort::moderate),
            used_to(Effort::hard),
            not_used_to(Effort::moderate),
            not_used_to(Effort::hard),
            unused_litres(worst.figure, Effort::moderate).value_or(0.0),
            unused_litres(worst.figure, Effort::hard).value_or(0.0)),
        "DNDHeat");
    set_figure(caution, format_both("index {}", about), worst.figure);
}

void WeatherWatch::chill() {
    const auto coldest = [](const Weather& weather) {
        return weather.low_c ? weather.low_c : weather.high_c;
    };
    const auto cold = [&](const Weather& weather) -> std::optional<double> {
        const std::optional<double> air_c = coldest(weather);
        if (!air_c || !weather.wind_mps)
            return std::nullopt;
        return -wind_chill({.air_c = *air_c, .wind_mps = *weather.wind_mps});
    };
    for (const auto& [day, worst] : worst_of_days(cold)) {
        if (-worst.figure > least_chill)
            continue;
        list_.at(day, worst.leg);
        const std::optional<Frostbite> frostbite = frostbite_in(-worst.figure);
        Caution& caution = list_.add(
            frostbite ? Level::caution : Level::note,
            "wind-chill",
            format_both("At the coldest of the day, {}, a wind of {} chills a face as {:.0f} on "
                        "the index of wind chill. {} Wet skin freezes sooner.",
                        in_both(show_temperature, *coldest(worst.weather)),
                        wind_words(*worst.weather.wind_mps),
                        -worst.figure,
                        !frostbite ? std::string("Frostbite is a low risk.")
                        : frostbite->from_min > 0.0
                            ? fmt::format("Bare skin freezes within {:.0f} to {:.0f} minutes.",
                                          frostbite->from_min,
                                          frostbite->to_min)
                            : fmt::format("Bare skin freezes in less than {:.0f} minutes.",
                                          frostbite->to_min)),
            frostbite ? "FrostbiteBands" : "WindChill2001");
        set_figure(caution, fmt::format("index {:.0f}", -worst.figure), worst.figure);
    }
    list_.anywhere();
}

/// Of the nights in camp, the coldest with frost.
void WeatherWatch::frost() {
    constexpr double late_s = 23.0 * s_per_h;
    std::optional<double> coldest_c;
    int day = 0;
    const std::vector<DaySpan>& days = draft_.settled.timeline.days;
    for (std::size_t d = 0; d + 1 < days.size(); ++d) {
        if (days[d].last == 0)
            continue;
        const LegNumber leg = draft_.prepared.stretches.stretches[days[d].last - 1].leg;
        const Weather weather = draft_.prepared.assumed.forecast.at(
            {draft_.prepared.route.legs[leg.index()], days[d].day}, late_s);
        if (!weather.low_c || *weather.low_c >= 0.0 || (coldest_c && *weather.low_c >= *coldest_c))
            continue;
        coldest_c = weather.low_c;
        day = days[d].day;
    }
    if (!coldest_c)
        return;
    list_.at(day);
    Caution& caution =
        list_.add(Level::note,
                  "frost",
                  format_both("Frost at night, down to {}: water freezes in bottles and filters "
                              "(which it may ruin), wet boots and lines stiffen, and gas burns "
                              "weakly. Whether the shelter and the beds are meant for that is not "
                              "judged.",
                              in_both(show_temperature, *coldest_c)));
    set_figure(caution, in_both(show_temperature, *coldest_c), -*coldest_c);
    list_.anywhere();
}

void WeatherWatch::mild_water() {
    const std::optional<double>& water_c = draft_.prepared.assumed.weather.water_c;
    if (!water_c || *water_c < cool_water_c || *water_c >= mild_water_c ||
        plan_.totals.paddle_m + plan_.totals.led_m <= 0.0)
        return;
    list_.add(Level::note,
              "cold-water",
              format_both("Water at {} is {}. Dress for the water, not for the air.",
                          in_both(show_temperature, *water_c),
                          cold_water_stage(*water_c).value_or("cool")),
              "CWSafety");
}

void WeatherWatch::camp_late() {
    const std::optional<seconds>& wish = draft_.prepared.trip.days.in_camp_before_dark;
    if (!wish)
        return;
    const auto wish_s = static_cast<double>(wish->count());
    for (const PlanDay& day : plan_.days) {
        if (day.rest_day || &day == &plan_.days.back() || !day.before_dusk_s ||
            *day.before_dusk_s >= wish_s)
            continue;
        list_.at(day.day);
        const std::string left =
            *day.before_dusk_s >= 0.0
                ? fmt::format("{} before dusk", show_duration(*day.before_dusk_s))
                : fmt::format("{} after dusk", show_duration(-*day.before_dusk_s));
        Caution& caution =
            list_.add(Level::caution,
                      "camp-late",
                      fmt::format("In camp at {} at {}, {}; asked were {} before it.",
                                  day.to,
                                  clock(day.arrive),
                                  left,
                                  show_duration(wish_s)));
        set_figure(caution, left, wish_s - *day.before_dusk_s);
    }
    list_.anywhere();
}

void WeatherWatch::other_days() {
    for (const std::size_t entry :
         draft_.prepared.assumed.forecast.on_no_day_of(plan_.days.back().day))
        list_.add(
            Level::caution,
            "weather-other-days",
            fmt::format("Entry {} of the weather is for days or dates that this plan does not "
                        "have: it changes nothing.",
                        entry));
}

} // namespace

std::vector<Caution> weather_cautions(const Assembly& draft, const Plan& plan) {
    return WeatherWatch(draft, plan).run();
}

} // namespace tumpline::planner
