#include "geo/light/solar_position.h"

#include <algorithm>
#include <cmath>

namespace tumpline::geo {

namespace {

double sin_deg(double angle_deg) {
    return std::sin(angle_deg * M_PI / 180.0);
}

double cos_deg(double angle_deg) {
    return std::cos(angle_deg * M_PI / 180.0);
}

double to_deg(double angle_rad) {
    return angle_rad * 180.0 / M_PI;
}

/// Into [0, 360).
double turn(double angle_deg) {
    const double rest_deg = std::fmod(angle_deg, 360.0);
    return rest_deg < 0.0 ? rest_deg + 360.0 : rest_deg;
}

} // namespace

SolarPosition solar_position(double julian_centuries) {
    const double T = julian_centuries;
    const double L0 = turn(280.46646 + T * (36000.76983 + 0.0003032 * T));
    const double M = 357.52911 + T * (35999.05029 - 0.0001537 * T);
    const double e = 0.016708634 - T * (0.000042037 + 0.0000001267 * T);
    const double C = sin_deg(M) * (1.914602 - T * (0.004817 + 0.000014 * T)) +
                     sin_deg(2.0 * M) * (0.019993 - 0.000101 * T) + sin_deg(3.0 * M) * 0.000289;
    const double R = 1.000001018 * (1.0 - e * e) / (1.0 + e * cos_deg(M + C));
    const double Omega = 125.04 - 1934.136 * T;
    const double lambda = L0 + C - 0.00569 - 0.00478 * sin_deg(Omega);
    const double epsilon0 =
        23.0 + (26.0 + (21.448 - T * (46.815 + T * (0.00059 - T * 0.001813))) / 60.0) / 60.0;
    const double epsilon = epsilon0 + 0.00256 * cos_deg(Omega);
    const double alpha = to_deg(std::atan2(cos_deg(epsilon) * sin_deg(lambda), cos_deg(lambda)));
    const double delta = to_deg(std::asin(sin_deg(epsilon) * sin_deg(lambda)));
    const double tan_half = std::tan(0.5 * epsilon * M_PI / 180.0);
    const double y = tan_half * tan_half;
    const double E = y * sin_deg(2.0 * L0) - 2.0 * e * sin_deg(M) +
                     4.0 * e * y * sin_deg(M) * cos_deg(2.0 * L0) -
                     0.5 * y * y * sin_deg(4.0 * L0) - 1.25 * e * e * sin_deg(2.0 * M);
    constexpr double minutes_per_degree = 4.0;
    return {.mean_longitude_deg = L0,
            .mean_anomaly_deg = M,
            .eccentricity = e,
            .centre_deg = C,
            .radius_au = R,
            .apparent_longitude_deg = turn(lambda),
            .mean_obliquity_deg = epsilon0,
            .obliquity_deg = epsilon,
            .right_ascension_deg = turn(alpha),
            .declination_deg = delta,
            .equation_of_time_min = minutes_per_degree * to_deg(E)};
}

double julian_centuries(double since_1970_s) {
    constexpr double century_s = 36'525.0 * 86'400.0;
    constexpr double epoch_s = 946'728'000.0; // 2000-01-01 12:00
    return (since_1970_s - epoch_s) / century_s;
}

Horizontal horizontal(const HourAngle& body) {
    const double sin_altitude =
        sin_deg(body.lat_deg) * sin_deg(body.declination_deg) +
        cos_deg(body.lat_deg) * cos_deg(body.declination_deg) * cos_deg(body.hour_angle_deg);
    const double north =
        sin_deg(body.declination_deg) * cos_deg(body.lat_deg) -
        cos_deg(body.declination_deg) * sin_deg(body.lat_deg) * cos_deg(body.hour_angle_deg);
    const double east = -cos_deg(body.declination_deg) * sin_deg(body.hour_angle_deg);
    return {.altitude_deg = to_deg(std::asin(std::clamp(sin_altitude, -1.0, 1.0))),
            .azimuth_deg = turn(to_deg(std::atan2(east, north)))};
}

} // namespace tumpline::geo
