#include "geo/lines/geodesic.h"

#include <GeographicLib/Geocentric.hpp>
#include <GeographicLib/Geodesic.hpp>

#include <cmath>

namespace tumpline::geo {

namespace {

const GeographicLib::Geodesic& wgs84() {
    return GeographicLib::Geodesic::WGS84();
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
