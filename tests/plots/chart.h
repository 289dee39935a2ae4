#pragma once

#include <string>
#include <vector>

namespace tumpline::plots {

struct Point {
    double x;
    double y;
};

/// A curve, with the name that stands beside it; it is lifted where y is not a number.
struct Line {
    std::string name;
    std::vector<Point> points;
};

/// Figures printed or rounded, drawn as marks, each with its own name.
struct Mark {
    std::string name;
    Point at;
};

struct Axis {
    std::string title;
    double from;
    double to;
    double tick;
};

/// One plot of docs/models. Lines take colours and dashes from a fixed list in their order; the
/// colours are those of Okabe and Ito, told apart by people with any kind of colour vision.
struct Chart {
    std::string name; ///< of the file, without .svg
    std::string title;
    Axis x;
    Axis y;
    std::vector<Line> lines;
    std::vector<Mark> marks;
};

/// The curve of `function` over the x axis of `chart` in 240 even steps.
template <class Function> Line curve(const Chart& chart, std::string name, Function function) {
    Line line{.name = std::move(name), .points = {}};
    constexpr int steps = 240;
    for (int step = 0; step <= steps; ++step) {
        const double x = chart.x.from + (chart.x.to - chart.x.from) * step / steps;
        line.points.push_back({.x = x, .y = function(x)});
    }
    return line;
}

/// The chart as SVG, to a tenth of a pixel, so that it is the same on every machine.
[[nodiscard]] std::string to_svg(const Chart& chart);

/// Charts of the families of models on foot.
[[nodiscard]] std::vector<Chart> charts_on_foot();

/// Charts of heights and their noise.
[[nodiscard]] std::vector<Chart> charts_of_heights();

/// Charts of paddling, rivers, wind, and of what one drinks, eats and burns.
[[nodiscard]] std::vector<Chart> charts_on_water();

} // namespace tumpline::plots
