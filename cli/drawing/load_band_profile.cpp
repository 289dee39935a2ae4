#include "cli/drawing/axes.h"
#include "cli/drawing/load_band.h"
#include "cli/drawing/load_band_line.h"
#include "cli/drawing/profile_names.h"
#include "cli/words/markup.h"
#include "cli/words/text_width.h"
#include "cli/words/words.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <optional>

namespace tumpline::cli {

namespace {

using planner::Plan;
using planner::Route;

/// Where things lie in the drawing.
struct BandLayout {
    Plot ground, band; ///< the one above the other
    double height;

    [[nodiscard]] double x(double along_m) const { return band.x(along_m); }

    [[nodiscard]] const Stretch& stretch() const { return band.stretch; }
};

/// From left to right.
Plot across(const Drawing& drawing, const Stretch& stretch) {
    const double t = drawing.text;
    Plot plot{};
    plot.left = 5.5 * t;
    plot.right = drawing.width - 0.8 * t;
    plot.stretch = stretch;
    return plot;
}

/// `names_height` is what the days' and places' names take over the ground.
BandLayout layout(const Drawing& drawing, const Plot& across, double names_height) {
    const double t = drawing.text;
    Plot ground = across;
    ground.top = 0.4 * t + names_height;
    ground.foot = ground.top + (drawing.names ? 9.0 : 3.0) * t;
    Plot band = ground;
    band.top = ground.foot + 1.2 * t;
    band.foot = band.top + (drawing.names ? 5.5 : 2.3) * t;
    return {ground, band, band.foot + 2.0 * t};
}

struct Ground {
    std::vector<DrawnPoint> line; ///< y in metres of height here
    double low_m = 0.0;
    double high_m = 0.0;
};

/// Heights over the stretch, the lowest and highest of each half pixel kept.
Ground ground(const Route& route, const BandLayout& layout) {
    Ground made;
    bool first = true;
    for (const planner::RouteLeg& leg : route.legs) {
        const auto& heights_m = leg.profile.heights_m;
        if (heights_m.size() < 2 || leg.to_m < layout.stretch().from_m ||
            leg.from_m > layout.stretch().to_m)
            continue;
        const double step_m = (leg.to_m - leg.from_m) / static_cast<double>(heights_m.size() - 1);
        long cell = -1;
        DrawnPoint low{};
        DrawnPoint high{};
        const auto flush = [&] {
            if (cell < 0)
                return;
            const bool low_first = low.along_m <= high.along_m;
            made.line.push_back(low_first ? low : high);
            if (low.along_m != high.along_m)
                made.line.push_back(low_first ? high : low);
        };
        for (std::size_t i = 0; i < heights_m.size(); ++i) {
            const double along_m = leg.from_m + static_cast<double>(i) * step_m;
            if (along_m < layout.stretch().from_m - step_m ||
                along_m > layout.stretch().to_m + step_m)
                continue;
            const double inside_m =
                std::clamp(along_m, layout.stretch().from_m, layout.stretch().to_m);
            const DrawnPoint point{layout.x(inside_m), heights_m[i], inside_m};
            made.low_m = first ? point.y : std::min(made.low_m, point.y);
            made.high_m = first ? point.y : std::max(made.high_m, point.y);
            first = false;
            const long here = std::lround(point.x * 2.0);
            if (here != cell) {
                flush();
                cell = here;
                low = high = point;
            }
            if (point.y < low.y)
                low = point;
            if (point.y > high.y)
                high = point;
        }
        flush();
    }
    return made;
}

/// So many steps that the numbers of an axis keep off each other, four at most.
double rules(const Plot& plot, double text) {
    return std::clamp((plot.foot - plot.top) / (1.9 * text), 1.0, 3.5);
}

/// In the reader's unit, with room for the ground's lowest and highest.
Axis ground_axis(const Ground& seen, double most_rules, planner::UnitSystem units) {
    const bool metric = units == planner::UnitSystem::metric;
    const double unit_m = metric ? 1.0 : planner::m_per_foot;
    const double low = seen.low_m / unit_m;
    const double high = std::max(seen.high_m / unit_m, low + 20.0);
    const double step = round_step((high - low) / most_rules);
    return {
        std::floor(low / step) * step, std::ceil(high / step) * step, step, metric ? " m" : " ft"};
}

std::string ground_markup(const Ground& seen,
                          const BandLayout& layout,
                          const Drawing& drawing,
                          const Figures& shown) {
    if (seen.line.size() < 2)
        return fmt::format(
            R"(<text class="tick" x="{}" y="{}" font-size="{}">Heights are unknown: taken as level.</text>)",
            coordinate(layout.ground.left + 6.0),
            coordinate((layout.ground.top + layout.ground.foot) / 2.0),
            coordinate(drawing.text));
    const double unit_m = shown.units() == planner::UnitSystem::metric ? 1.0 : planner::m_per_foot;
    const Axis axis = ground_axis(seen, rules(layout.ground, drawing.text), shown.units());
    std::vector<DrawnPoint> line = seen.line;
    for (DrawnPoint& point : line)
        point.y = axis.y(point.y / unit_m, layout.ground);
    line = simplified(line, resolved);
    std::vector<DrawnPoint> area = line;
    area.push_back({line.back().x, layout.ground.foot, 0.0});
    area.push_back({line.front().x, layout.ground.foot, 0.0});
    return fmt::format(R"({}<path class="ground" d="{}z"/><path class="skyline" d="{}"/>)",
                       axis_markup(axis, layout.ground, drawing),
                       path_data(area),
                       path_data(line));
}

/// The band as areas stacked by member, party order from the foot.
std::string band_markup(const Plan& plan,
                        const BandLayout& layout,
                        const Drawing& drawing,
                        const Figures& shown) {
    const std::vector<BandLeg> band = load_band(plan);
    const double unit_kg =
        shown.units() == planner::UnitSystem::metric ? 1.0 : planner::kg_per_pound;
    const double top = std::max(heaviest_kg(band) / unit_kg, 1.0);
    const Axis axis{0.0,
                    top,
                    round_step(top / std::min(2.5, rules(layout.band, drawing.text))),
                    shown.units() == planner::UnitSystem::metric ? " kg" : " lb"};
    std::string markup = axis_markup(axis, layout.band, drawing);
    for (const BandLeg& leg : band) {
        const planner::PlanLeg& reported = plan.legs[leg.plan_leg.index()];
        if (reported.to_m <= layout.stretch().from_m || reported.from_m >= layout.stretch().to_m)
            continue;
        const auto edge = [&](std::size_t members) {
            std::vector<DrawnPoint> line;
            for (const BandPoint& point : leg.points) {
                double sum_kg = 0.0;
                for (std::size_t i = 0; i < members; ++i)
                    sum_kg += point.member_kg[i];
                const double along_m =
                    std::clamp(point.along_m, layout.stretch().from_m, layout.stretch().to_m);
                line.push_back({layout.x(along_m), axis.y(sum_kg / unit_kg, layout.band), along_m});
            }
            return simplified(line, resolved);
        };
        const std::size_t members = plan.trip.party.size();
        std::vector<DrawnPoint> area = edge(members);
        const std::string outline = path_data(area);
        area.push_back({area.back().x, layout.band.foot, 0.0});
        area.push_back({area.front().x, layout.band.foot, 0.0});
        std::string seams;
        for (std::size_t i = 1; i < members; ++i)
            seams += fmt::format(R"(<path class="seam" d="{}"/>)", path_data(edge(i)));
        markup += fmt::format(
            R"(<g class="area {}" data-leg="{}"><title>{}: {}</title><path class="fill" d="{}z"/><path class="pattern" d="{}z"/><path class="outline" d="{}"/>{}</g>)",
            word(leg.travel),
            leg.plan_leg,
            escaped(reported.name),
            travel_phrase(leg.travel),
            path_data(area),
            path_data(area),
            outline,
            seams);
    }
    return markup;
}

/// How many days of travel a stretch has a part of.
long within_days(const Plan& plan, const Stretch& stretch) {
    return std::ranges::count_if(plan.days, [&](const planner::PlanDay& day) {
        return !day.rest_day && day.to_m > stretch.from_m && day.from_m < stretch.to_m;
    });
}

/// Days between dashed lines; a number is left out where there is no room for it.
std::string days_markup(const Plan& plan, const BandLayout& layout, const Drawing& drawing) {
    std::string markup;
    double free_from = 0.0;
    for (const planner::PlanDay& day : plan.days) {
        if (day.to_m <= layout.stretch().from_m || day.from_m >= layout.stretch().to_m ||
            day.rest_day)
            continue;
        const double from = layout.x(std::max(day.from_m, layout.stretch().from_m));
        const double to = layout.x(std::min(day.to_m, layout.stretch().to_m));
        if (day.to_m < layout.stretch().to_m)
            markup += fmt::format(R"(<path class="night-line" d="M{} {}V{}"/>)",
                                  coordinate(to),
                                  coordinate(0.9 * drawing.text),
                                  coordinate(layout.band.foot));
        const bool roomy = to - from > 4.0 * drawing.text;
        const std::string name =
            roomy ? fmt::format("day {}", day.day) : fmt::format("{}", day.day);
        const double half = drawing.text * width_em(name) / 2.0;
        const double middle = (from + to) / 2.0;
        if (middle - half < free_from)
            continue;
        free_from = middle + half + 3.0;
        markup += fmt::format(R"(<text class="day mid" x="{}" y="{}" font-size="{}">{}</text>)",
                              coordinate(middle),
                              coordinate(1.3 * drawing.text),
                              coordinate(drawing.text),
                              name);
    }
    return markup;
}

/// Places and nights of the stretch, at their x.
ProfileNames
names_of(const Plan& plan, const Route& route, const Plot& across, const Drawing& drawing) {
    std::vector<Mark> all;
    if (drawing.marks)
        all = marks(plan, route, [&](double along_m) {
            return DrawnPoint{across.x(along_m), 0.0, along_m};
        });
    std::erase_if(all, [&](const Mark& mark) {
        return mark.at.along_m < across.stretch.from_m - 1.0 ||
               mark.at.along_m > across.stretch.to_m + 1.0;
    });
    constexpr int most_rows = 4;
    return {std::move(all), {2.0, drawing.width - 2.0, drawing.text, most_rows}};
}

/// Puts every mark on the ground.
void settle(std::vector<Mark>& all,
            const Ground& seen,
            const BandLayout& layout,
            double text,
            const Figures& shown) {
    const double unit_m = shown.units() == planner::UnitSystem::metric ? 1.0 : planner::m_per_foot;
    const Axis axis = ground_axis(seen, rules(layout.ground, text), shown.units());
    for (Mark& mark : all) {
        const auto after =
            std::ranges::lower_bound(seen.line, mark.at.along_m, {}, &DrawnPoint::along_m);
        const auto at = after == seen.line.end() && !seen.line.empty() ? after - 1 : after;
        mark.at.y =
            seen.line.size() < 2 ? layout.ground.foot : axis.y(at->y / unit_m, layout.ground);
    }
}

} // namespace

std::string profile_drawing(const Plan& plan,
                            const Route& route,
                            const Stretch& stretch,
                            const Drawing& drawing,
                            const Figures& shown) {
    const Plot across = cli::across(drawing, stretch);
    ProfileNames names = names_of(plan, route, across, drawing);
    const bool days = within_days(plan, stretch) > 1;
    const BandLayout made =
        layout(drawing, across, names.height() + (days ? 1.8 * drawing.text : 0.0));
    const Ground seen = ground(route, made);
    settle(names.marks(), seen, made, drawing.text, shown);
    return fmt::format(
        R"(<svg class="profile" viewBox="0 0 {} {}" role="img" aria-labelledby="{}-t" data-from="{:.1f}" data-to="{:.1f}" data-left="{}" data-right="{}" data-foot="{}"><title id="{}-t">Profile of the ground, and under it the load borne along the way</title>{}{}{}{}{}</svg>)",
        coordinate(drawing.width),
        coordinate(made.height),
        drawing.id,
        stretch.from_m,
        stretch.to_m,
        coordinate(made.band.left),
        coordinate(made.band.right),
        coordinate(made.band.foot),
        drawing.id,
        ground_markup(seen, made, drawing, shown),
        drawing.marks ? names.markup(made.ground.top - 0.2 * drawing.text) : std::string(),
        band_markup(plan, made, drawing, shown),
        days ? days_markup(plan, made, drawing) : std::string(),
        distance_axis(made.band, drawing, shown.units()));
}

} // namespace tumpline::cli
