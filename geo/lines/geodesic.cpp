#include "geo/lines/geodesic.h"

#include <GeographicLib/Geodesic.hpp>

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

} // namespace tumpline::geo
