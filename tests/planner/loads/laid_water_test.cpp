/// Water between the vessels and the places where it lies.

#include "planner/loads/laid_water.h"

#include "planner/make_plan.h"
#include "tests/support/laid_stores.h"

#include <gtest/gtest.h>

#include <cstdint>
#include <string>
#include <vector>

namespace tumpline::planner {
namespace {

/// What is filled into the vessels, fill by fill.
std::vector<std::int64_t> fills_mg(const Plan& plan) {
    std::vector<std::int64_t> fills;
    for (const Entry& entry : plan.ledger.entries)
        if (entry.part == Part::water && entry.why.rfind("filled", 0) == 0)
            fills.push_back(entry.mass_mg);
    return fills;
}

std::int64_t drunk_from_pack_mg(const Plan& plan) {
    std::int64_t sum_mg = 0;
    for (const Entry& entry : plan.ledger.entries)
        sum_mg +=
            entry.part == Part::water && entry.from == Account::pack && entry.to == Account::drunk
                ? entry.mass_mg
                : 0;
    return sum_mg;
}

TEST(LaidWater, IsCarriedToItsPlaceAndDrunkAfterTheFetching) {
    // A spring at 9 km: 0.9 L until then, of which 0.05 L lie at Col meanwhile; then 0.1 L.
    const test::RandomTrip made = test::out_and_back_with_water(0.05, test::along(9e3, 2));
    const Plan plan = make_plan(made.trip, made.route);
    EXPECT_EQ(fills_mg(plan), (std::vector<std::int64_t>{900'000, 100'000}));
    EXPECT_EQ(test::lies_after_mg(plan, "left at Col"), 50'000);
    EXPECT_EQ(test::lies_after_mg(plan, "fetched at Col"), 0);
    EXPECT_NEAR(test::around(plan).loads[0].parts.water_kg, 0.65, 1e-6); // 0.9 - 0.2 - 0.05
    EXPECT_EQ(drunk_from_pack_mg(plan), 1'000'000);
}

TEST(LaidWater, FilledAtOneSourceSavesAtTheNext) {
    // A spring at 5 km: 0.5 L and what is laid down before it, 0.5 L less what is fetched after it.
    const test::RandomTrip made = test::out_and_back_with_water(0.05, test::along(5e3, 1));
    const Plan plan = make_plan(made.trip, made.route);
    EXPECT_EQ(fills_mg(plan), (std::vector<std::int64_t>{550'000, 450'000}));
    EXPECT_EQ(drunk_from_pack_mg(plan), 1'000'000);
}

TEST(LaidWater, StandsInTheLineOfTheVessels) {
    const test::RandomTrip made = test::out_and_back_with_water(0.05, test::along(5e3, 1));
    const Plan plan = make_plan(made.trip, made.route);
    std::vector<double> left_l, fetched_l;
    for (const Litres& point : plan.litres) {
        EXPECT_GE(point.each_l, -1e-9);
        if (point.after == LitresStep::left)
            left_l.push_back(point.each_l);
        if (point.after == LitresStep::fetched)
            fetched_l.push_back(point.each_l);
    }
    ASSERT_EQ(left_l.size(), 1U);
    ASSERT_EQ(fetched_l.size(), 1U);
    EXPECT_NEAR(left_l[0], 0.3, 1e-9);    // 0.55 - 0.2 - 0.05
    EXPECT_NEAR(fetched_l[0], 0.2, 1e-9); // 0.45 - 0.3 + 0.05
    ASSERT_EQ(plan.water.size(), 2U);
    EXPECT_NEAR(plan.water[0].laid_l, 0.05, 1e-9);
    EXPECT_NEAR(plan.water[0].way_l, 0.5, 1e-9);
}

TEST(LaidWater, SavesNoMoreThanIsDrunkAfterTheFetching) {
    // 0.2 L are drunk after 8 km: of 0.5 L fetched there 0.3 L are carried on.
    const test::RandomTrip made = test::out_and_back_with_water(0.5, test::along(5e3, 1));
    const Plan plan = make_plan(made.trip, made.route);
    EXPECT_EQ(fills_mg(plan), (std::vector<std::int64_t>{1'000'000, 300'000}));
    // Drunk in parts, each in whole milligrams.
    EXPECT_NEAR(static_cast<double>(drunk_from_pack_mg(plan)), 1e6, 2.0);
    EXPECT_EQ(
        plan.ledger.balance_mg(0, Account::pack, Part::water, plan.ledger.entries.back().step + 1),
        1'300'000 - drunk_from_pack_mg(plan));
}

TEST(LaidWater, IsLaidDownByAllAlike) {
    test::RandomTrip made = test::out_and_back_with_water(0.1, test::along(9e3, 2));
    Member bo = made.trip.party.front();
    bo.name = "Bo";
    made.trip.party.push_back(bo);
    const Plan plan = make_plan(made.trip, made.route);
    std::vector<std::int64_t> left_mg;
    for (const Entry& entry : plan.ledger.entries)
        if (entry.why == "left at Col")
            left_mg.push_back(entry.mass_mg);
    EXPECT_EQ(left_mg, (std::vector<std::int64_t>{50'000, 50'000}));
}

TEST(LaidWater, CountsAgainstTheVessels) {
    test::RandomTrip made = test::out_and_back_with_water(0.5, test::along(5e3, 1));
    made.trip.water.capacity_l = 0.9; // 0.5 L to be drunk and 0.5 L to be left
    const Plan plan = make_plan(made.trip, made.route);
    bool over = false;
    for (const Caution& caution : plan.cautions)
        over = over || caution.code == "water-over-capacity";
    EXPECT_TRUE(over);
}

} // namespace
} // namespace tumpline::planner
