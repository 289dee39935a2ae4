#pragma once

#include <cmath>

namespace tumpline::geo {

/// A point on the WGS84 ellipsoid, degrees, north and east positive.
struct Position {
    double lat_deg;
    double lon_deg;

    friend bool operator==(const Position&, const Position&) = default;
};

/// Whether `position` has finite coordinates within [-90, 90] and [-180, 180].
[[nodiscard]] inline bool is_valid(const Position& position) noexcept {
    return std::isfinite(position.lat_deg) && std::isfinite(position.lon_deg) &&
           std::abs(position.lat_deg) <= 90.0 && std::abs(position.lon_deg) <= 180.0;
}

} // namespace tumpline::geo
