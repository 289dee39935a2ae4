#include "planner/models/ford.h"

#include <gtest/gtest.h>

namespace tumpline::planner {
namespace {

constexpr Wader grown_up{.height_m = 1.7, .body_kg = 70.0};    // 119 m kg
constexpr Wader child{.height_m = 1.3, .body_kg = 28.0};       // 36.4 m kg
constexpr Wader small_child{.height_m = 1.1, .body_kg = 19.0}; // 20.9 m kg

TEST(Ford, GrownUpsWadeToTheKneeAndToTheLimitOfTheFloodCode) {
    // 0.5 m at 0.8 m/s: 0.40 m2/s, knee deep.
    EXPECT_EQ(ford_risk({.depth_m = 0.5, .speed_mps = 0.8}, grown_up), FordRisk::shallow);
    EXPECT_EQ(ford_risk({.depth_m = 0.5, .speed_mps = 0.82}, grown_up), FordRisk::deep);
    EXPECT_EQ(ford_risk({.depth_m = 0.55, .speed_mps = 0.1}, grown_up), FordRisk::deep);
    // 0.5 m at 1.2 m/s: 0.60 m2/s.
    EXPECT_EQ(ford_risk({.depth_m = 0.5, .speed_mps = 1.2}, grown_up), FordRisk::refused);
    EXPECT_EQ(ford_risk({.depth_m = 1.25, .speed_mps = 0.0}, grown_up), FordRisk::refused);
}

TEST(Ford, ChildrenAreRefusedWhereGrownUpsLookTwice) {
    EXPECT_EQ(ford_risk({.depth_m = 0.4, .speed_mps = 0.9}, child), FordRisk::shallow);
    EXPECT_EQ(ford_risk({.depth_m = 0.55, .speed_mps = 0.1}, child), FordRisk::refused);
    EXPECT_EQ(ford_risk({.depth_m = 0.1, .speed_mps = 0.1}, small_child), FordRisk::refused);
}

} // namespace
} // namespace tumpline::planner
