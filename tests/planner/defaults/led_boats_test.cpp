#include "planner/defaults/led_boats.h"

#include <gtest/gtest.h>

namespace tumpline::planner {
namespace {

TEST(LedBoats, HaveAPaceOfTheirOwnWithinWhatTheTradeSays) {
    EXPECT_DOUBLE_EQ(usual_led_mps(Travel::line), 0.4);
    EXPECT_DOUBLE_EQ(usual_led_mps(Travel::wade), 0.3);
    EXPECT_DOUBLE_EQ(usual_led_mps(Travel::pole), 0.6);
    for (const Travel way : {Travel::line, Travel::wade, Travel::pole}) {
        EXPECT_LT(led_range(way).slow_mps, usual_led_mps(way));
        EXPECT_GT(led_range(way).fast_mps, usual_led_mps(way));
    }
    EXPECT_DOUBLE_EQ(led_range(Travel::line).fast_mps, 0.7);
    EXPECT_DOUBLE_EQ(led_range(Travel::wade).fast_mps, 0.5);
    EXPECT_DOUBLE_EQ(led_range(Travel::pole).slow_mps, 0.5);
}

TEST(LedBoats, CostWhatTheirLikesCost) {
    EXPECT_DOUBLE_EQ(led_met(Travel::line), 6.0); // hiking across country
    EXPECT_DOUBLE_EQ(led_met(Travel::wade), 7.0); // a portage
    EXPECT_DOUBLE_EQ(led_met(Travel::pole), 5.8); // hard paddling
}

} // namespace
} // namespace tumpline::planner
