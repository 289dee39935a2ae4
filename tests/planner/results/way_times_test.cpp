/// Times from one point to another, there and back, on level ground at a metre a second.

#include "planner/results/way_times.h"

#include "planner/make_plan.h"
#include "tests/support/level_trip.h"

#include <gtest/gtest.h>

namespace tumpline::planner {
namespace {

TEST(WayTimes, OnFootAreTheLengthBothWays) {
    const test::RandomTrip made = test::level_trip({{.length_m = 10'000.0}}, {});
    const Prepared prepared = prepare(made.trip, made.route);
    const Solved settled = settle_trip(prepared);
    const Assembly draft{prepared, settled};
    const WayTimes way(draft);
    EXPECT_NEAR(way.forward_s(2'000.0, 9'000.0), 7'000.0, 1.0);
    ASSERT_TRUE(way.back(9'000.0, 2'000.0));
    EXPECT_NEAR(way.back(9'000.0, 2'000.0)->sum_s(), 7'000.0, 1.0);
    // Set off at 06:00.
    EXPECT_NEAR(way.clock_s(0, 500.0), 6.0 * 3600.0 + 500.0, 1.0);
}

/// There and back again: the way back with a current is the way there against it.
TEST(WayTimes, AfloatHaveTheCurrentAgainstThemOnTheWayBack) {
    const auto moving = [](double current_mps) {
        const test::RandomTrip made = test::level_trip(
            {{.travel = Travel::paddle, .length_m = 6'000.0, .current_mps = current_mps}}, {});
        const Prepared prepared = prepare(made.trip, made.route);
        const Solved settled = settle_trip(prepared);
        const Assembly draft{prepared, settled};
        const WayTimes way(draft);
        const std::optional<WayTimes::Back> back = way.back(6'000.0, 0.0);
        return std::pair(way.forward_s(0.0, 6'000.0), back ? back->moving_s : -1.0);
    };
    EXPECT_NEAR(moving(0.0).first, moving(0.0).second, 1.0);
    EXPECT_NEAR(moving(0.3).second, moving(-0.3).first, 1.0);
    EXPECT_NEAR(moving(-0.3).second, moving(0.3).first, 1.0);
    EXPECT_LT(moving(0.3).first, moving(0.3).second);
    EXPECT_EQ(moving(3.0).second, -1.0) << "no way back against three metres a second";
}

TEST(WayTimes, KnowWhatIsAWayOut) {
    EXPECT_TRUE(is_way_out(PlaceKind::exit));
    EXPECT_TRUE(is_way_out(PlaceKind::finish));
    EXPECT_FALSE(is_way_out(PlaceKind::camp));
    EXPECT_FALSE(is_way_out(PlaceKind::water));
}

/// 8 700 m to 2 300 m, both amid a stretch: 6 400 m, not 11 000.
TEST(WayTimes, BackFromAmidAStretchTakeItsShare) {
    const test::RandomTrip made = test::level_trip({{.length_m = 10'000.0}}, {});
    const Prepared prepared = prepare(made.trip, made.route);
    const Solved settled = settle_trip(prepared);
    const Assembly draft{prepared, settled};
    const std::optional<WayTimes::Back> back = WayTimes(draft).back(8'700.0, 2'300.0);
    ASSERT_TRUE(back);
    EXPECT_NEAR(back->moving_s, 6'400.0, 1.0);
    EXPECT_NEAR(back->changes_s, 0.0, 1e-9);
}

} // namespace
} // namespace tumpline::planner
