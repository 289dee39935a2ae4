#pragma once

#include "geo/position.h"

namespace tumpline::geo {

/// The shortest way between two points on WGS84.
struct Geodesic {
    double length_m;
    double start_azimuth_deg; ///< at the first point, clockwise from north, in [-180, 180]
    double end_azimuth_deg;   ///< at the second point, still pointing onwards
};

/// Length and azimuths between two points; exact to nanometres, any pair of points, antimeridian
/// and poles included. Coincident points: length 0 and azimuths 0.
/// Source: [Karney2013].
[[nodiscard]] Geodesic geodesic(const Position& from, const Position& to);

/// Length alone of `geodesic`, in metres; within a hundred metres by the triangle along the
/// meridian and the parallel of the middle, to some nanometres the same.
[[nodiscard]] double distance_m(const Position& from, const Position& to);

/// Where one arrives from `from` after `length_m` in the direction `azimuth_deg`.
[[nodiscard]] Position destination(const Position& from, double azimuth_deg, double length_m);

/// The point `length_m` along the geodesic from `from` towards `to`.
[[nodiscard]] Position towards(const Position& from, const Position& to, double length_m);

/// The direction there, still pointing onwards, in [-180, 180]; 0 if the points coincide. To a
/// hundred thousandth of a degree: where the two lie within two kilometres or so by the triangle
/// along the meridian and the parallel of their middle, else by the geodesic itself.
[[nodiscard]] double azimuth_deg_on(const Position& from, const Position& to, double length_m);

/// Metres from the middle of the earth, along its axes. The straight line between two points is
/// never longer than the geodesic and cheap to have: a bound that knows no antimeridian and no
/// pole.
struct Straight {
    double x_m;
    double y_m;
    double z_m;
};

/// Where a point of the ellipsoid lies. Source: [Karney2013], the library of its author.
[[nodiscard]] Straight straight(const Position& at);

/// Length of the straight line through the earth.
[[nodiscard]] double chord_m(const Straight& a, const Straight& b);

} // namespace tumpline::geo
