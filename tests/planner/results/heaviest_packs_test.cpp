#include "planner/results/heaviest_packs.h"

#include <gtest/gtest.h>

namespace tumpline::planner {
namespace {

PlanDay day_of(const std::vector<MemberDay>& members) {
    PlanDay day;
    day.members = members;
    return day;
}

MemberDay worst(const char* member, double heaviest_kg, PlanLegNumber plan_leg) {
    MemberDay day;
    day.member = member;
    day.heaviest_kg = heaviest_kg;
    day.heaviest_leg = plan_leg;
    return day;
}

PlanLeg with_limits(double adas_kg, double bens_kg) {
    PlanLeg leg;
    leg.loads.resize(2);
    leg.loads[0].limit_kg = adas_kg;
    leg.loads[1].limit_kg = bens_kg;
    return leg;
}

TEST(HeaviestPacks, AreEachMembersWorstOfAllDays) {
    const std::vector<PlanLeg> legs = {with_limits(20.0, 25.0), with_limits(18.0, 24.0)};
    const std::vector<HeaviestPack> packs =
        plan_heaviest_packs({day_of({worst("Ada", 15.0, 1), worst("Ben", 19.0, 1)}),
                             day_of({worst("Ada", 16.0, 2), worst("Ben", 17.0, 2)})},
                            legs);
    ASSERT_EQ(packs.size(), 2U);
    EXPECT_EQ(packs[0].member, "Ada");
    EXPECT_EQ(packs[0].pack_kg, 16.0); // on the second day
    EXPECT_EQ(packs[0].plan_leg, PlanLegNumber{2});
    EXPECT_EQ(packs[0].limit_kg, 18.0);
    EXPECT_EQ(packs[1].member, "Ben");
    EXPECT_EQ(packs[1].pack_kg, 19.0); // on the first
    EXPECT_EQ(packs[1].plan_leg, PlanLegNumber{1});
    EXPECT_EQ(packs[1].limit_kg, 25.0);
}

TEST(HeaviestPacks, LeaveOutWhoIsNeverOnFoot) {
    EXPECT_TRUE(plan_heaviest_packs({day_of({worst("Ada", 0.0, 0)})}, {}).empty());
    EXPECT_TRUE(plan_heaviest_packs({}, {}).empty());
}

} // namespace
} // namespace tumpline::planner
