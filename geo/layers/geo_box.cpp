#include "geo/layers/geo_box.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace tumpline::geo {

namespace {

constexpr double m_per_degree_of_latitude = 110'500.0; // the least, at the equator
constexpr double nearly_a_pole_deg = 89.0;

} // namespace

bool GeoBox::contains(const Position& at) const {
    const double middle_deg = (west_deg + east_deg) / 2.0;
    const double off_deg = std::abs(std::remainder(at.lon_deg - middle_deg, 360.0));
    return at.lat_deg >= south_deg && at.lat_deg <= north_deg &&
           off_deg <= (east_deg - west_deg) / 2.0;
}

bool GeoBox::odd() const {
    return west_deg < -180.0 || east_deg > 180.0 || south_deg < -nearly_a_pole_deg ||
           north_deg > nearly_a_pole_deg;
}

GeoBox box_around(const std::vector<Position>& points, double margin_m) {
    const double from_deg = points.front().lon_deg;
    GeoBox box{90.0, -90.0, from_deg, from_deg};
    for (const Position& point : points) {
        const double lon_deg = from_deg + std::remainder(point.lon_deg - from_deg, 360.0);
        box = {std::min(box.south_deg, point.lat_deg),
               std::max(box.north_deg, point.lat_deg),
               std::min(box.west_deg, lon_deg),
               std::max(box.east_deg, lon_deg)};
    }
    const double up_deg = margin_m / m_per_degree_of_latitude;
    box.south_deg -= up_deg;
    box.north_deg += up_deg;
    const double furthest_deg =
        std::min(std::max(std::abs(box.south_deg), std::abs(box.north_deg)), nearly_a_pole_deg);
    const double across_deg = up_deg / std::cos(furthest_deg * std::numbers::pi / 180.0);
    box.west_deg -= across_deg;
    box.east_deg += across_deg;
    return box;
}

} // namespace tumpline::geo
