#pragma once

#include "geo/position.h"

#include <vector>

namespace tumpline::geo {

/// A stretch of the Earth between two parallels and two meridians.
struct GeoBox {
    double south_deg;
    double north_deg;
    double west_deg; ///< may lie below -180, or east_deg beyond 180, where the box crosses 180
    double east_deg;

    [[nodiscard]] bool contains(const Position& at) const;

    /// Whether it reaches a pole or crosses the 180th meridian, so that it is no plain rectangle.
    [[nodiscard]] bool odd() const;
};

/// The box around points with a margin in metres; points must not be empty.
[[nodiscard]] GeoBox box_around(const std::vector<Position>& points, double margin_m);

} // namespace tumpline::geo
