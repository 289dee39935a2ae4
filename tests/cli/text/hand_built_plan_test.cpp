#include "tests/support/hand_built_plan.h"

#include <gtest/gtest.h>

namespace tumpline::test {
namespace {

TEST(HandBuiltPlan, ItsSumsAgree) {
    const planner::Plan plan = hand_built_plan();
    double along_m = 0.0;
    for (const planner::PlanLeg& leg : plan.legs) {
        EXPECT_DOUBLE_EQ(leg.from_m, along_m) << leg.name;
        along_m = leg.to_m;
        EXPECT_DOUBLE_EQ(std::chrono::duration<double>(leg.end - leg.start).count(),
                         leg.moving_s + leg.changeover_s + leg.rest_s)
            << leg.name << " on day " << leg.day;
        for (const planner::MemberLoad& load : leg.loads)
            EXPECT_NEAR(load.parts.sum_kg(), load.pack_max_kg, 1e-9) << leg.name;
    }
    EXPECT_DOUBLE_EQ(plan.totals.distance_m, along_m);
    EXPECT_DOUBLE_EQ(plan.totals.walk_m + plan.totals.portage_m + plan.totals.paddle_m, along_m);
}

} // namespace
} // namespace tumpline::test
