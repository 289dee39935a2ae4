#pragma once

#include "geo/position.h"

#include <optional>
#include <string>
#include <vector>

namespace tumpline::geo {

/// A place in the grid of UTM (UPS about the poles).
struct GridPlace {
    int zone; ///< 1 to 60; 0 about a pole
    bool north;
    double easting_m;
    double northing_m;
    double convergence_deg; ///< of grid north from true north, clockwise positive
};

/// By Charles Karney's GeographicLib [Karney2011]; in the zone that the place is in by the rules,
/// or in `zone`. Empty where that zone does not reach.
[[nodiscard]] std::optional<GridPlace> grid_place(const Position& at,
                                                  std::optional<int> zone = std::nullopt);

/// Where a point of a zone lies.
[[nodiscard]] std::optional<Position> from_grid(const GridPlace& place);

/// "32V 541234 6824567": zone, band, easting and northing in metres.
[[nodiscard]] std::string utm_text(const Position& at);

/// "32VNN 41234 24567": the same in the military grid (MGRS), to a metre.
[[nodiscard]] std::string mgrs_text(const Position& at);

/// How far a compass points east of true north, from the newest of the World Magnetic Models
/// installed for GeographicLib that covers the year; empty where none does.
[[nodiscard]] std::optional<double> declination_deg(const Position& at, double year);

} // namespace tumpline::geo
