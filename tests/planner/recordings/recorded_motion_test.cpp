#include "planner/recordings/recorded_motion.h"

#include "tests/support/recorded_walk.h"

#include <gtest/gtest.h>

namespace tumpline::planner {
namespace {

using test::hills;
using test::level;
using test::recorded;
using test::steadily;
using test::Walker;

Recorded read(geo::Track track) {
    geo::TrackFile file;
    file.tracks = {std::move(track)};
    return recorded_motion({file}, nullptr);
}

TEST(RecordedMotion, AWalkIsTakenAsOnFootAndSaysWhy) {
    const Recorded walk = read(recorded({}, hills, steadily(1.2)));
    ASSERT_EQ(walk.tracks.size(), 1U);
    EXPECT_EQ(walk.tracks[0].taken_as, "on foot");
    EXPECT_EQ(walk.tracks[0].why, "its type tells so");
    EXPECT_NEAR(walk.tracks[0].moving_s, 3600.0, 30.0);
}

TEST(RecordedMotion, ARunIsNoWalkWhateverItsTypeSays) {
    const Recorded run = read(recorded({}, hills, steadily(10.0 / 3.6)));
    EXPECT_TRUE(run.runs.empty());
    EXPECT_EQ(run.tracks[0].taken_as, "left out");
    EXPECT_NE(run.tracks[0].why.find("10.0 km/h: a run or a ride"), std::string::npos)
        << run.tracks[0].why;
    EXPECT_NEAR(run.other_s, 3600.0, 60.0);
}

TEST(RecordedMotion, ARunAlongAnEstuaryIsNoPaddling) {
    geo::Track track = recorded(
        {}, [](double) { return 1.0; }, steadily(10.5 / 3.6));
    track.type.clear();
    const Recorded run = read(track);
    EXPECT_TRUE(run.runs.empty());
    EXPECT_EQ(run.tracks[0].taken_as, "left out");
}

TEST(RecordedMotion, ASlowRideOfThatTypeIsNoWalk) {
    geo::Track track = recorded({}, hills, steadily(6.0 / 3.6));
    track.type = "mountain_biking";
    const Recorded ride = read(track);
    EXPECT_TRUE(ride.runs.empty());
    EXPECT_EQ(ride.tracks[0].why, "its type or name tells of a ride");
}

TEST(RecordedMotion, ARestOnASummitIsNoLake) {
    // 50 min up to the top, half an hour of rest there, and down.
    const auto summit = [](double along_m) { return 2100.0 - 0.2 * std::abs(along_m - 3000.0); };
    geo::Track track = recorded(
        {.seconds = 5400.0, .drift_m = 6.0, .halts = {{3000.0, 1800.0}}}, summit, steadily(1.0));
    track.type.clear();
    const Recorded walk = read(track);
    EXPECT_EQ(walk.tracks[0].taken_as, "on foot");
    for (const auto& run : walk.runs)
        for (const Window& window : run.windows)
            EXPECT_EQ(window.motion, Motion::on_foot);
    EXPECT_EQ(walk.unsure_s, 0.0);
}

TEST(RecordedMotion, LevelGroundAtAWalkersOrAPaddlersSpeedIsLeftOut) {
    // Up to a level of 5 km and on up: a lake, or a walk beside it.
    const auto shore = [](double along_m) {
        return along_m < 2000.0   ? 400.0 + 0.05 * along_m
               : along_m < 7000.0 ? 500.0
                                  : 500.0 + 0.05 * (along_m - 7000.0);
    };
    geo::Track track = recorded({.seconds = 7500.0, .every_s = 10.0}, shore, steadily(1.2));
    track.type.clear();
    const Recorded both = read(track); // 9000 m, of them 5000 m at 1.2 m/s: 4167 s
    EXPECT_NEAR(both.unsure_s, 4167.0, 150.0);
    EXPECT_EQ(both.tracks[0].taken_as, "on foot");
    EXPECT_NE(both.tracks[0].why.find("a guess"), std::string::npos) << both.tracks[0].why;
    for (const auto& run : both.runs)
        for (const Window& window : run.windows)
            EXPECT_EQ(window.motion, Motion::on_foot);
}

TEST(RecordedMotion, HaltsAtTheEndsAreMarked) {
    const Recorded walk = read(
        recorded({.seconds = 9000.0, .halts = {{0.0, 600.0}, {3000.0, 900.0}, {5400.0, 3600.0}}},
                 hills,
                 steadily(1.2)));
    ASSERT_EQ(walk.halts.size(), 3U);
    EXPECT_TRUE(walk.halts[0].at_an_end);
    EXPECT_FALSE(walk.halts[1].at_an_end);
    EXPECT_TRUE(walk.halts[2].at_an_end) << "the last hour without motion";
}

TEST(RecordedMotion, TimesThatRunBackwardsAreSaid) {
    geo::Track track = recorded({.every_s = 5.0}, level, steadily(1.2));
    track.repairs.backward_times = track.parts[0].size() - 1;
    for (std::size_t i = 1; i < track.parts[0].size(); ++i)
        track.parts[0][i].time.reset(); // as the repair leaves it
    const Recorded none = read(track);
    EXPECT_EQ(none.untimed, 1U);
    EXPECT_NE(none.tracks[0].why.find("run backwards"), std::string::npos);
}

} // namespace
} // namespace tumpline::planner
