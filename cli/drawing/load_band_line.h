#pragma once

#include <string>
#include <vector>

/// Lines of a drawing: thinned to what a print resolves, written as SVG paths.
namespace tumpline::cli {

/// A point of a drawing (x right, y down, CSS pixels) and where it lies along the route.
struct DrawnPoint {
    double x;
    double y;
    double along_m;
};

/// What a print resolves at the drawing's full width on paper: 0.1 mm.
inline constexpr double resolved = 0.38;

/// Douglas and Peucker's simplification: no dropped point lies further than `tolerance` from the
/// line kept. The ends stay. Needs no recursion, however long the line.
[[nodiscard]] std::vector<DrawnPoint> simplified(const std::vector<DrawnPoint>& line,
                                                 double tolerance);

/// A coordinate with one decimal, without trailing zeros or exponent: "12.5", "-3".
[[nodiscard]] std::string coordinate(double value);

/// "M10 20l1.5 2"; empty for no points.
[[nodiscard]] std::string path_data(const std::vector<DrawnPoint>& line);

/// A pleasant step: 1, 2 or 5 times a power of ten, at least `least`.
[[nodiscard]] double round_step(double least);

} // namespace tumpline::cli
