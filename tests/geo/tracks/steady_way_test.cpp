#include "geo/tracks/steady_way.h"

#include "tests/support/recorded_walk.h"

#include <gtest/gtest.h>

namespace tumpline::geo {
namespace {

using test::level;
using test::recorded;
using test::Walker;

const auto at_1_2_mps = [](double /*slope*/) { return 1.2; };

double plain_m(const Track& track) {
    double sum_m = 0.0;
    for (std::size_t i = 1; i < track.parts[0].size(); ++i)
        sum_m += distance_m(track.parts[0][i - 1].at, track.parts[0][i].at);
    return sum_m;
}

TEST(SteadyWay, WithoutNoiseItIsTheWayItself) {
    const Track track = recorded({}, level, at_1_2_mps); // 3600 s at 1.2 m/s: 4320 m
    EXPECT_NEAR(steady_length_m(track).value(), 4320.0, 2.0);
    EXPECT_NEAR(moving_time_s(track).value(), 3600.0, 1.0);
}

TEST(SteadyWay, TakesOutTheWanderOnTheMoveAndAtRest) {
    // 3 h, of which 40 min of halts: 140 min * 60 * 1.2 m/s = 10 080 m.
    const Track track = recorded({.seconds = 3.0 * 3600.0,
                                  .noise_m = 2.0,
                                  .drift_m = 6.0,
                                  .halts = {{2000.0, 600.0}, {6000.0, 1800.0}}},
                                 level,
                                 at_1_2_mps);
    EXPECT_GT(plain_m(track), 20000.0) << "a fix a second, 2 m off on each axis";
    EXPECT_NEAR(steady_length_m(track).value(), 10080.0, 200.0);
    EXPECT_NEAR(moving_time_s(track).value(), 8400.0, 180.0);
}

TEST(SteadyWay, AWindingPathWithoutNoiseIsNotToldOf) {
    // 8 m to each side every 120 m: 1 + (2 pi 8 / 120)^2 / 4 = 1.044 times the straight line.
    Track track;
    track.parts.emplace_back();
    for (int i = 0; i <= 3600; ++i) {
        const double north_m = 1.1 * i;
        Position at = destination({61.0, 1.0}, 0.0, north_m);
        at = destination(at, 90.0, 8.0 * std::sin(2.0 * std::numbers::pi * north_m / 120.0));
        track.parts[0].push_back(
            {.at = at, .height_m = 300.0, .time = Instant(std::chrono::seconds(i))});
    }
    EXPECT_LT(plain_m(track), (1.0 + wander_counts) * steady_length_m(track).value());
}

TEST(SteadyWay, AQuietReceiverKeepsItsHairpins) {
    // Zigzags of 50 m up a slope, each 10 m higher up than the last, half a metre of noise: a mean
    // over half a minute would cut 18 m off every turn.
    std::mt19937_64 draws(7);
    Track track;
    track.parts.emplace_back();
    for (int i = 0; i <= 3600; ++i) { // 3600 m of legs, 72 of them
        const double along_m = std::fmod(1.0 * i, 100.0);
        Position at = destination({61.0, 1.0}, 0.0, 10.0 * (i / 50.0));
        at = destination(at, 90.0, along_m < 50.0 ? along_m : 100.0 - along_m);
        at = destination(at, 90.0, 0.15 * test::normal(draws));
        at = destination(at, 0.0, 0.15 * test::normal(draws));
        track.parts[0].push_back(
            {.at = at, .height_m = 300.0, .time = Instant(std::chrono::seconds(i))});
    }
    // A leg of 50 m to the side and 10 m up is 50.99 m long: 72 of them 3671 m.
    EXPECT_NEAR(steady_length_m(track).value(), 3671.0, 180.0);
}

TEST(SteadyWay, AnHourInCampIsNoWay) {
    // Indoors a receiver strays by 20 m and more; nobody takes ten minutes for 50 m.
    Track track = recorded({}, level, at_1_2_mps);
    const TrackPoint last = track.parts[0].back();
    for (int i = 1; i <= 3600; ++i) {
        TrackPoint here = last;
        *here.time += std::chrono::seconds(i);
        here.at = destination(last.at, 90.0, 22.0 * std::sin(i / 40.0));
        here.at = destination(here.at, 0.0, 22.0 * std::cos(i / 90.0) - 22.0);
        track.parts[0].push_back(here);
    }
    EXPECT_NEAR(moving_time_s(track).value(), 3600.0, 60.0);
    EXPECT_NEAR(steady_length_m(track).value(), 4320.0, 60.0);
}

TEST(SteadyWay, AGapBetweenPartsIsBridgedAndLinesWithoutTimesAreNotKnown) {
    Track track = recorded({.seconds = 600.0}, level, at_1_2_mps); // 720 m
    Track on = track;
    for (TrackPoint& point : on.parts[0]) {
        point.at = destination(point.at, 0.0, 1000.0); // begins 280 m beyond the end
        *point.time += std::chrono::hours(1);
    }
    track.parts.push_back(on.parts[0]);
    EXPECT_NEAR(steady_length_m(track).value(), 1720.0, 5.0);
    EXPECT_NEAR(moving_time_s(track).value(), 1200.0, 1.0);
    for (auto& part : track.parts)
        for (TrackPoint& point : part)
            point.time.reset();
    EXPECT_FALSE(steady_length_m(track));
    EXPECT_FALSE(moving_time_s(track));
}

} // namespace
} // namespace tumpline::geo
