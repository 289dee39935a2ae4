#include "planner/defaults/wind_shy.h"

#include <gtest/gtest.h>

namespace tumpline::planner {
namespace {

AssumedCraft with_ceiling(double ceiling_mps) {
    AssumedCraft craft{};
    craft.wind_ceiling_mps = ceiling_mps;
    return craft;
}

TEST(WindShy, IsTheCraftOfTheLowestCeilingTheFirstOfEquals) {
    EXPECT_EQ(most_wind_shy({with_ceiling(8.0), with_ceiling(5.5), with_ceiling(5.5)}), 1U);
    EXPECT_EQ(most_wind_shy({with_ceiling(8.0)}), 0U);
    EXPECT_FALSE(most_wind_shy({}));
}

} // namespace
} // namespace tumpline::planner
