#pragma once

#include "cli/drawing/load_band.h"

#include <string>
#include <string_view>

/// The axes of charts along the route: values from left to right and from foot to top.
namespace tumpline::cli {

/// Where a chart's plot lies in its drawing.
struct Plot {
    double left, right, foot, top; ///< pixels
    Stretch stretch;               ///< of the route, from left to right

    [[nodiscard]] double x(double along_m) const;
};

/// A vertical axis, in the reader's unit.
struct Axis {
    double low, high; ///< values at foot and top
    double step;
    std::string_view unit; ///< stands beside the highest number

    /// In a plot; foot and top may be those of a part of it.
    [[nodiscard]] double y(double value, const Plot& plot) const;
};

/// Rules across the plot with their numbers on the left.
[[nodiscard]] std::string axis_markup(const Axis& axis, const Plot& plot, const Drawing& drawing);

/// Kilometres or miles under the plot.
[[nodiscard]] std::string
distance_axis(const Plot& plot, const Drawing& drawing, planner::UnitSystem units);

} // namespace tumpline::cli
