#pragma once

namespace tumpline::geo {

/// Place of the sun on the sky's sphere and what leads to it, by the low-accuracy theory: to 0.01
/// degrees from 1950 to 2050.
/// Source: [NOAASolar], after chapters 25 and 28 of [MeeusAlgorithms]; its letters in brackets.
struct SolarPosition {
    double mean_longitude_deg; ///< (L0) in [0, 360)
    double mean_anomaly_deg;   ///< (M) not reduced
    double eccentricity;       ///< (e)
    double centre_deg;         ///< (C) equation of the centre
    double radius_au;          ///< (R)
    double apparent_longitude_deg;
    double mean_obliquity_deg;
    double obliquity_deg;
    double right_ascension_deg; ///< in [0, 360)
    double declination_deg;
    double equation_of_time_min; ///< apparent less mean time
};

/// At a number of Julian centuries since 2000-01-01 12:00.
[[nodiscard]] SolarPosition solar_position(double julian_centuries);

/// Julian centuries since 2000-01-01 12:00 of an instant in seconds since 1970 UTC. Universal and
/// dynamical time are taken as one: over these years the sun moves by 1 arc second between them.
[[nodiscard]] double julian_centuries(double since_1970_s);

/// Where a body of some declination stands as seen from a latitude at an hour angle.
struct HourAngle {
    double lat_deg;
    double declination_deg;
    double hour_angle_deg; ///< westward from the meridian
};

struct Horizontal {
    double altitude_deg;
    double
        azimuth_deg; ///< clockwise from north, in [0, 360); at a pole as from the meridian's side
};

[[nodiscard]] Horizontal horizontal(const HourAngle& body);

} // namespace tumpline::geo
