#include "planner/plan.h"

#include <gtest/gtest.h>

namespace tumpline::planner {
namespace {

TEST(Plan, CanBeCarriedOutUnlessSomethingStopsIt) {
    Plan plan;
    EXPECT_TRUE(plan.can_be_carried_out());
    plan.cautions.push_back(
        {.level = Level::caution, .code = "a", .day = {}, .leg = {}, .text = "", .source = ""});
    EXPECT_TRUE(plan.can_be_carried_out());
    plan.cautions.push_back(
        {.level = Level::stop, .code = "b", .day = {}, .leg = {}, .text = "", .source = ""});
    EXPECT_FALSE(plan.can_be_carried_out());
}

/// A limit of 20 kg holds on foot only, and 50 g over it do not count.
TEST(Plan, KnowsWhereALimitHolds) {
    PlanLeg leg;
    MemberLoad load;
    load.limit_kg = 20.0;
    load.pack_max_kg = 20.1;
    for (const Travel travel : {Travel::walk, Travel::portage}) {
        leg.travel = travel;
        EXPECT_TRUE(has_limit(leg, load));
        EXPECT_TRUE(over_limit(leg, load));
    }
    load.pack_max_kg = 20.04;
    EXPECT_FALSE(over_limit(leg, load));
    load.pack_max_kg = 30.0;
    leg.travel = Travel::paddle;
    EXPECT_FALSE(has_limit(leg, load));
    EXPECT_FALSE(over_limit(leg, load));
    leg.travel = Travel::walk;
    load.limit_kg = 0.0;
    EXPECT_FALSE(over_limit(leg, load)) << "no limit is known";
}

} // namespace
} // namespace tumpline::planner
