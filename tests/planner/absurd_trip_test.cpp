#include "planner/plan.h"
#include "tests/support/plain_trip.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

/// Trips that nobody could make have a plan that says so, with figures that are numbers.
namespace tumpline::planner {
namespace {

TEST(AbsurdTrip, FoodForMonthsIsHeavyAndNotInfinite) {
    test::PlainTrip plain = test::plain_trip({test::walk(1'000'000.0, 0.001)});
    const Plan plan = make_plan(plain.trip, plain.route);
    EXPECT_GT(plan.days.size(), 30U);
    EXPECT_LT(plan.days.size(), 2000U);
    EXPECT_GT(plan.totals.food_kg, 30.0);
    EXPECT_LT(plan.totals.food_kg, 2000.0);
    for (const Entry& entry : plan.ledger.entries)
        ASSERT_GT(entry.mass_mg, 0);
    for (const PlanLeg& leg : plan.legs) {
        ASSERT_TRUE(std::isfinite(leg.moving_s));
        ASSERT_TRUE(std::isfinite(leg.loads[0].energy_j));
    }
    EXPECT_TRUE(std::any_of(plan.cautions.begin(), plan.cautions.end(), [](const Caution& one) {
        return one.code == "pack-over-limit";
    }));
}

} // namespace
} // namespace tumpline::planner
