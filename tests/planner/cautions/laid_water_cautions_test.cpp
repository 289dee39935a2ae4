#include "planner/cautions/laid_water_cautions.h"

#include "planner/make_plan.h"
#include "tests/support/laid_stores.h"

#include <gtest/gtest.h>

#include <string>
#include <vector>

namespace tumpline::planner {
namespace {

std::vector<Caution> water_said(const test::RandomTrip& made, const std::string& code) {
    std::vector<Caution> found;
    for (const Caution& caution : make_plan(made.trip, made.route).cautions)
        if (caution.code == code)
            found.push_back(caution);
    return found;
}

TEST(LaidWaterCautions, SayWhereItFreezes) {
    test::RandomTrip made = test::out_and_back_with_water(0.5, test::along(5e3, 1));
    made.trip.weather.low_c = 0.0;
    EXPECT_TRUE(water_said(made, "laid-water-freezes").empty());
    made.trip.weather.low_c = -4.0;
    const std::vector<Caution> said = water_said(made, "laid-water-freezes");
    ASSERT_EQ(said.size(), 1U);
    EXPECT_EQ(said[0].level, Level::caution);
    EXPECT_NE(said[0].text.find("-4 C"), std::string::npos) << said[0].text;
}

TEST(LaidWaterCautions, AnimalsDoNotMatter) {
    const test::RandomTrip made = test::out_and_back_with_water(0.5, test::along(5e3, 1));
    const std::vector<Caution> said = water_said(made, "left-unwatched");
    ASSERT_EQ(said.size(), 1U);
    EXPECT_EQ(said[0].text.find("nimals"), std::string::npos) << said[0].text;
}

TEST(LaidWaterCautions, NeverFetchedIsAStop) {
    test::RandomTrip made = test::out_and_back_with_water(0.5, test::along(5e3, 1));
    made.trip.leaves[0].pass = 2; // the last
    ASSERT_EQ(water_said(made, "not-fetched").size(), 1U);
    EXPECT_EQ(water_said(made, "not-fetched")[0].level, Level::stop);
}

} // namespace
} // namespace tumpline::planner
