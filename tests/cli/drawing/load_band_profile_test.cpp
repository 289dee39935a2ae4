/// The profile over a stretch of the route, its lines worked from the size of the drawing.

#include "cli/drawing/load_band.h"
#include "tests/support/hand_built_plan.h"
#include "tests/support/hand_built_route.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cstddef>
#include <string>
#include <vector>

namespace tumpline::cli {
namespace {

using testing::HasSubstr;

/// 340 pixels wide with letters of 12: the plot runs from 5.5 * 12 = 66 to 340 - 9.6 = 330.4.
const Drawing narrow{.width = 340.0, .text = 12.0, .names = false, .id = "p"};

/// Day 1, 17.3 km, rising evenly from 0 to `high_m`.
std::string even_rise(double high_m, planner::UnitSystem units) {
    const planner::Plan plan = test::hand_built_plan();
    planner::Route route = test::hand_built_route(plan);
    for (planner::RouteLeg& leg : route.legs)
        leg.profile.heights_m = {high_m * leg.from_m / 17300.0, high_m * leg.to_m / 17300.0};
    return profile_drawing(
        plan, route, {.from_m = 0.0, .to_m = 17300.0}, narrow, {units, "UTC", Blank::kept});
}

// The ground's plot is 3 * 12 = 36 high from 40.8 to 4.8, for 0 to 2000 of the reader's unit: 990
// is 36 * 0.495 = 17.8 over the foot.
TEST(LoadBandProfile, DrawsTheGroundInTheReadersUnit) {
    const std::string skyline = R"(class="skyline" d="M66 40.8l264.4 -17.8")";
    EXPECT_THAT(even_rise(990.0, planner::UnitSystem::metric), HasSubstr(skyline));
    EXPECT_THAT(even_rise(990.0 * 0.3048, planner::UnitSystem::imperial), HasSubstr(skyline));
}

// Day 1 ends at 17.3 km and day 2 at 32.4 of 46 km: 66 + 264.4 * 17.3 / 46.
TEST(LoadBandProfile, DrawsALineAtTheEndOfEachDayButTheLast) {
    const planner::Plan plan = test::hand_built_plan();
    const double to_m = plan.days.back().to_m;
    const std::string drawn = profile_drawing(plan,
                                              test::hand_built_route(plan),
                                              {.from_m = 0.0, .to_m = to_m},
                                              narrow,
                                              {planner::UnitSystem::metric, "UTC", Blank::kept});
    std::vector<std::string> starts;
    for (std::size_t at = drawn.find("night-line\" d=\"M"); at != std::string::npos;
         at = drawn.find("night-line\" d=\"M", at + 1)) {
        const std::size_t x = at + 16;
        starts.push_back(drawn.substr(x, drawn.find(' ', x) - x));
    }
    ASSERT_EQ(starts.size(), 2U);
    for (std::size_t day = 0; day < 2; ++day)
        EXPECT_NEAR(std::stod(starts[day]), 66.0 + 264.4 * plan.days[day].to_m / to_m, 0.06);
}

} // namespace
} // namespace tumpline::cli
