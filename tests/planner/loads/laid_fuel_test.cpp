/// Fuel between the pack and the places where it lies, to the milligram.

#include "planner/loads/laid_fuel.h"

#include "planner/make_plan.h"
#include "tests/support/laid_stores.h"

#include <gtest/gtest.h>

#include <cstdint>

namespace tumpline::planner {
namespace {

std::int64_t fuel_to_mg(const Plan& plan, Account to) {
    std::int64_t sum_mg = 0;
    for (const Entry& entry : plan.ledger.entries)
        sum_mg += entry.part == Part::fuel && entry.to == to ? entry.mass_mg : 0;
    return sum_mg;
}

TEST(LaidFuel, LiesAtItsPlaceAndComesBack) {
    // 20 g for each breakfast and dinner. After breakfast on day 2 three meals are left: 60 g.
    const test::RandomTrip made = test::three_days_with_fuel(0.04);
    const Plan plan = make_plan(made.trip, made.route);
    EXPECT_EQ(test::lies_after_mg(plan, "left at Col"), 40'000);
    EXPECT_EQ(test::lies_after_mg(plan, "fetched at Col"), 0);
    EXPECT_NEAR(test::around(plan).loads[0].parts.fuel_kg, 0.12, 1e-9); // 20 g and the container
    EXPECT_EQ(fuel_to_mg(plan, Account::burnt), 120'000);
    ASSERT_EQ(plan.left.size(), 1U);
    EXPECT_EQ(plan.left[0].things.at(0).part, Part::fuel);
    EXPECT_NEAR(plan.left[0].mass_kg, 0.04, 1e-9);
}

TEST(LaidFuel, IsNoMoreThanIsToBeBurntAndLeavesTheReserve) {
    test::RandomTrip made = test::three_days_with_fuel(0.5);
    made.trip.fuel.reserve = 0.25; // of 120 g
    const Plan plan = make_plan(made.trip, made.route);
    EXPECT_EQ(test::lies_after_mg(plan, "left at Col"), 60'000);
    EXPECT_NEAR(test::around(plan).loads[0].parts.fuel_kg, 0.13, 1e-9); // 30 g and the container
    EXPECT_EQ(fuel_to_mg(plan, Account::burnt), 120'000);
}

TEST(LaidFuel, OfALaterSupplyComesWithTheEarlierOne) {
    // A shop half way round on day 2: three meals until then and three after it, 60 g each.
    test::RandomTrip made = test::three_days_with_fuel(0.03);
    test::add_shop_half_way_round(made);
    Plan plan = make_plan(made.trip, made.route);
    ASSERT_EQ(plan.stages.size(), 2U);
    EXPECT_NEAR(plan.stages[0].fuel_kg, 0.09, 1e-9);
    EXPECT_NEAR(plan.stages[0].fuel_for_later_kg, 0.03, 1e-9);
    EXPECT_NEAR(plan.stages[1].fuel_kg, 0.03, 1e-9);
    EXPECT_NEAR(plan.stages[1].fuel_fetched_kg, 0.03, 1e-9);
    EXPECT_NEAR(plan.totals.fuel_kg, 0.12, 1e-9);
    EXPECT_EQ(fuel_to_mg(plan, Account::burnt), 120'000);
    // After the fetching 60 g are burnt, and no more is left out of the shop's stage.
    made.trip.leaves[0].fuel_kg = 0.07;
    plan = make_plan(made.trip, made.route);
    EXPECT_NEAR(plan.stages[0].fuel_kg, 0.13, 1e-9);
    EXPECT_NEAR(plan.stages[1].fuel_kg, 0.0, 1e-9);
    EXPECT_EQ(plan.stages[1].containers, 0);
    EXPECT_EQ(fuel_to_mg(plan, Account::burnt), 120'000);
}

TEST(LaidFuel, FetchedWhereTheShopIsIsNotHandedIn) {
    // The shop at Col itself: fetched there on day 2, and then the old fuel is left in the shop.
    test::RandomTrip made = test::three_days_with_fuel(0.03);
    test::add_shop_at(made, 8e3, 2);
    const Plan plan = make_plan(made.trip, made.route);
    ASSERT_EQ(plan.stages.size(), 2U);
    EXPECT_EQ(fuel_to_mg(plan, Account::burnt), 120'000);
    EXPECT_NEAR(plan.totals.fuel_kg, 0.12, 1e-9);
}

} // namespace
} // namespace tumpline::planner
