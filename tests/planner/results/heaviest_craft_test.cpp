#include "planner/results/heaviest_craft.h"

#include <gtest/gtest.h>

#include <utility>

namespace tumpline::planner {
namespace {

PlanLeg afloat(std::vector<std::pair<const char*, double>> loads) {
    PlanLeg leg;
    leg.travel = Travel::paddle;
    for (const auto& [name, load_kg] : loads) {
        CraftLoad craft;
        craft.craft = name;
        craft.load_kg = load_kg;
        leg.craft.push_back(craft);
    }
    return leg;
}

TEST(HeaviestCraft, IsEachBoatsHeaviestLegTheFirstOfEquals) {
    const std::vector<PlanLeg> legs = {afloat({{"red", 80.0}, {"blue", 95.0}}),
                                       PlanLeg{},
                                       afloat({{"blue", 99.0}, {"red", 80.0}})};
    const std::vector<HeaviestCraft> boats = heaviest_craft(legs);
    ASSERT_EQ(boats.size(), 2U);
    EXPECT_EQ(boats[0].plan_leg, PlanLegNumber{1}); // red: 80 kg twice
    EXPECT_EQ(boats[0].craft, 0U);
    EXPECT_EQ(boats[1].plan_leg, PlanLegNumber{3}); // blue: 99 kg, where it stands first
    EXPECT_EQ(boats[1].craft, 0U);
    EXPECT_TRUE(heaviest_craft({PlanLeg{}}).empty());
}

} // namespace
} // namespace tumpline::planner
