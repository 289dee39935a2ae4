#include "geo/position.h"

#include <gtest/gtest.h>

#include <limits>

namespace tumpline::geo {
namespace {

TEST(Position, IsValidBetweenThePolesAndOnceRound) {
    EXPECT_TRUE(is_valid({.lat_deg = 90.0, .lon_deg = -180.0}));
    EXPECT_FALSE(is_valid({.lat_deg = 90.5, .lon_deg = 10.0}));
    EXPECT_FALSE(is_valid({.lat_deg = -90.5, .lon_deg = 10.0}));
    EXPECT_TRUE(is_valid({.lat_deg = 10.0, .lon_deg = 90.5}));
    EXPECT_FALSE(is_valid({.lat_deg = 10.0, .lon_deg = 180.5}));
    const double none = std::numeric_limits<double>::quiet_NaN();
    EXPECT_FALSE(is_valid({.lat_deg = none, .lon_deg = 10.0}));
    EXPECT_FALSE(is_valid({.lat_deg = 10.0, .lon_deg = none}));
}

} // namespace
} // namespace tumpline::geo
