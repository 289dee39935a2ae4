#include "planner/plan.h"
#include "tests/support/plain_trip.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

/// Trips that nobody could make have a plan that says so, with figures that are numbers.
namespace tumpline::planner {
namespace {

TEST(AbsurdTrip, FoodForMonthsIsHeavyAndNotInfinite) {
    test::PlainTrip plain = test::plain_trip({test::walk(3'500'000.0, 0.0001)});
    const Plan plan = make_plan(plain.trip, plain.route);
    EXPECT_GT(plan.days.size(), 100U);
    EXPECT_LT(plan.days.size(), 10'000U);
    EXPECT_GT(plan.totals.food_kg, 100.0);
    EXPECT_LT(plan.totals.food_kg, 10'000.0);
    for (const Entry& entry : plan.ledger.entries)
        ASSERT_GT(entry.mass_mg, 0);
    for (const PlanLeg& leg : plan.legs) {
        ASSERT_TRUE(std::isfinite(leg.moving_s));
        ASSERT_TRUE(std::isfinite(leg.loads[0].energy_j));
    }
    EXPECT_TRUE(std::any_of(plan.cautions.begin(), plan.cautions.end(), [](const Caution& one) {
        return one.code == "pack-over-body";
    }));
    EXPECT_FALSE(plan.can_be_carried_out());
}

TEST(AbsurdTrip, APackAsHeavyAsItsBearerIsNoPlan) {
    test::PlainTrip plain = test::plain_trip({test::walk(3000.0)});
    plain.trip.party[0].carry_limit_kg = 140.0;
    plain.trip.kit = {test::thing("stone", 60.0)};
    EXPECT_TRUE(make_plan(plain.trip, plain.route).can_be_carried_out());
    plain.trip.kit = {test::thing("stone", 71.0)};
    EXPECT_FALSE(make_plan(plain.trip, plain.route).can_be_carried_out());
}

} // namespace
} // namespace tumpline::planner
