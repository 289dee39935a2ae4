#include "geo/lines/geodesic.h"

#include "tests/support/published_value.h"
#include "tests/support/random_draws.h"
#include "tests/support/source_tree.h"

#include <GeographicLib/Geodesic.hpp>
#include <gtest/gtest.h>

#include <cmath>
#include <fstream>
#include <sstream>
#include <utility>

namespace tumpline::geo {
namespace {

using test::PublishedValue;

/// Our functions where the row is on WGS84, or on GRS 80 (its flattening differs in the ninth
/// digit: less than a micrometre over these lines); the library that they rest on for the older
/// ellipsoids of [Vincenty1975] and Rapp, which the program has no use for.
bool is_ours(const PublishedValue& row) {
    return row.input("a_m") == 6378137.0 && std::abs(row.input("inv_f") - 298.2572) < 1e-3;
}

GeographicLib::Geodesic on_ellipsoid(const PublishedValue& row) {
    return {row.input("a_m"), 1.0 / row.input("inv_f")};
}

Position first(const PublishedValue& row) {
    return {.lat_deg = row.input("lat1_deg"), .lon_deg = row.input("lon1_deg")};
}

Position second(const PublishedValue& row) {
    return {.lat_deg = row.input("lat2_deg"), .lon_deg = row.input("lon2_deg")};
}

Geodesic between(const PublishedValue& row) {
    if (is_ours(row))
        return geodesic(first(row), second(row));
    Geodesic line{};
    on_ellipsoid(row).Inverse(first(row).lat_deg,
                              first(row).lon_deg,
                              second(row).lat_deg,
                              second(row).lon_deg,
                              line.length_m,
                              line.start_azimuth_deg,
                              line.end_azimuth_deg);
    return line;
}

Position arrival(const PublishedValue& row) {
    if (is_ours(row))
        return destination(first(row), row.input("azi1_deg"), row.input("s12_m"));
    Position there{};
    on_ellipsoid(row).Direct(first(row).lat_deg,
                             first(row).lon_deg,
                             row.input("azi1_deg"),
                             row.input("s12_m"),
                             there.lat_deg,
                             there.lon_deg);
    return there;
}

double arrival_azimuth_deg(const PublishedValue& row) {
    if (is_ours(row)) // the direction of arrival is that of the line between both
        return geodesic(first(row), arrival(row)).end_azimuth_deg;
    Position there{};
    double azimuth_deg = 0.0;
    on_ellipsoid(row).Direct(first(row).lat_deg,
                             first(row).lon_deg,
                             row.input("azi1_deg"),
                             row.input("s12_m"),
                             there.lat_deg,
                             there.lon_deg,
                             azimuth_deg);
    return azimuth_deg;
}

double around(double degrees) { // the same direction or meridian in [-180, 180]
    return std::remainder(degrees, 360.0);
}

/// Half a unit of the last digit of a double, where the row asks for more than it can hold.
double tolerance(const PublishedValue& row) {
    return std::max(row.tolerance, 4e-16 * std::abs(row.expected));
}

class PublishedGeodesic : public testing::TestWithParam<PublishedValue> {};

TEST_P(PublishedGeodesic, AgreesWithPrintedFigures) {
    const PublishedValue& row = GetParam();
    const std::string& formula = row.formula;
    const double near = tolerance(row);
    if (formula == "geodesic_length") {
        EXPECT_NEAR(between(row).length_m, row.expected, near);
        if (is_ours(row)) {
            EXPECT_NEAR(distance_m(first(row), second(row)), row.expected, near);
        }
    } else if (formula == "geodesic_start_azimuth") {
        EXPECT_NEAR(around(between(row).start_azimuth_deg - row.expected), 0.0, near);
    } else if (formula == "geodesic_end_azimuth") {
        EXPECT_NEAR(around(between(row).end_azimuth_deg - row.expected), 0.0, near);
    } else if (formula == "geodesic_back_azimuth") {
        EXPECT_NEAR(around(between(row).end_azimuth_deg + 180.0 - row.expected), 0.0, near);
    } else if (formula == "destination_lat") {
        EXPECT_NEAR(arrival(row).lat_deg, row.expected, near);
    } else if (formula == "destination_lon") {
        EXPECT_NEAR(around(arrival(row).lon_deg - row.expected), 0.0, near);
    } else if (formula == "destination_azimuth" || formula == "destination_back_azimuth") {
        const double turn_deg = formula == "destination_azimuth" ? 0.0 : 180.0;
        EXPECT_NEAR(around(arrival_azimuth_deg(row) + turn_deg - row.expected), 0.0, near);
    } else if (formula == "fraction_lat" || formula == "fraction_lon") {
        const double part_m = row.input("fraction") * between(row).length_m;
        const Position there = towards(first(row), second(row), part_m);
        EXPECT_NEAR(formula == "fraction_lat" ? there.lat_deg - row.expected
                                              : around(there.lon_deg - row.expected),
                    0.0,
                    near);
    } else {
        GTEST_SKIP() << formula << " is checked with the readers and lines";
    }
}

std::vector<PublishedValue> geodesic_rows() {
    std::vector<PublishedValue> rows = test::published("geodesy");
    std::erase_if(rows, [](const PublishedValue& row) {
        return row.formula.starts_with("utm_") || row.formula == "polyline_length";
    });
    return rows;
}

INSTANTIATE_TEST_SUITE_P(Published,
                         PublishedGeodesic,
                         testing::ValuesIn(geodesic_rows()),
                         test::row_name);

/// Twenty lines all over the globe, computed by C. Karney in high precision; see the file's head.
TEST(Geodesic, AgreesWithTheTwentyLinesOfGeodTest) {
    std::ifstream in(test::root / "tests" / "published" / "geodtest-20.tsv");
    std::string line;
    int rows = 0;
    while (std::getline(in, line)) {
        if (line.starts_with('#') || line.starts_with("lat1"))
            continue;
        std::istringstream fields(line);
        Position from{};
        Position to{};
        Geodesic expected{};
        fields >> from.lat_deg >> from.lon_deg >> expected.start_azimuth_deg >> to.lat_deg >>
            to.lon_deg >> expected.end_azimuth_deg >> expected.length_m;
        ASSERT_TRUE(fields) << line;
        ++rows;
        const Geodesic found = geodesic(from, to);
        EXPECT_NEAR(found.length_m, expected.length_m, 1e-8) << line; // 15 nm by [Karney2013]
        EXPECT_NEAR(found.start_azimuth_deg, expected.start_azimuth_deg, 1e-13) << line;
        EXPECT_NEAR(found.end_azimuth_deg, expected.end_azimuth_deg, 1e-13) << line;
        const Position there = destination(from, expected.start_azimuth_deg, expected.length_m);
        EXPECT_NEAR(there.lat_deg, to.lat_deg, 1e-13) << line;
        EXPECT_NEAR(around(there.lon_deg - to.lon_deg), 0.0, 1e-12) << line;
    }
    EXPECT_EQ(rows, 20);
}

TEST(Geodesic, OfCoincidentPointsHasNoLengthAndNoDirection) {
    const Position place{.lat_deg = 61.5, .lon_deg = 8.4};
    EXPECT_EQ(geodesic(place, place).length_m, 0.0);
    EXPECT_EQ(geodesic(place, place).start_azimuth_deg, 0.0);
    EXPECT_EQ(geodesic(place, place).end_azimuth_deg, 0.0);
}

TEST(Geodesic, TakesEveryMeridianForTheSamePlaceAtThePole) {
    const Geodesic line =
        geodesic({.lat_deg = 90.0, .lon_deg = 10.0}, {.lat_deg = 90.0, .lon_deg = -120.0});
    EXPECT_EQ(line.length_m, 0.0);
    EXPECT_EQ(line.start_azimuth_deg, 0.0);
}

TEST(Geodesic, GoesTheShortWayAcrossTheAntimeridian) {
    const Position west{.lat_deg = -16.8, .lon_deg = 179.95};
    const Position east{.lat_deg = -16.8, .lon_deg = -179.95};
    const Position same_step{.lat_deg = -16.8, .lon_deg = 0.1};
    EXPECT_NEAR(
        distance_m(west, east), distance_m({.lat_deg = -16.8, .lon_deg = 0.0}, same_step), 1e-6);
    EXPECT_EQ(distance_m({.lat_deg = 5.0, .lon_deg = 180.0}, {.lat_deg = 5.0, .lon_deg = -180.0}),
              0.0);
}

TEST(Geodesic, DestinationStaysWithinBoundsOfLongitude) {
    const Position there = destination({.lat_deg = 10.0, .lon_deg = 179.9}, 90.0, 50000.0);
    EXPECT_TRUE(is_valid(there));
    EXPECT_LT(there.lon_deg, 0.0);
}

TEST(Geodesic, TowardsTheOtherEndArrivesThere) {
    const Position from{.lat_deg = 61.5, .lon_deg = 8.4};
    const Position to{.lat_deg = 61.53, .lon_deg = 8.47};
    EXPECT_EQ(towards(from, to, 0.0), from);
    EXPECT_LT(distance_m(towards(from, to, distance_m(from, to)), to), 1e-7);
}

/// A place and another not further from it than some degrees each way.
std::pair<Position, Position> near_by(test::Draws& draws, double most_deg) {
    const Position from{.lat_deg = draws.between(-85.0, 85.0),
                        .lon_deg = draws.between(-180.0, 180.0)};
    return {from,
            {.lat_deg = from.lat_deg + draws.between(-most_deg, most_deg),
             .lon_deg = from.lon_deg + draws.between(-most_deg, most_deg)}};
}

TEST(Geodesic, OfAShortWayIsAsLongAsTheLibraryHasIt) {
    test::Draws draws(3);
    for (int round = 0; round < 20'000; ++round) {
        const auto [from, to] = near_by(draws, round % 2 == 0 ? 0.0005 : 0.002);
        EXPECT_NEAR(distance_m(from, to), geodesic(from, to).length_m, 2e-8);
    }
}

TEST(Geodesic, BearsOnAShortWayAsTheLibraryDoes) {
    test::Draws draws(4);
    for (int round = 0; round < 20'000; ++round) {
        const auto [from, to] = near_by(draws, round % 2 == 0 ? 0.005 : 0.04);
        const Geodesic whole = geodesic(from, to);
        if (whole.length_m < 1.0)
            continue; // its direction is rounding
        const double along_m = draws.between(0.1, 0.9) * whole.length_m;
        const double onwards_deg = geodesic(towards(from, to, along_m), to).start_azimuth_deg;
        const double apart_deg = azimuth_deg_on(from, to, along_m) - onwards_deg;
        EXPECT_NEAR(std::remainder(apart_deg, 360.0), 0.0, 1e-5) << whole.length_m;
        EXPECT_NEAR(std::remainder(azimuth_deg_on(from, to, 0.0) - whole.start_azimuth_deg, 360.0),
                    0.0,
                    1e-6);
    }
    const Position here{.lat_deg = 46.0, .lon_deg = 7.0};
    EXPECT_EQ(azimuth_deg_on(here, here, 0.0), 0.0);
    // Over the antimeridian and past a pole by the library itself.
    EXPECT_NEAR(azimuth_deg_on({.lat_deg = 0.0, .lon_deg = 179.999},
                               {.lat_deg = 0.0, .lon_deg = -179.999},
                               100.0),
                90.0,
                1e-9);
    EXPECT_NEAR(azimuth_deg_on({.lat_deg = 89.999, .lon_deg = 0.0},
                               {.lat_deg = 89.999, .lon_deg = 180.0},
                               0.0),
                0.0,
                1e-9);
}

} // namespace
} // namespace tumpline::geo
