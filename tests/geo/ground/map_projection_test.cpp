#include "geo/ground/map_projection.h"

#include "geo/lines/geodesic.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

namespace tumpline::geo {

namespace {

/// The property that defines the projection: what PROJ draws from the centre is what
/// GeographicLib measures from it [Karney2013]. Two libraries, one answer.
void expect_true_from_the_centre(const MapProjection& map, const Position& position) {
    const MapPoint point = map.to_map(position);
    const Geodesic line = geodesic(map.centre(), position);
    EXPECT_NEAR(std::hypot(point.east_m, point.north_m), line.length_m, 0.001);
    if (line.length_m < 1.0)
        return;
    const double drawn_deg = std::atan2(point.east_m, point.north_m) * 180.0 / std::numbers::pi;
    EXPECT_NEAR(std::remainder(drawn_deg - line.start_azimuth_deg, 360.0), 0.0, 1e-6);
    const Position back = map.to_ground(point);
    EXPECT_LT(distance_m(back, position), 0.001);
}

} // namespace

TEST(MapProjection, AgreesWithTheGeodesicFromItsCentre) {
    const std::vector<Position> points{{61.2, 9.1}, {61.4, 9.7}, {61.9, 9.3}};
    const MapProjection map(points);
    for (const Position& point : points)
        expect_true_from_the_centre(map, point);
}

TEST(MapProjection, LiesInTheMiddleOfTheExtent) {
    const MapProjection map({{60.0, 10.0}, {60.0, 10.0}, {60.0, 10.0}, {60.0, 12.0}});
    EXPECT_NEAR(map.centre().lon_deg, 11.0, 0.001);
    EXPECT_NEAR(map.to_map({60.0, 10.0}).east_m, -map.to_map({60.0, 12.0}).east_m, 1.0);
}

TEST(MapProjection, DoesNotTearAtTheAntimeridian) {
    const std::vector<Position> points{{52.0, 179.9}, {52.1, -179.9}};
    const MapProjection map(points);
    const MapPoint west = map.to_map(points[0]);
    const MapPoint east = map.to_map(points[1]);
    EXPECT_NEAR(std::hypot(east.east_m - west.east_m, east.north_m - west.north_m),
                distance_m(points[0], points[1]),
                0.01);
    EXPECT_GT(east.east_m, west.east_m);
}

TEST(MapProjection, DrawsAWayOverThePole) {
    for (const double pole_deg : {90.0, -90.0}) {
        const double lat_deg = pole_deg * 0.995;
        const std::vector<Position> points{{lat_deg, 20.0}, {pole_deg, 0.0}, {lat_deg, -160.0}};
        const MapProjection map(points);
        for (const Position& point : points)
            expect_true_from_the_centre(map, point);
    }
}

TEST(MapProjection, TakesOnePointAndPointsThatCancelOut) {
    const MapProjection one({{45.0, 7.0}});
    EXPECT_NEAR(one.to_map({45.0, 7.0}).east_m, 0.0, 0.001);
    const MapProjection opposite({{0.0, 0.0}, {0.0, 180.0}});
    EXPECT_TRUE(std::isfinite(opposite.to_map({0.0, 180.0}).east_m));
    EXPECT_THROW(MapProjection({}), std::invalid_argument);
}

} // namespace tumpline::geo
