/// What is left and fetched, in the JSON of a plan.

#include "cli/json/plan_json_parts.h"
#include "planner/make_plan.h"
#include "tests/support/out_and_back.h"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

namespace tumpline::cli {
namespace {

TEST(PlanJsonLeft, TellsEachPlaceAndItsThings) {
    test::RandomTrip made = test::out_and_back();
    EXPECT_TRUE(left_json(planner::make_plan(made.trip, made.route)).empty());
    made.trip.leaves = {test::at_col({"tent"})};
    const nlohmann::ordered_json left = left_json(planner::make_plan(made.trip, made.route));
    ASSERT_EQ(left.size(), 1U);
    EXPECT_EQ(left[0]["at"], "Col");
    EXPECT_EQ(left[0]["day"], 1);
    EXPECT_EQ(left[0]["leg"], 2);
    EXPECT_EQ(left[0]["fetch_day"], 1);
    EXPECT_EQ(left[0]["things"][0]["item"], "tent");
    EXPECT_EQ(left[0]["things"][0]["part"], "kit");
    EXPECT_NEAR(left[0]["things"][0]["mass_kg"].get<double>(), 1.9, 1e-9);
    made.trip.leaves[0].fetch_day = 9;
    EXPECT_TRUE(left_json(planner::make_plan(made.trip, made.route))[0]["fetch_day"].is_null());
}

} // namespace
} // namespace tumpline::cli
