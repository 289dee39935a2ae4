#pragma once

#include "geo/ground/height_grid.h"

#include <span>
#include <vector>

namespace tumpline::geo {

/// A line of equal height; higher ground lies on its right.
struct ContourLine {
    double height_m;
    std::vector<MapPoint> points;

    [[nodiscard]] bool closed() const;
};

/// Lines at every multiple of `interval_m` (1 m at least), by the GDAL library's contouring. Where
/// a height is unknown they end.
[[nodiscard]] std::vector<ContourLine> contours(const HeightGrid& grid, double interval_m);

/// Ground and the scale of its map.
struct MapRelief {
    double steep_slope; ///< rise over run, as steep_slope() tells it
    double denominator; ///< of the scale, 100000 for 1:100 000
};

/// Which interval a map can hold: the smallest of the ascending steps at which lines on the steep
/// ground stay 0.25 mm apart on paper; the last one where none is large enough.
/// Source: [Imhof1982]: 0.25 mm is the least distance between lines on paper.
[[nodiscard]] double contour_interval_m(const MapRelief& relief, std::span<const double> steps_m);

} // namespace tumpline::geo
