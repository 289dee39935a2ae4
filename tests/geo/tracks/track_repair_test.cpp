#include "geo/tracks/track_repair.h"

#include "geo/lines/geodesic.h"
#include "geo/tracks/track.h"

#include <gtest/gtest.h>

#include <chrono>
#include <cmath>
#include <random>
#include <utility>

namespace tumpline::geo {
namespace {

using std::chrono::seconds;

constexpr Instant start{std::chrono::sys_days(std::chrono::year{2027} / 6 / 18)};
const Position lake{.lat_deg = 61.5, .lon_deg = 8.4};

/// A straight line eastward of `count` points, `step_m` apart.
std::vector<TrackPoint> eastward(std::size_t count, double step_m, Position from = lake) {
    std::vector<TrackPoint> points;
    for (std::size_t index = 0; index < count; ++index)
        points.push_back({.at = destination(from, 90.0, step_m * static_cast<double>(index)),
                          .height_m = std::nullopt,
                          .time = std::nullopt});
    return points;
}

void stamp(std::vector<TrackPoint>& points, seconds each) {
    for (std::size_t index = 0; index < points.size(); ++index)
        points[index].time = start + each * static_cast<int>(index);
}

Track repaired(std::vector<std::vector<TrackPoint>> parts) {
    Track track;
    track.parts = std::move(parts);
    repair(track);
    return track;
}

Repairs only(std::size_t Repairs::*kind, std::size_t count) {
    Repairs repairs;
    repairs.*kind = count;
    return repairs;
}

TEST(Repair, LeavesASoundTrackAlone) {
    std::vector<TrackPoint> points = eastward(50, 20.0);
    stamp(points, seconds(15));
    for (TrackPoint& point : points)
        point.height_m = 700.0;
    const Track track = repaired({points});
    EXPECT_EQ(track.repairs, Repairs{});
    EXPECT_EQ(track.parts.at(0).size(), 50U);
}

TEST(Repair, DropsPointsThatStandTwiceAndKeepsWhatTheyKnow) {
    std::vector<TrackPoint> points = eastward(3, 20.0);
    points.insert(points.begin() + 1, points[1]);
    points.insert(points.begin() + 1, points[1]);
    points[2].height_m = 5.0;
    points[3].time = start;
    points[0].height_m = points[4].height_m = 4.0;
    const Track track = repaired({points});
    ASSERT_EQ(track.parts.at(0).size(), 3U);
    EXPECT_EQ(track.parts[0][1].height_m, 5.0);
    EXPECT_EQ(track.parts[0][1].time, start);
    EXPECT_EQ(track.repairs.duplicates, 2U);
}

TEST(Repair, TakesBothNamesOfTheAntimeridianAndOfAPoleForOnePlace) {
    const auto point = [](double lat_deg, double lon_deg) {
        return TrackPoint{
            .at = {.lat_deg = lat_deg, .lon_deg = lon_deg}, .height_m = {}, .time = {}};
    };
    const Track antimeridian =
        repaired({{point(5.0, 179.9), point(5.0, 180.0), point(5.0, -180.0), point(5.0, -179.9)}});
    EXPECT_EQ(antimeridian.repairs.duplicates, 1U);
    EXPECT_EQ(antimeridian.repairs.antimeridian, 1U);
    const Track pole = repaired({{point(89.9, 0.0), point(90.0, 0.0), point(90.0, 120.0)}});
    EXPECT_EQ(pole.repairs, only(&Repairs::duplicates, 1));
}

TEST(Repair, DropsAnUntimedPointFarOutAndBack) {
    std::vector<TrackPoint> points = eastward(20, 20.0);
    points[9].at = destination(points[9].at, 0.0, 3000.0);
    const Track track = repaired({points});
    EXPECT_EQ(track.repairs, only(&Repairs::spikes, 1));
    EXPECT_EQ(track.parts.at(0).size(), 19U);
}

TEST(Repair, FindsSpikesEverywhereOnEarth) {
    const std::vector<Position> places = {{.lat_deg = 0.0, .lon_deg = 179.9995},
                                          {.lat_deg = 89.9999, .lon_deg = 10.0},
                                          {.lat_deg = -89.9999, .lon_deg = -170.0}};
    for (const Position& place : places) {
        std::vector<TrackPoint> points = eastward(20, 20.0, place);
        points[9].at = destination(points[9].at, 45.0, 3000.0);
        EXPECT_EQ(repaired({points}).repairs.spikes, 1U) << place.lat_deg;
        EXPECT_EQ(repaired({eastward(20, 20.0, place)}).repairs.spikes, 0U) << place.lat_deg;
    }
}

TEST(Repair, KeepsAWalkToAViewpointAndBack) {
    // recorded: the points on the way are there
    std::vector<TrackPoint> recorded = eastward(40, 20.0);
    for (std::size_t back = 40; back-- > 0;)
        recorded.push_back(recorded[back]);
    recorded.erase(recorded.begin() + 40);
    EXPECT_EQ(repaired({recorded}).repairs, Repairs{});
    // drawn by hand: sparse throughout
    std::vector<TrackPoint> drawn = eastward(8, 400.0);
    drawn[4].at = destination(drawn[4].at, 0.0, 2500.0);
    EXPECT_EQ(repaired({drawn}).repairs, Repairs{});
    // too short to know what is usual
    const TrackPoint there{.at = destination(lake, 0.0, 9000.0), .height_m = {}, .time = {}};
    EXPECT_EQ(repaired({{eastward(1, 1.0)[0], there, eastward(1, 1.0)[0]}}).repairs, Repairs{});
}

TEST(Repair, JudgesTimedPointsBySpeed) {
    std::vector<TrackPoint> points = eastward(20, 5.0);
    stamp(points, seconds(5));
    points[9].at = destination(points[9].at, 0.0, 70.0); // 14 m/s there and back
    EXPECT_EQ(repaired({points}).repairs, only(&Repairs::spikes, 1));
    stamp(points, seconds(10)); // 7 m/s: a fast paddler in a rapid
    EXPECT_EQ(repaired({points}).repairs, Repairs{});
    std::vector<TrackPoint> far = eastward(20, 5.0); // a long way, but an hour to go it
    far[9].at = destination(far[9].at, 0.0, 3000.0);
    stamp(far, seconds(3600));
    EXPECT_EQ(repaired({far}).repairs, Repairs{});
}

TEST(Repair, KeepsARideByBus) {
    std::vector<TrackPoint> points = eastward(60, 25.0);
    stamp(points, seconds(1));
    EXPECT_EQ(repaired({points}).repairs, Repairs{});
}

TEST(Repair, LeavesOnePointWhereASpikeStoodBetweenTwo) {
    std::vector<TrackPoint> points = eastward(20, 20.0);
    points[10].at = points[8].at;
    points[9].at = destination(points[8].at, 0.0, 5000.0);
    const Track track = repaired({points});
    EXPECT_EQ(track.repairs.spikes, 1U);
    EXPECT_EQ(track.repairs.duplicates, 1U);
    EXPECT_EQ(track.parts.at(0).size(), 18U);
}

TEST(Repair, DropsHeightsThatNoGroundHas) {
    std::vector<TrackPoint> points = eastward(7, 20.0);
    const std::vector<double> heights = {100.0, -32768.0, -9999.0, 9001.0, -430.0, 8848.0};
    for (std::size_t index = 0; index < heights.size(); ++index)
        points[index].height_m = heights[index];
    const Track track = repaired({points});
    EXPECT_EQ(track.repairs.void_heights, 3U);
    EXPECT_EQ(track.repairs.missing_heights, 1U);
    EXPECT_FALSE(track.parts.at(0)[1].height_m);
    EXPECT_EQ(track.parts.at(0)[4].height_m, -430.0); // the shore of the Dead Sea
    EXPECT_EQ(track.parts.at(0)[5].height_m, 8848.0); // and the highest ground
}

TEST(Repair, TakesALoneZeroInlandForAHeightThatNobodyKnew) {
    std::vector<TrackPoint> points = eastward(4, 300.0);
    for (std::size_t i = 0; i < points.size(); ++i)
        points[i].height_m = i == 1 ? 0.0 : 500.0;
    const Track inland = repaired({points});
    EXPECT_EQ(inland.repairs.void_heights, 1U);
    EXPECT_FALSE(inland.parts[0][1].height_m);
    points[2].height_m = 12.0; // down to the shore and up again
    EXPECT_EQ(repaired({points}).repairs.void_heights, 0U);
    for (TrackPoint& point : points)
        point.height_m = 0.0; // at sea
    EXPECT_EQ(repaired({points}).repairs.void_heights, 0U);
}

TEST(Repair, DoesNotCallHeightsMissingWhereThereAreNone) {
    EXPECT_EQ(repaired({eastward(5, 20.0)}).repairs, Repairs{});
}

TEST(Repair, DropsTimesThatRunBackward) {
    std::vector<TrackPoint> points = eastward(6, 20.0);
    stamp(points, seconds(15));
    points[3].time = start;
    const Track track = repaired({points});
    EXPECT_EQ(track.repairs, only(&Repairs::backward_times, 1));
    EXPECT_FALSE(track.parts.at(0)[3].time);
    EXPECT_TRUE(track.parts.at(0)[4].time);
}

TEST(Repair, DropsOneTimeThatJumpsAheadRatherThanAllThatFollow) {
    std::vector<TrackPoint> points = eastward(8, 20.0);
    stamp(points, seconds(15));
    points[3].time = start + std::chrono::hours(500'000);
    const Track track = repaired({points});
    EXPECT_EQ(track.repairs, only(&Repairs::backward_times, 1));
    EXPECT_FALSE(track.parts.at(0)[3].time);
}

TEST(Repair, CountsGapsBetweenPartsButNotSeams) {
    const std::vector<TrackPoint> whole = eastward(30, 20.0);
    const std::vector<TrackPoint> first(whole.begin(), whole.begin() + 10);
    const std::vector<TrackPoint> meets(whole.begin() + 9, whole.begin() + 20);
    const std::vector<TrackPoint> gap(whole.begin() + 25, whole.end());
    const Track track = repaired({first, meets, {}, gap});
    EXPECT_EQ(track.repairs, only(&Repairs::joined_parts, 1));
    EXPECT_EQ(track.parts.size(), 3U);
    EXPECT_EQ(joined(track).size(), 10U + 10U + 5U);
}

TEST(Repair, AccountsForEveryPointAndLeavesTimesInOrder) {
    std::mt19937_64 draw(7);
    for (int round = 0; round < 50; ++round) {
        std::vector<TrackPoint> points = eastward(40, 15.0);
        stamp(points, seconds(10));
        for (int fault = 0; fault < 6; ++fault) {
            TrackPoint& point = points[1 + draw() % 38];
            switch (draw() % 4) {
            case 0:
                point.at = destination(point.at, 10.0, 4000.0);
                break;
            case 1:
                point.at = points[draw() % 40].at;
                break;
            case 2:
                point.time = start - seconds(draw() % 100);
                break;
            default:
                point.height_m = -32768.0;
            }
        }
        const Track once = repaired({points});
        const std::size_t left = once.parts.at(0).size();
        EXPECT_EQ(left + once.repairs.duplicates + once.repairs.spikes, 40U);
        for (const TrackPoint& point : once.parts[0])
            EXPECT_TRUE(is_valid(point.at) && !point.height_m);
        std::optional<Instant> latest;
        for (const TrackPoint& point : once.parts[0]) {
            if (point.time && latest) {
                EXPECT_GE(*point.time, *latest);
            }
            latest = point.time ? point.time : latest;
        }
    }
}

TEST(Repairs, AddUp) {
    const Repairs one{.duplicates = 1,
                      .spikes = 2,
                      .invalid_points = 3,
                      .missing_heights = 4,
                      .void_heights = 5,
                      .backward_times = 6,
                      .antimeridian = 7,
                      .joined_parts = 8};
    Repairs sum = one;
    sum += one;
    EXPECT_EQ(sum,
              (Repairs{.duplicates = 2,
                       .spikes = 4,
                       .invalid_points = 6,
                       .missing_heights = 8,
                       .void_heights = 10,
                       .backward_times = 12,
                       .antimeridian = 14,
                       .joined_parts = 16}));
}

} // namespace
} // namespace tumpline::geo
