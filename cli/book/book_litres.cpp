#include "cli/drawing/load_band.h"
#include "cli/drawing/load_band_line.h"
#include "planner/quantities/quantities.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace tumpline::cli {

namespace {

/// Where things lie in the drawing, and how much a litre and a kilometre are in it.
struct LitresLayout {
    double left, right, top, foot;
    double height;
    double length_m;
    double most; ///< at the top, in the reader's unit
    double unit_l;

    [[nodiscard]] double x(double along_m) const {
        return length_m > 0.0 ? left + along_m / length_m * (right - left) : left;
    }

    [[nodiscard]] double y(double litres) const {
        return foot - std::clamp(litres / unit_l / most, 0.0, 1.0) * (foot - top);
    }
};

LitresLayout layout(const planner::Plan& plan, const Drawing& drawing, bool metric) {
    double most_l = 0.0;
    for (const planner::Litres& point : plan.litres)
        most_l = std::max(most_l, point.each_l);
    for (const planner::WaterStretch& stretch : plan.water)
        most_l = std::max(most_l, stretch.capacity_l);
    const double t = drawing.text;
    const double unit_l = metric ? 1.0 : planner::l_per_us_gallon / 4.0;
    return {.left = 4.0 * t,
            .right = drawing.width - 0.8 * t,
            .top = 1.2 * t,
            .foot = 9.2 * t,
            .height = 11.8 * t,
            .length_m = plan.totals.distance_m,
            .most = std::max(most_l / unit_l, 1.0),
            .unit_l = unit_l};
}

std::string litres_axis(const LitresLayout& made, const Drawing& drawing, const char* unit) {
    std::string markup;
    const double step = round_step(made.most / 4.0);
    const long last = std::lround(std::floor(made.most / step + 1e-9));
    for (long i = 0; i <= last; ++i) {
        const double value = static_cast<double>(i) * step;
        const double y = made.y(value * made.unit_l);
        markup += fmt::format(
            R"(<path class="rule" d="M{} {}H{}"/><text class="tick end" x="{}" y="{}" font-size="{}">{:g}{}</text>)",
            coordinate(made.left),
            coordinate(y),
            coordinate(made.right),
            coordinate(made.left - 4.0),
            coordinate(y + 0.32 * drawing.text),
            coordinate(0.85 * drawing.text),
            value,
            i == last ? unit : "");
    }
    return markup;
}

std::string way_axis(const LitresLayout& made, const Drawing& drawing, bool metric) {
    const double unit_m = metric ? 1000.0 : planner::m_per_mile;
    const double length = made.length_m / unit_m;
    const double most = (made.right - made.left) / (4.2 * drawing.text);
    const double step = round_step(std::max(length / most, 0.1));
    std::string markup;
    const long last = std::lround(std::floor(length / step + 1e-9));
    for (long i = 0; i <= last; ++i) {
        const double x = made.x(static_cast<double>(i) * step * unit_m);
        const bool ends = x > made.right - 2.5 * drawing.text;
        markup += fmt::format(
            R"(<path class="rule" d="M{0} {1}v4"/><text class="tick {2}" x="{0}" y="{3}" font-size="{4}">{5:g}{6}</text>)",
            coordinate(x),
            coordinate(made.foot),
            ends ? "end" : "mid",
            coordinate(made.foot + 1.4 * drawing.text),
            coordinate(0.85 * drawing.text),
            static_cast<double>(i) * step,
            i == last ? (metric ? " km" : " mi") : "");
    }
    return markup;
}

/// The litres as an area, what the vessels hold as a dashed line, nights as dotted ones.
std::string litres_markup(const planner::Plan& plan, const LitresLayout& made) {
    std::vector<DrawnPoint> line;
    for (const planner::Litres& point : plan.litres)
        line.push_back({made.x(point.along_m), made.y(point.each_l), point.along_m});
    if (line.empty())
        return {};
    std::vector<DrawnPoint> area = line;
    area.push_back({line.back().x, made.foot, 0.0});
    area.push_back({line.front().x, made.foot, 0.0});
    std::string markup =
        fmt::format(R"(<path class="ground" d="{}z"/><path class="skyline" d="{}"/>)",
                    path_data(area),
                    path_data(line));
    if (!plan.water.empty())
        markup += fmt::format(R"(<path class="vessels" d="M{} {}H{}"/>)",
                              coordinate(made.left),
                              coordinate(made.y(plan.water.front().capacity_l)),
                              coordinate(made.right));
    for (const planner::PlanDay& day : plan.days)
        if (!day.rest_day && &day != &plan.days.back())
            markup += fmt::format(R"(<path class="night-line" d="M{} {}V{}"/>)",
                                  coordinate(made.x(day.to_m)),
                                  coordinate(made.top),
                                  coordinate(made.foot));
    return markup;
}

} // namespace

std::string water_drawing(const planner::Plan& plan, const Drawing& drawing, const Shown& shown) {
    const bool metric = shown.system() == planner::UnitSystem::metric;
    const LitresLayout made = layout(plan, drawing, metric);
    return fmt::format(
        R"(<svg class="litres" viewBox="0 0 {} {}" role="img" aria-labelledby="{}-t"><title id="{}-t">Water in each person's vessels along the route</title>{}{}{}</svg>)",
        coordinate(drawing.width),
        coordinate(made.height),
        drawing.id,
        drawing.id,
        litres_axis(made, drawing, metric ? " L" : " qt"),
        litres_markup(plan, made),
        way_axis(made, drawing, metric));
}

} // namespace tumpline::cli
