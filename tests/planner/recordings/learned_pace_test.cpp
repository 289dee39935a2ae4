#include "planner/recordings/learned_pace.h"

#include "geo/lines/geodesic.h"
#include "tests/support/source_tree.h"

#include <gtest/gtest.h>

#include <cmath>
#include <filesystem>
#include <numbers>
#include <random>

namespace tumpline::planner {
namespace {

/// How somebody moves, and how a receiver sees it.
struct Walker {
    double seconds = 3600.0;
    double every_s = 1.0;                              ///< between fixes
    double noise_m = 0.0;                              ///< spread of each fix on each axis
    double drift_m = 0.0;                              ///< slow wandering besides
    std::vector<std::pair<double, double>> halts = {}; ///< at second, for seconds
};

double normal(std::mt19937_64& draws) { // the sum of twelve, the same on every machine
    double sum = -6.0;
    for (int i = 0; i < 12; ++i)
        sum += static_cast<double>(draws() >> 11) * 0x1.0p-53;
    return sum;
}

/// Walks north over ground of height(along) at speed(slope).
template <typename Height, typename Speed>
geo::Track recorded(const Walker& walker, Height height, Speed speed) {
    std::mt19937_64 draws(42);
    geo::Track track;
    track.type = "walk";
    track.parts.emplace_back();
    double along_m = 0.0;
    double next_s = 0.0;
    for (double clock_s = 0.0; clock_s <= walker.seconds; clock_s += 1.0) {
        bool stands = false;
        for (const auto& [at_s, lasts_s] : walker.halts)
            stands = stands || (clock_s >= at_s && clock_s < at_s + lasts_s);
        const double slope = (height(along_m + 5.0) - height(along_m - 5.0)) / 10.0;
        along_m += stands ? 0.0 : speed(slope);
        if (clock_s < next_s)
            continue;
        next_s += walker.every_s;
        geo::Position at = geo::destination({61.0, 1.0}, 0.0, along_m);
        const double phase = clock_s / 300.0 * 2.0 * std::numbers::pi;
        at = geo::destination(
            at, 90.0, walker.drift_m * std::sin(phase) + walker.noise_m * normal(draws));
        at = geo::destination(
            at, 0.0, walker.drift_m * std::cos(0.7 * phase) + walker.noise_m * normal(draws));
        track.parts.back().push_back(
            {.at = at,
             .height_m = height(along_m) + walker.noise_m * normal(draws),
             .time = geo::Instant(std::chrono::milliseconds(std::llround(clock_s * 1000.0)))});
    }
    return track;
}

LearnedPace learn(std::vector<geo::Track> tracks,
                  WalkingModel model = WalkingModel::swiss_signpost,
                  const RecordedUnder& under = {}) {
    geo::TrackFile file;
    file.tracks = std::move(tracks);
    return learned_pace(recorded_motion({file}, nullptr), model, under);
}

const auto level = [](double /*along_m*/) { return 300.0; };
const auto hills = [](double along_m) { return 400.0 + 150.0 * std::sin(along_m / 600.0); };

TEST(LearnedPace, FindsASpeedOnTheLevelExactlyWithoutNoise) {
    const LearnedPace learned =
        learn({recorded({}, level, [](double) { return 1.25; })}, WalkingModel::constant);
    ASSERT_TRUE(learned.level_speed_mps);
    EXPECT_NEAR(learned.level_speed_mps->value, 1.25, 0.002);
    EXPECT_NEAR(learned.level_speed_mps->hours, 1.0, 0.1);
}

TEST(LearnedPace, FindsTheFactorOnHillsForEachModel) {
    for (const WalkingModel model :
         {WalkingModel::swiss_signpost, WalkingModel::tobler, WalkingModel::naismith_langmuir}) {
        const auto speed = [&](double slope) { return 0.9 * walking_speed_mps(model, slope); };
        const LearnedPace learned =
            learn({recorded({.seconds = 4.0 * 3600.0}, hills, speed)}, model);
        EXPECT_NEAR(learned.pace.value().value, 0.9, 0.03) << walking_model_name(model);
        EXPECT_LT(learned.fits.front().scatter, 0.06);
    }
}

TEST(LearnedPace, NoiseOfAReceiverMovesItByLessThanThreePercent) {
    // One fix a second, 5 m of white noise and 8 m of wandering: worse than receivers are in the
    // open. The plain sum of steps would be five times too long.
    const auto speed = [](double /*slope*/) { return 1.2; };
    for (const double every_s : {1.0, 5.0, 20.0}) {
        const Walker walker{.seconds = 3.0 * 3600.0,
                            .every_s = every_s,
                            .noise_m = every_s > 10.0 ? 3.0 : 5.0,
                            .drift_m = 8.0,
                            .halts = {{2000.0, 600.0}}};
        const LearnedPace learned = learn({recorded(walker, level, speed)}, WalkingModel::constant);
        EXPECT_NEAR(learned.level_speed_mps.value().value, 1.2, 0.036) << every_s;
    }
}

TEST(LearnedPace, HaltsAreSetAsideAndCounted) {
    const Walker walker{.seconds = 3.0 * 3600.0,
                        .every_s = 5.0,
                        .noise_m = 3.0,
                        .halts = {{1800.0, 600.0}, {5000.0, 1200.0}, {8000.0, 2400.0}}};
    const LearnedPace learned =
        learn({recorded(walker, level, [](double) { return 1.3; })}, WalkingModel::constant);
    EXPECT_NEAR(learned.halted_s, 4200.0, 180.0);
    EXPECT_NEAR(learned.level_speed_mps.value().value, 1.3, 0.03);
    // 30 minutes in two rests over 1 h 50 min on the move; the third is no rest but a meal.
    EXPECT_NEAR(learned.rest_per_hour_s.value().value, 1800.0 / 6600.0 * 3600.0, 120.0);
}

TEST(LearnedPace, ADriveOnTheWayIsSetAside) {
    geo::Track walk = recorded({}, level, [](double) { return 1.2; });
    geo::Track drive = recorded({.seconds = 1200.0}, level, [](double) { return 15.0; });
    for (geo::TrackPoint& point : drive.parts[0])
        *point.time += std::chrono::hours(2);
    geo::TrackFile file;
    file.tracks = {walk, drive};
    const Recorded both = recorded_motion({file}, nullptr);
    EXPECT_GT(both.too_fast_s, 1000.0);
    EXPECT_NEAR(
        learned_pace(both, WalkingModel::constant).level_speed_mps.value().value, 1.2, 0.01);
}

TEST(LearnedPace, TheLoadOfThatDayIsTakenOut) {
    const geo::Track track = recorded({}, level, [](double) { return 1.0; });
    const LearnedPace with =
        learn({track}, WalkingModel::constant, {.load_factor = 0.8, .terrain_factor = 1.0});
    EXPECT_NEAR(with.level_speed_mps.value().value, 1.25, 0.01);
}

TEST(LearnedPace, ClimbAndDescentStandApart) {
    const auto speed = [](double slope) { return slope > 0.0 ? 0.8 : 1.4; };
    const LearnedPace learned = learn({recorded({.seconds = 4.0 * 3600.0}, hills, speed)});
    double up_mps = 0.0;
    double down_mps = 0.0;
    for (const SlopePace& row : learned.slopes) {
        if (row.from == 0.10)
            up_mps = row.speed_mps.value;
        if (row.to == -0.10)
            down_mps = row.speed_mps.value;
        EXPECT_TRUE(row.from >= 0.03 ? row.climb_mps > 0.0 : true);
    }
    EXPECT_NEAR(up_mps, 0.8, 0.04);
    EXPECT_NEAR(down_mps, 1.4, 0.06);
}

TEST(LearnedPace, AfloatStillAndFlowingWaterStandApart) {
    geo::Track lake = recorded({}, level, [](double) { return 1.1; });
    lake.type = "paddle";
    lake.name = "Long lake";
    geo::Track river = recorded(
        {}, [](double along_m) { return 300.0 - 0.004 * along_m; }, [](double) { return 2.2; });
    river.type = "paddle";
    for (geo::TrackPoint& point : river.parts[0])
        *point.time += std::chrono::hours(5);
    const LearnedPace learned = learn({lake, river});
    EXPECT_NEAR(learned.calm_speed_mps.value().value, 1.1, 0.01);
    EXPECT_NEAR(learned.flowing_speed_mps.value().value, 2.2, 0.02);
    EXPECT_FALSE(learned.pace);
}

TEST(LearnedPace, ChangeOversAreTheTimeBetweenWaysOfTravel) {
    geo::Track walk = recorded({}, level, [](double) { return 1.2; });
    geo::Track lake = recorded({}, level, [](double) { return 1.1; });
    lake.type = "paddle on a lake";
    const geo::Position shore = walk.parts[0].back().at;
    const geo::Position start = lake.parts[0].front().at;
    for (geo::TrackPoint& point : lake.parts[0]) {
        *point.time += std::chrono::seconds(3600 + 2400);
        point.at.lat_deg += shore.lat_deg - start.lat_deg;
    }
    const LearnedPace learned = learn({walk, lake});
    EXPECT_NEAR(learned.boots_to_boat_s.value().value, 2400.0, 60.0);
    EXPECT_FALSE(learned.boat_to_boots_s);
    for (geo::TrackPoint& point : lake.parts[0])
        point.at.lat_deg += 0.05; // somewhere else: another trip
    EXPECT_FALSE(learn({walk, lake}).boots_to_boat_s);
}

TEST(LearnedPace, TheSampleRecordingGivesBackWhatItWasMadeWith) {
    // sample-routes/make/recorded.cpp: 0.86 of Tobler's function, 4.3 km/h afloat, 6 % of noise.
    const geo::TrackFile file =
        geo::read_tracks(test::root / "sample-routes" / "saddle" / "recorded.gpx");
    const LearnedPace learned =
        learned_pace(recorded_motion({file}, nullptr), WalkingModel::tobler);
    EXPECT_NEAR(learned.pace.value().value, 0.86, 0.026);
    EXPECT_NEAR(learned.calm_speed_mps.value().value, 4.3 / 3.6, 0.03);
    EXPECT_NEAR(learned.halted_s, (6.0 + 22.0 + 8.0) * 60.0, 200.0);
}

TEST(LearnedPace, WithoutTimesNothingIsLearned) {
    geo::Track track = recorded({}, level, [](double) { return 1.2; });
    for (geo::TrackPoint& point : track.parts[0])
        point.time.reset();
    geo::TrackFile file;
    file.tracks = {track};
    const Recorded none = recorded_motion({file}, nullptr);
    EXPECT_TRUE(none.runs.empty());
    EXPECT_EQ(none.untimed, 1U);
    EXPECT_FALSE(learned_pace(none, WalkingModel::tobler).pace);
}

} // namespace
} // namespace tumpline::planner
