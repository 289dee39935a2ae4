/// A boat on water that it is not made for stops a plan.

#include "planner/cautions/suitability_cautions.h"

#include "planner/make_plan.h"
#include "tests/support/lake_and_rapids.h"

#include <gtest/gtest.h>

namespace tumpline::planner {
namespace {

Plan with_suits(std::vector<SuitedWater> suits) {
    test::RandomTrip made = test::lake_and_rapids();
    made.trip.craft[0].suits = std::move(suits);
    return make_plan(made.trip, made.route);
}

TEST(SuitabilityCautions, StopARiverOverTheClass) {
    const std::vector<Caution> stops =
        suitability_cautions(with_suits({{Water::lake, 0}, {Water::river, 2}}));
    ASSERT_EQ(stops.size(), 1U);
    EXPECT_EQ(stops[0].code, "water-not-suited");
    EXPECT_EQ(stops[0].level, Level::stop);
    EXPECT_EQ(stops[0].leg, LegNumber{3});
    EXPECT_EQ(stops[0].day, 1);
    EXPECT_EQ(
        stops[0].text,
        "Class III is harder than boat is made for (\"suits\": rivers up to II). Take another "
        "boat, or plan a portage.");
}

TEST(SuitabilityCautions, StopWaterThatIsNotNamed) {
    const Plan plan = with_suits({{Water::river, 4}});
    const std::vector<Caution> stops = suitability_cautions(plan);
    ASSERT_EQ(stops.size(), 1U);
    EXPECT_EQ(stops[0].leg, LegNumber{2});
    EXPECT_EQ(stops[0].text,
              "boat is not made for this water: its \"suits\" does not name lakes. Take another "
              "boat, or plan a portage.");
    EXPECT_EQ(plan.verdict.level, VerdictLevel::cannot);
}

TEST(SuitabilityCautions, SayNothingOfWhatSuitsOrIsNotKnown) {
    EXPECT_TRUE(suitability_cautions(with_suits({{Water::lake, 0}, {Water::river, 3}})).empty());
    EXPECT_TRUE(suitability_cautions(with_suits({})).empty());
}

} // namespace
} // namespace tumpline::planner
