/// Food between packs and the places where it lies, to the milligram.

#include "planner/loads/laid_food.h"

#include "planner/make_plan.h"
#include "tests/support/three_days_by_col.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cstdint>
#include <map>
#include <string>

namespace tumpline::planner {
namespace {

/// What a member's movements with a reason sum to.
std::map<std::size_t, std::int64_t> moved_mg(const Plan& plan, const std::string& why) {
    std::map<std::size_t, std::int64_t> sums;
    for (const Entry& entry : plan.ledger.entries)
        if (entry.why == why && entry.part == Part::food)
            sums[entry.member] += entry.mass_mg;
    return sums;
}

/// What lies there just after the last entry with a reason.
std::int64_t lies_after_mg(const Plan& plan, const std::string& why) {
    const auto& entries = plan.ledger.entries;
    const auto last = std::find_if(
        entries.rbegin(), entries.rend(), [&](const Entry& entry) { return entry.why == why; });
    return last == entries.rend() ? -1 : plan.ledger.laid_down_mg(0, last->step + 1);
}

const PlanLeg& around(const Plan& plan) {
    return *std::find_if(
        plan.legs.begin(), plan.legs.end(), [](const PlanLeg& leg) { return leg.leg == 2; });
}

TEST(LaidFood, LiesAtItsPlaceAndComesBack) {
    const test::RandomTrip made = test::three_days_by_col(1.0);
    const Plan plan = make_plan(made.trip, made.route);
    EXPECT_EQ(lies_after_mg(plan, "left at Col"), 1'000'000);
    EXPECT_EQ(lies_after_mg(plan, "fetched at Col"), 0);
    // Three days of 1 kg; day 1 and the breakfast of day 2 are eaten: 1.8 kg less the 1 kg.
    EXPECT_NEAR(around(plan).loads[0].parts.food_kg, 0.8, 1e-6);
    // 0.5 kg on the way, then the kilogram again: 1.3 kg, and 0.3 kg for dinner.
    std::int64_t eaten_mg = 0;
    for (const Entry& entry : plan.ledger.entries)
        eaten_mg += entry.part == Part::food && entry.to == Account::eaten ? entry.mass_mg : 0;
    EXPECT_EQ(eaten_mg, 3'000'000);
    EXPECT_EQ(
        plan.ledger.balance_mg(0, Account::pack, Part::food, plan.ledger.entries.back().step + 1),
        0);
}

TEST(LaidFood, TakesItsPackagingAlong) {
    test::RandomTrip made = test::three_days_by_col(1.0);
    made.trip.food.packaging = 0.25;
    const Plan plan = make_plan(made.trip, made.route);
    EXPECT_EQ(lies_after_mg(plan, "left at Col"), 1'000'000);     // 0.8 kg and 0.2 kg around it
    EXPECT_NEAR(around(plan).loads[0].parts.food_kg, 1.25, 1e-6); // 1.8 kg x 1.25 - 1 kg
    EXPECT_EQ(
        plan.ledger.balance_mg(0, Account::pack, Part::waste, plan.ledger.entries.back().step + 1),
        750'000); // the wrapping of 3 kg
}

TEST(LaidFood, GoesBackToThoseWhoBoreIt) {
    test::RandomTrip made = test::three_days_by_col(1.5);
    Member bo = made.trip.party.front();
    bo.name = "Bo";
    bo.body_kg = 50.0; // and bears less
    made.trip.party.push_back(bo);
    const Plan plan = make_plan(made.trip, made.route);
    const auto left = moved_mg(plan, "left at Col");
    ASSERT_EQ(left.size(), 2U);
    EXPECT_EQ(left.at(0) + left.at(1), 1'500'000);
    EXPECT_NE(left.at(0), left.at(1));
    EXPECT_EQ(moved_mg(plan, "fetched at Col"), left);
}

TEST(LaidFood, IsNoMoreThanThePacksHoldAndLeavesTheReserve) {
    test::RandomTrip made = test::three_days_by_col(2.5);
    made.trip.food.reserve_days = 1.0;
    const Plan plan = make_plan(made.trip, made.route);
    EXPECT_EQ(lies_after_mg(plan, "left at Col"), 1'800'000);
    EXPECT_NEAR(around(plan).loads[0].parts.food_kg, 1.0, 1e-6); // the reserve
}

TEST(LaidFood, OfALaterSupplyComesWithTheEarlierOne) {
    // A shop half way round, at 5 km on day 2. Until then 1 kg, a breakfast of 0.2 and half of the
    // 0.5 kg on the way: 1.45 kg; then 0.25, a dinner of 0.3 and day 3: 1.55 kg.
    test::RandomTrip made = test::three_days_by_col(1.2);
    test::add_shop_half_way_round(made);
    Plan plan = make_plan(made.trip, made.route);
    ASSERT_EQ(plan.stages.size(), 2U);
    EXPECT_NEAR(plan.stages[0].food_kg, 2.65, 1e-6);
    EXPECT_NEAR(plan.stages[0].for_later_kg, 1.2, 1e-6);
    EXPECT_NEAR(plan.stages[1].food_kg, 0.35, 1e-6);
    EXPECT_NEAR(plan.stages[1].fetched_kg, 1.2, 1e-6);
    EXPECT_NEAR(plan.totals.food_kg, 3.0, 1e-6);
    // After the fetching only 1.3 kg are eaten.
    made.trip.leaves[0].food_kg = 1.5;
    plan = make_plan(made.trip, made.route);
    EXPECT_NEAR(plan.stages[0].food_kg, 2.95, 1e-6);
    EXPECT_NEAR(plan.stages[1].food_kg, 0.25, 1e-6);
    EXPECT_NEAR(plan.stages[1].fetched_kg, 1.3, 1e-6);
}

} // namespace
} // namespace tumpline::planner
