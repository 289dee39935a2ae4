#pragma once

#include <string>
#include <utility>
#include <vector>

namespace tumpline::test {

struct Series {
    std::string name;
    std::vector<std::pair<double, double>> points; ///< x and y, x rising
};

struct Axis {
    std::string label; ///< with the unit
    double from;
    double to;
    double tick;
};

struct LinePlot {
    std::string title;
    Axis x;
    Axis y;
    std::vector<Series> series; ///< at most six: in the order of the key beside the plot
};

/// A plot for the pages of the models, as SVG. Colours are Okabe and Ito's, told apart by dashes
/// too.
[[nodiscard]] std::string to_svg(const LinePlot& plot);

/// Expects that docs/models/NAME is the drawing of `plot`, so that no page shows old figures. With
/// TUMPLINE_REDRAW set in the environment the file is written anew.
void expect_drawn(const std::string& name, const LinePlot& plot);

} // namespace tumpline::test
