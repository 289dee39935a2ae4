#include "planner/models/avalanche.h"

#include <gtest/gtest.h>

namespace tumpline::planner {
namespace {

TEST(Avalanche, StartsOnGroundOfThirtyToFiftyDegrees) {
    EXPECT_FALSE(may_release(29.9));
    EXPECT_TRUE(may_release(30.0));
    EXPECT_TRUE(may_release(50.0));
    EXPECT_FALSE(may_release(50.1));
}

// tan 19 degrees = 0.3443: 100 m of height reach 290.4 m.
TEST(Avalanche, ReachesAsFarAsItsAngle) {
    EXPECT_TRUE(may_reach({.away_m = 290.0, .below_m = 100.0}));
    EXPECT_FALSE(may_reach({.away_m = 291.0, .below_m = 100.0}));
    EXPECT_FALSE(may_reach({.away_m = 0.0, .below_m = 0.0}));
    EXPECT_FALSE(may_reach({.away_m = 10.0, .below_m = -100.0})); // it lies below
}

} // namespace
} // namespace tumpline::planner
