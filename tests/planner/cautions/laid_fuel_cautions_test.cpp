/// Stops where fuel is laid down: meals without it, and more than there is.

#include "planner/cautions/laid_fuel_cautions.h"

#include "planner/make_plan.h"
#include "tests/support/laid_stores.h"

#include <gtest/gtest.h>

#include <string>
#include <vector>

namespace tumpline::planner {
namespace {

std::vector<Caution> fuel_said(const test::RandomTrip& made, const std::string& code) {
    std::vector<Caution> found;
    for (const Caution& caution : make_plan(made.trip, made.route).cautions)
        if (caution.code == code)
            found.push_back(caution);
    return found;
}

TEST(LaidFuelCautions, SayThatItNeedsAContainer) {
    const test::RandomTrip made = test::three_days_with_fuel(0.04);
    ASSERT_EQ(fuel_said(made, "fuel-container").size(), 1U);
    EXPECT_EQ(fuel_said(made, "fuel-container")[0].text.substr(0, 27),
              "40 g of fuel are left at Co");
    EXPECT_TRUE(fuel_said(made, "fuel-not-carried").empty());
    EXPECT_TRUE(fuel_said(made, "no-fuel").empty());
}

TEST(LaidFuelCautions, StopWhatIsMoreThanThereIs) {
    const test::RandomTrip made = test::three_days_with_fuel(0.5); // of 60 g
    ASSERT_EQ(fuel_said(made, "fuel-not-carried").size(), 1U);
    EXPECT_EQ(fuel_said(made, "fuel-not-carried")[0].level, Level::stop);
    EXPECT_NE(fuel_said(made, "fuel-not-carried")[0].text.find("60 g"), std::string::npos);
}

TEST(LaidFuelCautions, StopMealsThatHaveNone) {
    // Two days with the night half way round: 80 g, of which 20 g are burnt before Col. Of the 60 g
    // there 50 g are left: the dinner of day 1 has 10 of 20 g, the breakfast of day 2 nothing.
    test::RandomTrip made = test::three_days_with_fuel(0.05);
    test::add_place_at(made, PlaceKind::camp, "Far", test::along(5e3, 1));
    made.trip.days.nights = {"Far"};
    made.trip.leaves[0].day = 1;
    const std::vector<Caution> stops = fuel_said(made, "no-fuel");
    ASSERT_EQ(stops.size(), 2U);
    EXPECT_EQ(
        stops[0].text,
        "Day 1 lacks 10 g of fuel for dinner: it lies at Col. Leave less, or fetch it before.");
    EXPECT_EQ(stops[1].text,
              "Day 2 lacks 20 g of fuel for breakfast: it lies at Col. Leave less, or fetch it "
              "before.");
    EXPECT_EQ(stops[1].level, Level::stop);
}

} // namespace
} // namespace tumpline::planner
