#include "cli/drawing/axes.h"
#include "cli/drawing/load_band.h"
#include "cli/drawing/load_band_line.h"
#include "planner/quantities/quantities.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace tumpline::cli {

namespace {

/// Where things lie in the drawing, and how much a litre is in it.
struct LitresLayout {
    Plot plot;
    Axis axis;
    double height;
    double unit_l;

    [[nodiscard]] double x(double along_m) const { return plot.x(along_m); }

    [[nodiscard]] double y(double litres) const {
        return axis.y(std::clamp(litres / unit_l, axis.low, axis.high), plot);
    }
};

LitresLayout layout_of(const planner::Plan& plan, const Drawing& drawing, bool metric) {
    double most_l = 0.0;
    for (const planner::Litres& point : plan.litres)
        most_l = std::max(most_l, point.each_l);
    for (const planner::WaterStretch& stretch : plan.water)
        most_l = std::max(most_l, stretch.capacity_l);
    const double t = drawing.text;
    const double unit_l = metric ? 1.0 : planner::l_per_us_gallon / 4.0;
    const double most = std::max(most_l / unit_l, 1.0);
    return {.plot = {.left = 4.6 * t,
                     .right = drawing.width - 0.8 * t,
                     .foot = 9.2 * t,
                     .top = 1.2 * t,
                     .stretch = {0.0, plan.totals.distance_m}},
            .axis = {0.0, most, round_step(most / 4.0), metric ? " L" : " qt"},
            .height = 11.8 * t,
            .unit_l = unit_l};
}

/// The litres as an area, what the vessels hold as a dashed line, nights as dotted ones.
std::string litres_markup(const planner::Plan& plan, const LitresLayout& made) {
    std::vector<DrawnPoint> line;
    for (const planner::Litres& point : plan.litres)
        line.push_back({made.x(point.along_m), made.y(point.each_l), point.along_m});
    if (line.empty())
        return {};
    std::vector<DrawnPoint> area = line;
    area.push_back({line.back().x, made.plot.foot, 0.0});
    area.push_back({line.front().x, made.plot.foot, 0.0});
    std::string markup =
        fmt::format(R"(<path class="ground" d="{}z"/><path class="skyline" d="{}"/>)",
                    path_data(area),
                    path_data(line));
    if (!plan.water.empty())
        markup += fmt::format(R"(<path class="vessels" d="M{} {}H{}"/>)",
                              coordinate(made.plot.left),
                              coordinate(made.y(plan.water.front().capacity_l)),
                              coordinate(made.plot.right));
    for (const planner::PlanDay& day : plan.days)
        if (!day.rest_day && &day != &plan.days.back())
            markup += fmt::format(R"(<path class="night-line" d="M{} {}V{}"/>)",
                                  coordinate(made.x(day.to_m)),
                                  coordinate(made.plot.top),
                                  coordinate(made.plot.foot));
    return markup;
}

} // namespace

std::string water_drawing(const planner::Plan& plan, const Drawing& drawing, const Figures& shown) {
    const bool metric = shown.units() == planner::UnitSystem::metric;
    const LitresLayout made = layout_of(plan, drawing, metric);
    return fmt::format(
        R"(<svg class="litres" viewBox="0 0 {} {}" role="img" aria-labelledby="{}-t"><title id="{}-t">Water in each person's vessels along the route</title>{}{}{}</svg>)",
        coordinate(drawing.width),
        coordinate(made.height),
        drawing.id,
        drawing.id,
        axis_markup(made.axis, made.plot, drawing),
        litres_markup(plan, made),
        distance_axis(made.plot, drawing, shown.units()));
}

} // namespace tumpline::cli
