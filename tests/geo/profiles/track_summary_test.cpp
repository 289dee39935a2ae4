#include "geo/profiles/track_summary.h"

#include "geo/lines/geodesic.h"

#include <gtest/gtest.h>

#include <chrono>
#include <vector>

namespace tumpline::geo {
namespace {

using namespace std::chrono_literals;

const Instant morning = std::chrono::sys_days{std::chrono::year{2027} / 6 / 18} + 6h;

/// A point `north_m` north of the start, `seconds` after it, `height_m` high.
TrackPoint point(double north_m, int seconds, double height_m = 100.0) {
    return {
        destination({60.0, 5.0}, 0.0, north_m), height_m, morning + std::chrono::seconds{seconds}};
}

Track track(std::vector<std::vector<TrackPoint>> parts) {
    Track track;
    track.name = "up";
    track.parts = std::move(parts);
    return track;
}

/// Straight on at 1 m/s, a point every 10 s, from second `from` and metre `at`.
std::vector<TrackPoint> walk(int from, double at, int points) {
    std::vector<TrackPoint> part;
    for (int i = 0; i < points; ++i)
        part.push_back(point(at + 10.0 * i, from + 10 * i));
    return part;
}

TEST(TrackSummary, AddsUpLengthPointsAndTime) {
    const TrackSummary sum = summary(track({walk(0, 0.0, 101)}), nullptr);
    EXPECT_EQ(sum.points, 101U);
    EXPECT_EQ(sum.parts, 1U);
    EXPECT_NEAR(sum.length_m, 1000.0, 1e-6);
    EXPECT_NEAR(sum.longest_step_m, 10.0, 1e-6);
    EXPECT_EQ(sum.started, morning);
    EXPECT_EQ(sum.duration_s, 1000.0);
    EXPECT_EQ(sum.moving_s, 1000.0);
    EXPECT_TRUE(sum.gaps.empty());
    EXPECT_EQ(sum.heights, HeightSource::track);
    EXPECT_EQ(sum.ascent_m, 0.0);
    EXPECT_FALSE(sum.steepest_up);
}

TEST(TrackSummary, StandingIsNotMoving) {
    std::vector<TrackPoint> part = walk(0, 0.0, 51);
    for (int second = 510; second <= 1100; second += 10) // wanders by 8 m for ten minutes
        part.push_back(point(500.0 + (second / 10) % 2 * 8.0, second));
    for (const TrackPoint& next : walk(1110, 510.0, 50))
        part.push_back(next);
    const TrackSummary sum = summary(track({part}), nullptr);
    EXPECT_EQ(sum.duration_s, 1600.0);
    EXPECT_NEAR(*sum.moving_s, 1000.0, 30.0); // to where one stands exactly, within 20 m
}

TEST(TrackSummary, AShortHaltStillCountsAsMoving) {
    std::vector<TrackPoint> part = walk(0, 0.0, 51);
    for (const TrackPoint& next : walk(560, 500.0, 51)) // a minute later
        part.push_back(next);
    EXPECT_EQ(summary(track({part}), nullptr).moving_s, 1060.0);
}

TEST(TrackSummary, AReceiverThatPausesByItselfStands) {
    std::vector<TrackPoint> part = walk(0, 0.0, 51);
    for (const TrackPoint& next : walk(2300, 530.0, 48)) // half an hour later, 30 m on
        part.push_back(next);
    EXPECT_EQ(summary(track({part}), nullptr).moving_s, 970.0);
}

TEST(TrackSummary, NeitherIsTheTimeBetweenParts) {
    const TrackSummary sum = summary(track({walk(0, 0.0, 51), walk(4100, 800.0, 51)}), nullptr);
    EXPECT_EQ(sum.parts, 2U);
    ASSERT_EQ(sum.gaps.size(), 1U);
    EXPECT_NEAR(sum.gaps[0].along_m, 500.0, 1e-6);
    EXPECT_NEAR(sum.gaps[0].length_m, 300.0, 1e-6);
    EXPECT_EQ(sum.gaps[0].lasts_s, 3600.0);
    EXPECT_NEAR(sum.length_m, 1300.0, 1e-6);
    EXPECT_EQ(sum.duration_s, 4600.0);
    EXPECT_EQ(sum.moving_s, 1000.0);
}

TEST(TrackSummary, FindsTheSteepestHundredMetres) {
    std::vector<TrackPoint> part;
    for (int i = 0; i <= 40; ++i) // a km level, then 1 in 5 up, then level
        part.push_back(
            point(50.0 * i, 60 * i, i < 20 ? 100.0 : std::min(300.0, 100.0 + 10.0 * (i - 20))));
    ProfileOptions exact; // the smoothing would blunt the bend
    exact.track_smoothing_m = 0.0;
    const TrackSummary sum = summary(track({part}), nullptr, exact);
    EXPECT_NEAR(sum.ascent_m, 200.0, 1e-6);
    EXPECT_NEAR(sum.steepest_up.value(), 0.2, 1e-6);
    EXPECT_FALSE(sum.steepest_down);
    EXPECT_NEAR(sum.lowest_m.value(), 100.0, 1e-6);
    EXPECT_NEAR(sum.highest_m.value(), 300.0, 1e-6);
}

TEST(TrackSummary, WithoutHeightsAndTimesSaysSo) {
    std::vector<TrackPoint> part = walk(0, 0.0, 11);
    for (TrackPoint& bare : part) {
        bare.height_m.reset();
        bare.time.reset();
    }
    const TrackSummary sum = summary(track({part}), nullptr);
    EXPECT_EQ(sum.heights, HeightSource::none);
    EXPECT_FALSE(sum.lowest_m || sum.highest_m || sum.started || sum.duration_s || sum.moving_s);
}

TEST(TrackSummary, OnePointOrNoneIsATrackWithoutLength) {
    EXPECT_EQ(summary(track({{point(0.0, 0)}}), nullptr).length_m, 0.0);
    EXPECT_EQ(summary(track({}), nullptr).points, 0U);
    EXPECT_EQ(summary(track({{}, {point(0.0, 0)}}), nullptr).parts, 1U);
    EXPECT_FALSE(summary(track({{point(0.0, 0)}}), nullptr).moving_s);
}

} // namespace
} // namespace tumpline::geo
