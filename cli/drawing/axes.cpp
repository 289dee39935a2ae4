#include "cli/drawing/axes.h"

#include "cli/drawing/load_band_line.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace tumpline::cli {

namespace {

/// The whole numbers of steps between two values.
struct Steps {
    long first;
    long last;
};

// NOLINTNEXTLINE(bugprone-easily-swappable-parameters): as one writes an interval
Steps steps_between(double low, double high, double step) {
    return {std::lround(std::ceil(low / step - 1e-9)), std::lround(std::floor(high / step + 1e-9))};
}

} // namespace

double Plot::x(double along_m) const {
    const double length_m = stretch.to_m - stretch.from_m;
    return length_m > 0.0 ? left + (along_m - stretch.from_m) / length_m * (right - left) : left;
}

double Axis::y(double value, const Plot& plot) const {
    return high > low ? plot.foot - (value - low) / (high - low) * (plot.foot - plot.top)
                      : plot.foot;
}

std::string axis_markup(const Axis& axis, const Plot& plot, const Drawing& drawing) {
    constexpr long most_rules = 20;
    std::string markup;
    const Steps steps = steps_between(axis.low, axis.high, axis.step);
    for (long i = steps.first; i <= steps.last && i - steps.first < most_rules; ++i) {
        const double value = static_cast<double>(i) * axis.step;
        const double y = axis.y(value, plot);
        markup += fmt::format(
            R"(<path class="rule" d="M{} {}H{}"/><text class="tick end" x="{}" y="{}" font-size="{}">{:g}{}</text>)",
            coordinate(plot.left),
            coordinate(y),
            coordinate(plot.right),
            coordinate(plot.left - 0.8 * drawing.text), // clear of a mark on the axis
            coordinate(y + 0.32 * drawing.text),
            coordinate(drawing.text),
            value,
            i == steps.last ? axis.unit : "");
    }
    return markup;
}

std::string distance_axis(const Plot& plot, const Drawing& drawing, planner::UnitSystem units) {
    constexpr long most_numbers = 60;
    const bool metric = units == planner::UnitSystem::metric;
    const double unit_m = metric ? 1000.0 : planner::m_per_mile;
    const double length = (plot.stretch.to_m - plot.stretch.from_m) / unit_m;
    const double most = (plot.right - plot.left) / (4.9 * drawing.text);
    const double step = round_step(std::max(length / most, 0.1));
    const Steps steps =
        steps_between(plot.stretch.from_m / unit_m, plot.stretch.to_m / unit_m, step);
    std::string markup;
    for (long i = steps.first; i <= steps.last && i - steps.first < most_numbers; ++i) {
        const double value = static_cast<double>(i) * step;
        const double x = plot.x(value * unit_m);
        // The last number carries the unit and must not run out of the drawing.
        const bool ends = x > plot.right - 2.5 * drawing.text;
        markup += fmt::format(
            R"(<path class="rule" d="M{0} {1}v4"/><text class="tick {2}" x="{0}" y="{3}" font-size="{4}">{5:g}{6}</text>)",
            coordinate(x),
            coordinate(plot.foot),
            ends ? "end" : "mid",
            coordinate(plot.foot + 1.4 * drawing.text),
            coordinate(drawing.text),
            value,
            i == steps.last ? (metric ? " km" : " mi") : "");
    }
    return markup;
}

} // namespace tumpline::cli
