#include "geo/lines/geodesic.h"

#include <GeographicLib/Geocentric.hpp>
#include <GeographicLib/Geodesic.hpp>
#include <GeographicLib/GeodesicLine.hpp>

#include <cmath>
#include <numbers>
#include <optional>

namespace tumpline::geo {

namespace {

const GeographicLib::Geodesic& wgs84() {
    return GeographicLib::Geodesic::WGS84();
}

constexpr double radian = std::numbers::pi / 180.0;

/// A short way as the third side of a right triangle, whose other sides lie along the meridian and
/// the parallel of its middle.
struct Triangle {
    double north_m;
    double east_m;
    double convergence_deg; ///< by which the azimuth grows from one end to the other
};

/// What a triangle leaves out grows with the square of the way over the earth's radius. None where
/// the way is longer, comes near a pole or crosses the antimeridian.
std::optional<Triangle> triangle(const Position& from, const Position& to, double longest_deg) {
    constexpr double polar_deg = 80.0;
    const double north_deg = to.lat_deg - from.lat_deg;
    const double east_deg = to.lon_deg - from.lon_deg;
    const double middle_deg = 0.5 * (from.lat_deg + to.lat_deg);
    if (!(std::abs(north_deg) <= longest_deg && std::abs(east_deg) <= longest_deg &&
          std::abs(middle_deg) <= polar_deg))
        return std::nullopt;
    // Radii of curvature of the ellipsoid along the meridian and across it.
    static const double f = wgs84().Flattening();
    static const double e2 = f * (2.0 - f);
    static const double equator_m = wgs84().EquatorialRadius();
    const double sine = std::sin(middle_deg * radian);
    const double w2 = 1.0 - e2 * sine * sine;
    const double across_m = equator_m / std::sqrt(w2);
    return Triangle{.north_m = across_m * (1.0 - e2) / w2 * north_deg * radian,
                    .east_m = across_m * std::sqrt(1.0 - sine * sine) * east_deg * radian,
                    .convergence_deg = east_deg * sine};
}

double side_m(const Triangle& way) {
    return std::sqrt(way.north_m * way.north_m + way.east_m * way.east_m);
}

} // namespace

Geodesic geodesic(const Position& from, const Position& to) {
    Geodesic line{};
    wgs84().Inverse(from.lat_deg,
                    from.lon_deg,
                    to.lat_deg,
                    to.lon_deg,
                    line.length_m,
                    line.start_azimuth_deg,
                    line.end_azimuth_deg);
    if (line.length_m == 0.0)
        return {}; // the library gives the difference of longitudes at a pole
    return line;
}

double distance_m(const Position& from, const Position& to) {
    constexpr double longest_deg = 0.001; // to some nanometres
    if (const std::optional<Triangle> way = triangle(from, to, longest_deg))
        return side_m(*way);
    double length_m = 0.0;
    wgs84().Inverse(from.lat_deg, from.lon_deg, to.lat_deg, to.lon_deg, length_m);
    return length_m;
}

Position destination(const Position& from, double azimuth_deg, double length_m) {
    Position arrival{};
    wgs84().Direct(
        from.lat_deg, from.lon_deg, azimuth_deg, length_m, arrival.lat_deg, arrival.lon_deg);
    return arrival;
}

Position towards(const Position& from, const Position& to, double length_m) {
    if (length_m == 0.0)
        return from;
    return destination(from, geodesic(from, to).start_azimuth_deg, length_m);
}

double azimuth_deg_on(const Position& from, const Position& to, double length_m) {
    constexpr double longest_deg = 0.02; // to a hundred thousandth of a degree
    if (const std::optional<Triangle> way = triangle(from, to, longest_deg)) {
        const double whole_m = side_m(*way);
        return whole_m == 0.0 ? 0.0
                              : std::atan2(way->east_m, way->north_m) / radian +
                                    (length_m / whole_m - 0.5) * way->convergence_deg;
    }
    const GeographicLib::GeodesicLine line = wgs84().InverseLine(
        from.lat_deg,
        from.lon_deg,
        to.lat_deg,
        to.lon_deg,
        GeographicLib::Geodesic::AZIMUTH | GeographicLib::Geodesic::DISTANCE_IN);
    if (line.Distance() == 0.0)
        return 0.0; // as in `geodesic`
    Position there{};
    double azimuth_deg = 0.0;
    line.Position(length_m, there.lat_deg, there.lon_deg, azimuth_deg);
    return azimuth_deg;
}

Straight straight(const Position& at) {
    Straight result{};
    GeographicLib::Geocentric::WGS84().Forward(
        at.lat_deg, at.lon_deg, 0.0, result.x_m, result.y_m, result.z_m);
    return result;
}

double chord_m(const Straight& a, const Straight& b) {
    const double x_m = a.x_m - b.x_m;
    const double y_m = a.y_m - b.y_m;
    const double z_m = a.z_m - b.z_m;
    return std::sqrt(x_m * x_m + y_m * y_m + z_m * z_m);
}

} // namespace tumpline::geo
