#include "planner/journey/pace.h"

#include "tests/support/level_trip.h"

#include <gtest/gtest.h>

namespace tumpline::planner {
namespace {

/// 2 km at 1 m/s on the level.
struct LevelGround {
    test::RandomTrip made = test::level_trip({{.length_m = 2000.0}}, {});
    Assumed assumed = assume(made.trip);
    Stretch stretch = make_stretches(made.trip, made.route, assumed, 0.0).stretches[0];

    [[nodiscard]] AssumedMember at_pace(double pace) const {
        AssumedMember member = assumed.members[0];
        member.pace = pace;
        return member;
    }
};

TEST(Pace, TimeIsLengthOverThePaceTimesTheGround) {
    LevelGround level;
    level.stretch.time_factor = 1.3;
    EXPECT_NEAR(walk_s(level.stretch, level.at_pace(1.25), level.assumed.models, {0.0, 0.0}),
                2000.0 * 1.3 / 1.25, // 2080 s
                1e-3);
}

TEST(Pace, OfThePartyIsThatOfItsSlowestWhateverTheLoad) {
    LevelGround level;
    level.assumed.models.load_effect = true;
    const ChangingLoad load{20.0, 16.0};
    const AssumedMember quick = level.at_pace(2.0);
    const double own_s = walk_s(level.stretch, quick, level.assumed.models, load);
    EXPECT_GT(own_s, 1000.0);
    const AssumedMember together =
        at_party_pace(quick, level.assumed.models, {level.stretch, load, 2500.0});
    EXPECT_NEAR(together.pace, 2.0 * own_s / 2500.0, 1e-12);
    EXPECT_NEAR(walk_s(level.stretch, together, level.assumed.models, load), 2500.0, 1e-9);
}

TEST(Pace, OfADayOfADrawIsAFactorOnItsMembers) {
    LevelGround level;
    EXPECT_EQ(member_on(level.assumed, 0, 0).pace, level.assumed.members[0].pace);
    level.assumed.departures.day_of = {1};
    level.assumed.departures.days = {{.pace = {0.5}}, {.pace = {0.9}}};
    EXPECT_NEAR(member_on(level.assumed, 0, 0).pace, 0.9 * level.assumed.members[0].pace, 1e-12);
}

TEST(Pace, AfloatIsCalmSpeedAndCreditedCurrent) {
    // 6 km with a current of 1 m/s: 1.2 + 0.85 m/s over the ground.
    const test::RandomTrip made =
        test::level_trip({{.travel = Travel::paddle, .length_m = 6000.0, .current_mps = 1.0}}, {});
    const Assumed assumed = assume(made.trip);
    const Stretch stretch = make_stretches(made.trip, made.route, assumed, 0.0).stretches[0];
    const Paddle went =
        paddle(stretch, assumed.craft[0], assumed, assumed.craft[0].reference_kg, {});
    EXPECT_NEAR(went.moving_s, 6000.0 / 2.05, 0.1);
    EXPECT_FALSE(went.stopped);
    const Paddle against = paddle(stretch,
                                  assumed.craft[0],
                                  assumed,
                                  assumed.craft[0].reference_kg,
                                  {.current = -1.5}); // 1.5 m/s against 1.2
    EXPECT_TRUE(against.stopped);
    EXPECT_TRUE(against.by_current);
    EXPECT_NEAR(against.moving_s, 6000.0 / 0.3, 1.0);
}

} // namespace
} // namespace tumpline::planner
