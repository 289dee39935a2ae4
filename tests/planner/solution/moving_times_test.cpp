#include "planner/solution/moving_times.h"

#include "planner/make_plan.h"
#include "tests/support/level_trip.h"

#include <gtest/gtest.h>

#include <numeric>

namespace tumpline::planner {
namespace {

/// The moving time of every stretch of a trip under the loads of its plan.
std::vector<double> moving_of(const test::RandomTrip& made) {
    const Prepared prepared = prepare(made.trip, made.route);
    const Solved settled = settle_trip(prepared);
    const MovingTimes times(made.route, prepared.stretches, prepared.assumed);
    std::vector<Afloat> afloat(prepared.stretches.stretches.size());
    return times.of_all(settled.loads, settled.timeline, afloat);
}

double sum(const std::vector<double>& figures) {
    return std::accumulate(figures.begin(), figures.end(), 0.0);
}

TEST(MovingTimes, OnFootAreLengthOverSpeed) {
    // 3 km at 1 m/s
    EXPECT_NEAR(sum(moving_of(test::level_trip({{.length_m = 3000.0}}, {}))), 3000.0, 0.1);
}

TEST(MovingTimes, TheSlowestWalkerSetsThePace) {
    test::RandomTrip made = test::level_trip({{.length_m = 3000.0}}, {});
    Member slow = made.trip.party.front();
    slow.name = "Ben";
    slow.level_speed_mps = 0.8;
    made.trip.party.push_back(slow);
    EXPECT_NEAR(sum(moving_of(made)), 3750.0, 0.1); // 3000 / 0.8
}

TEST(MovingTimes, TheCurrentBearsTheBoat) {
    const auto paddle = [](double current_mps) {
        return sum(moving_of(test::level_trip(
            {{.travel = Travel::paddle, .length_m = 3000.0, .current_mps = current_mps}}, {})));
    };
    EXPECT_NEAR(paddle(0.0), 2500.0, 0.1); // 3000 / 1.2
    // 85 of a hundred of the current count downstream [PaddlingFaq]: 3000 / (1.2 + 0.68)
    EXPECT_NEAR(paddle(0.8), 1595.74, 0.1);
    EXPECT_NEAR(paddle(-0.4), 3750.0, 0.1); // 3000 / 0.8
}

TEST(MovingTimes, TheSlowestBoatIsNoted) {
    test::RandomTrip made = test::level_trip({{.travel = Travel::paddle, .length_m = 3000.0}}, {});
    Member ben = made.trip.party.front();
    ben.name = "Ben";
    made.trip.party.push_back(ben);
    Craft slow = made.trip.craft.front();
    slow.name = "slow boat";
    slow.crew = {"Ben"};
    slow.calm_speed_mps = 1.0;
    made.trip.craft.push_back(slow);
    const Prepared prepared = prepare(made.trip, made.route);
    const Solved settled = settle_trip(prepared);
    const MovingTimes times(made.route, prepared.stretches, prepared.assumed);
    std::vector<Afloat> afloat(prepared.stretches.stretches.size());
    const std::vector<double> moving_s = times.of_all(settled.loads, settled.timeline, afloat);
    EXPECT_NEAR(sum(moving_s), 3000.0, 0.1); // at 1 m/s
    EXPECT_EQ(afloat.front().slowest, 1U);
    EXPECT_FALSE(afloat.front().paddle.stopped);
}

} // namespace
} // namespace tumpline::planner
