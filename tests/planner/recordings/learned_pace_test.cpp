#include "planner/recordings/learned_pace.h"

#include "geo/lines/geodesic.h"
#include "geo/tracks/read_tracks.h"
#include "tests/support/recorded_walk.h"
#include "tests/support/source_tree.h"

#include <gtest/gtest.h>

#include <cmath>
#include <filesystem>

namespace tumpline::planner {
namespace {

using test::hills;
using test::level;
using test::recorded;
using test::Walker;

LearnedPace learn(std::vector<geo::Track> tracks,
                  WalkingModel model = WalkingModel::swiss_signpost,
                  const RecordedUnder& under = {}) {
    geo::TrackFile file;
    file.tracks = std::move(tracks);
    return learned_pace(recorded_motion({file}, nullptr), model, under);
}

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

TEST(LearnedPace, RestsAreNotLearnedFromUnderAnHour) {
    const auto speed = [](double) { return 1.2; };
    const Walker half{.seconds = 3000.0, .halts = {{1200.0, 600.0}}}; // 40 min on the move
    EXPECT_FALSE(learn({recorded(half, level, speed)}).rest_per_hour_s);
    const Walker more{.seconds = 7800.0, .halts = {{1200.0, 600.0}}}; // 2 h on the move
    EXPECT_NEAR(learn({recorded(more, level, speed)}).rest_per_hour_s.value().value, 300.0, 15.0);
}

TEST(LearnedPace, AnHourOfStandingAtTheEndIsNoRest) {
    const Walker walker{.seconds = 12600.0,
                        .halts = {{3600.0, 600.0}, {7800.0, 1500.0}, {11400.0, 1200.0}}};
    const LearnedPace learned = learn({recorded(walker, level, [](double) { return 1.2; })});
    // 20 min of standing at the end; 35 min of rests in 155 min on the move.
    EXPECT_NEAR(learned.still_ends_s, 1200.0, 60.0);
    EXPECT_NEAR(learned.rest_per_hour_s.value().value, 2100.0 / 9300.0 * 3600.0, 40.0);
}

TEST(LearnedPace, NoLevelSpeedIsLearnedFromClimbsAlone) {
    const auto climb = [](double along_m) { return 500.0 + 0.2 * along_m; };
    const LearnedPace learned =
        learn({recorded({.seconds = 7200.0}, climb, [](double) { return 0.7; })});
    EXPECT_TRUE(learned.pace);
    EXPECT_FALSE(learned.level_walked);
    EXPECT_FALSE(learned.level_speed_mps);
}

TEST(LearnedPace, TheModelThatMovedTheWalkerIsRecommendedWithItsMargin) {
    // Six hours over hills, as each model has it; the others differ on them by some percent.
    for (const WalkingModel model : {WalkingModel::tobler, WalkingModel::naismith_langmuir}) {
        const auto speed = [&](double slope) { return 0.9 * walking_speed_mps(model, slope); };
        const LearnedPace learned = learn({recorded({.seconds = 6.0 * 3600.0}, hills, speed)});
        ASSERT_TRUE(learned.advice) << walking_model_name(model);
        EXPECT_EQ(learned.advice->best.model, model) << walking_model_name(model);
        EXPECT_EQ(learned.advice->other.model, WalkingModel::swiss_signpost);
        EXPECT_TRUE(learned.advice->clear);
        EXPECT_NEAR(learned.advice->best.pace, 0.9, 0.03);
        EXPECT_LT(learned.advice->best.off.value(), 0.05);
        EXPECT_DOUBLE_EQ(learned.advice->margin,
                         *learned.advice->other.off - *learned.advice->best.off);
    }
}

TEST(LearnedPace, OnLevelGroundNoModelIsClearlyBestAndUnderAnHourNoneIsNamed) {
    const auto speed = [](double) { return 1.2; };
    const LearnedPace learned = learn({recorded({.seconds = 4.0 * 3600.0}, level, speed)});
    ASSERT_TRUE(learned.advice);
    EXPECT_FALSE(learned.advice->clear) << "on the level they all are one factor";
    EXPECT_FALSE(learn({recorded({.seconds = 2400.0}, level, speed)}).advice);
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

TEST(LearnedPace, SixStretchesAreEnoughToRecommendAModelAndFiveAreNot) {
    // Five whole ones of ten minutes, and one of six; one of a minute is none.
    const auto speed = [](double) { return 1.2; };
    EXPECT_TRUE(learn({recorded({.seconds = 3000.0 + 360.0}, hills, speed)}).advice);
    EXPECT_FALSE(learn({recorded({.seconds = 3000.0 + 60.0}, hills, speed)}).advice);
}

} // namespace
} // namespace tumpline::planner
