#include "cli/drawing/load_band.h"
#include "cli/drawing/load_band_line.h"
#include "cli/words/markup.h"
#include "cli/words/words.h"
#include "planner/decisions/odds.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <optional>
#include <utility>

namespace tumpline::cli {

namespace {

using Hours = std::pair<double, double>;

/// Hours of local time since the day's midnight.
class DayClock {
  public:
    DayClock(const Figures& shown, planner::Date date)
        : zone_(shown.zone()), midnight_(std::chrono::sys_days(date).time_since_epoch()) {}

    [[nodiscard]] double hours(geo::sys_seconds instant) const {
        const auto since = geo::to_local(instant, zone_).time_since_epoch() - midnight_;
        return std::chrono::duration<double, std::ratio<3600>>(since).count();
    }

  private:
    std::string zone_;
    std::chrono::seconds midnight_;
};

/// When the sun is above an altitude between the day's two midnights.
std::vector<Hours> above(const geo::SunCrossings& crossings, const DayClock& clock) {
    const auto rise = crossings.rise ? std::optional(clock.hours(*crossings.rise)) : std::nullopt;
    const auto set = crossings.set ? std::optional(clock.hours(*crossings.set)) : std::nullopt;
    switch (crossings.day) {
    case geo::SunDay::always_above:
        return {{0.0, 24.0}};
    case geo::SunDay::always_below:
        return {};
    case geo::SunDay::rises_only:
        return {{rise.value_or(0.0), 24.0}};
    case geo::SunDay::sets_only:
        return {{0.0, set.value_or(24.0)}};
    case geo::SunDay::rises_and_sets:
        break;
    }
    if (!rise || !set)
        return {};
    if (*rise < *set)
        return {{*rise, *set}};
    return {{0.0, *set}, {*rise, 24.0}};
}

/// Hours of the day along a width.
struct Scale {
    double hours;
    double width;

    [[nodiscard]] double x(double hour) const {
        return 1.0 + std::clamp(hour, 0.0, hours) / hours * (width - 2.0);
    }
};

/// The hours that a day's clock shows: to the next midnight, or on until one arrives.
double hours_shown(const planner::PlanDay& day, const DayClock& clock) {
    const double last = std::clamp(clock.hours(day.arrive), 24.0, 72.0);
    return last > 24.0 ? 6.0 * std::ceil(last / 6.0) : 24.0;
}

/// Ticks with their hours, `below` the bar.
std::string hour_marks(const Scale& scale, double below, double text) {
    std::string ticks;
    const int step = scale.width >= 500.0 ? 2 : 4;
    for (int hour = 0; hour <= static_cast<int>(scale.hours); hour += step) {
        const char* side = hour == 0 ? "" : hour + step > scale.hours ? "end" : "mid";
        ticks += fmt::format(
            R"(<path class="rule" d="M{0} {1}v4"/><text class="tick {2}" x="{0}" y="{3}" font-size="{4}">{5:02}</text>)",
            coordinate(scale.x(hour)),
            coordinate(below),
            side,
            coordinate(below + 4.0 + text),
            coordinate(text),
            hour % 24);
    }
    return ticks;
}

} // namespace

std::string arrivals_drawing(const planner::PlanDay& day,
                             const planner::InstantQuantiles& arrive,
                             const Drawing& drawing,
                             const Figures& shown) {
    const DayClock clock(shown, day.date);
    const Scale scale{hours_shown(day, clock), drawing.width};
    const double high = 1.1 * drawing.text;
    const auto x = [&](geo::sys_seconds at) { return scale.x(clock.hours(at)); };

    struct Span {
        double from;
        double to;
    };

    const auto band = [&](const char* kind, const Span& span, double inset) {
        return fmt::format(R"(<rect class="{}" x="{}" y="{}" width="{}" height="{}"/>)",
                           kind,
                           coordinate(span.from),
                           coordinate(inset),
                           coordinate(std::max(1.0, span.to - span.from)),
                           coordinate(high - 2.0 * inset));
    };
    const auto line = [&](const char* kind, double at) {
        return fmt::format(
            R"(<path class="{}" d="M{} 0v{}"/>)", kind, coordinate(at), coordinate(high));
    };
    return fmt::format(
        R"(<svg class="arrivals" viewBox="0 0 {} {}" role="img" aria-labelledby="{}-t"><title id="{}-t">{}</title>{}{}{}{}</svg>)",
        coordinate(drawing.width),
        coordinate(high),
        drawing.id,
        drawing.id,
        escaped(fmt::format("Arrivals in the draws: 5 of 100 by {}, half by {}, 95 of 100 by {}",
                            shown.clock_on(arrive.q05, day.date),
                            shown.clock_on(arrive.q50, day.date),
                            shown.clock_on(arrive.q95, day.date))),
        band("most", {x(arrive.q05), x(arrive.q95)}, 0.3 * high),
        band("many", {x(arrive.q10), x(arrive.q90)}, 0.15 * high),
        line("half", x(arrive.q50)),
        line("planned", x(day.arrive)));
}

std::string day_drawing(const planner::Plan& plan,
                        const planner::PlanDay& day,
                        const Drawing& drawing,
                        const Figures& shown) {
    const DayClock clock(shown, day.date);
    const double t = drawing.text;
    const double hours = hours_shown(day, clock);
    const Scale scale{hours, drawing.width};
    const double top = 0.5 * t;
    const double bar = 1.9 * t;
    std::string sky;
    const auto stretch = [&](const Hours& of, const char* kind, double y, double high) {
        return fmt::format(R"(<rect class="{}" x="{}" y="{}" width="{}" height="{}"/>)",
                           kind,
                           coordinate(scale.x(of.first)),
                           coordinate(y),
                           coordinate(std::max(0.4, scale.x(of.second) - scale.x(of.first))),
                           coordinate(high));
    };
    sky += stretch({0.0, 24.0}, "dark", top, bar);
    if (hours > 24.0) // light is known for this date only
        sky += stretch({24.0, hours}, "unknown", top, bar);
    for (const Hours& light : above(day.light.twilight, clock))
        sky += stretch(light, "twilight", top, bar);
    for (const Hours& light : above(day.light.sun, clock))
        sky += stretch(light, "daylight", top, bar);
    std::string done;
    for (const planner::PlanLeg& leg : plan.legs) {
        if (leg.day != day.day)
            continue;
        const Hours of{clock.hours(leg.start), clock.hours(leg.end)};
        done += fmt::format(
            R"(<g class="area {}"><title>{}</title>)", word(leg.travel), escaped(leg.name));
        done += stretch(of, "fill", top + 0.35 * t, bar - 0.7 * t);
        done += stretch(of, "pattern", top + 0.35 * t, bar - 0.7 * t);
        done += stretch(of, "outline", top + 0.35 * t, bar - 0.7 * t) + "</g>";
    }
    return fmt::format(
        R"(<svg class="clock" viewBox="0 0 {} {}" role="img" aria-labelledby="{}-t"><title id="{}-t">Hours of the day: dark, twilight and light, with what is done when</title>{}{}{}</svg>)",
        coordinate(drawing.width),
        coordinate(top + bar + 5.0 + 1.2 * t),
        drawing.id,
        drawing.id,
        sky,
        done,
        hour_marks(scale, top + bar, t));
}

} // namespace tumpline::cli
