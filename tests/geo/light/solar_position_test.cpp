#include "geo/light/solar_position.h"

#include <gtest/gtest.h>

namespace tumpline::geo {
namespace {

/// [MeeusAlgorithms], example 25.a: 1992 October 13 at 0 h, T = -0.072183436, printed to the digits
/// that stand here; the equation of time is that of example 28.b, 13 min 42.7 s.
TEST(SolarPosition, IsThatOfThePrintedExample) {
    // 1992-10-13 is day 8321 from 1970-01-01 on: 22 years of 365 days are 8030, leap days of 1972,
    // 1976, 1980, 1984 and 1988 make 8035, January to September of a leap year 274, October 12.
    const double T = julian_centuries(8321.0 * 86400.0);
    EXPECT_NEAR(T, -0.072183436, 5e-10);
    const SolarPosition sun = solar_position(T);
    EXPECT_NEAR(sun.mean_longitude_deg, 201.80720, 5e-6);
    EXPECT_NEAR(sun.mean_anomaly_deg + 360.0 * 7.0, 278.99397, 5e-6);
    EXPECT_NEAR(sun.eccentricity, 0.016711668, 5e-10);
    EXPECT_NEAR(sun.centre_deg, -1.89732, 5e-6);
    EXPECT_NEAR(sun.radius_au, 0.99766, 5e-6);
    EXPECT_NEAR(sun.apparent_longitude_deg, 199.90895, 1e-5);
    EXPECT_NEAR(sun.right_ascension_deg, 198.38083, 1e-5);
    EXPECT_NEAR(sun.declination_deg, -7.78507, 1e-5);
    EXPECT_NEAR(sun.equation_of_time_min, 13.0 + 42.7 / 60.0, 0.01);
}

/// A body on the equator of the sky: overhead at the Earth's equator when it crosses the meridian,
/// at 90 degrees less the latitude elsewhere, on the horizon in the west six hours later.
TEST(Horizontal, IsPlaneGeometryOnTheMeridianAndAtSixHours) {
    const Horizontal overhead =
        horizontal({.lat_deg = 0.0, .declination_deg = 0.0, .hour_angle_deg = 0.0});
    EXPECT_NEAR(overhead.altitude_deg, 90.0, 1e-6);
    const Horizontal noon =
        horizontal({.lat_deg = 60.0, .declination_deg = 10.0, .hour_angle_deg = 0.0});
    EXPECT_NEAR(noon.altitude_deg, 90.0 - 60.0 + 10.0, 1e-9); // 40
    EXPECT_NEAR(noon.azimuth_deg, 180.0, 1e-9);
    const Horizontal evening =
        horizontal({.lat_deg = 60.0, .declination_deg = 0.0, .hour_angle_deg = 90.0});
    EXPECT_NEAR(evening.altitude_deg, 0.0, 1e-9);
    EXPECT_NEAR(evening.azimuth_deg, 270.0, 1e-9);
    const Horizontal morning =
        horizontal({.lat_deg = 60.0, .declination_deg = 0.0, .hour_angle_deg = -90.0});
    EXPECT_NEAR(morning.azimuth_deg, 90.0, 1e-9);
}

} // namespace
} // namespace tumpline::geo
