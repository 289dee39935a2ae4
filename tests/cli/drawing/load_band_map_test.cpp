/// The band on the map is as wide as the load.

#include "cli/drawing/load_band_map.h"

#include "tests/support/hand_built_plan.h"
#include "tests/support/hand_built_route.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <string>
#include <vector>

namespace tumpline::cli {
namespace {

// In a drawing of 340 pixels the heaviest load is 10 wide. From 20 to 10 kg that is 10 to 5, in 21
// runs: the first is drawn at 9.88, the last at 5.12, both to the quarter: 10 and 5.
TEST(LoadBandMap, IsAsWideAsTheLoadFromEndToEnd) {
    planner::Plan plan = test::hand_built_plan();
    plan.ledger = {};
    for (planner::PlanLeg& leg : plan.legs)
        for (planner::MemberLoad& load : leg.loads)
            load.pack_start_kg = load.pack_end_kg = 0.0;
    plan.legs[0].loads[0].pack_start_kg = 20.0;
    plan.legs[0].loads[0].pack_end_kg = 10.0;
    const std::string drawn = band_markup(
        plan,
        test::hand_built_route(plan),
        {{.x = 0.0, .y = 50.0, .along_m = 0.0}, {.x = 300.0, .y = 50.0, .along_m = 14'200.0}},
        {.width = 340.0, .text = 12.0, .id = "m"});
    const std::size_t fill = drawn.find("class=\"fill\"");
    ASSERT_NE(fill, std::string::npos);
    const std::string group = drawn.substr(fill, drawn.find("</g>", fill) - fill);
    std::vector<double> widths;
    const std::string key = "stroke-width=\"";
    for (std::size_t at = group.find(key); at != std::string::npos; at = group.find(key, at + 1))
        widths.push_back(std::stod(group.substr(at + key.size())));
    ASSERT_GT(widths.size(), 15U);
    EXPECT_NEAR(widths.front(), 10.0, 0.26);
    EXPECT_NEAR(widths.back(), 5.0, 0.26);
    EXPECT_TRUE(std::is_sorted(widths.rbegin(), widths.rend()));
}

} // namespace
} // namespace tumpline::cli
