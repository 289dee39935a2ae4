/// Things and boats between packs, hands and the places where they are left.

#include "planner/loads/thing_booking.h"

#include "planner/make_plan.h"
#include "tests/support/out_and_back.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <string>

namespace tumpline::planner {
namespace {

/// The entries of a thing that say why, in milligrams by account.
std::int64_t moved_mg(const Plan& plan, std::size_t member, Account account, const char* why) {
    std::int64_t sum_mg = 0;
    for (const Entry& entry : plan.ledger.entries) {
        if (entry.member != member || entry.why != why)
            continue;
        sum_mg += entry.to == account ? entry.mass_mg : 0;
        sum_mg -= entry.from == account ? entry.mass_mg : 0;
    }
    return sum_mg;
}

TEST(ThingBooking, HasAnAccountForEachPlace) {
    test::RandomTrip made = test::out_and_back();
    made.trip.leaves = {test::at_col({"tent", "poles"}), test::at_col({"boat"})};
    const Plan plan = make_plan(made.trip, made.route);
    const auto& entries = plan.ledger.entries;
    const auto last = std::find_if(entries.rbegin(), entries.rend(), [](const Entry& entry) {
        return entry.why == "left at Col";
    });
    ASSERT_NE(last, entries.rend());
    EXPECT_EQ(plan.ledger.laid_down_mg(0, last->step + 1), 2'400'000); // 1.9 kg and 0.5 in hand
    EXPECT_EQ(plan.ledger.laid_down_mg(1, last->step + 1), 3'000'000);
    EXPECT_EQ(plan.ledger.laid_down_mg(0, entries.back().step + 1), 0);
    EXPECT_EQ(plan.ledger.laid_down_mg(1, entries.back().step + 1), 0);
    EXPECT_EQ(moved_mg(plan, 0, Account::in_use, "left at Col"), -500'000);
    EXPECT_EQ(moved_mg(plan, 0, Account::in_use, "fetched at Col"), 500'000);
    EXPECT_EQ(moved_mg(plan, 0, Account::pack, "fetched at Col"), 4'900'000);
}

/// A lake of 2 km, a night at Col, 6 km on foot and back, a night there, 2 km home.
test::RandomTrip after_a_lake() {
    test::RandomTrip made = test::out_and_back();
    made.route.legs[0].travel = Travel::paddle;
    made.route.legs[0].spec.travel = Travel::paddle;
    made.route.legs[0].spec.water = Water::lake;
    made.trip.route.legs[0] = made.route.legs[0].spec;
    made.trip.craft[0].wet_fraction = 0.1;
    made.trip.days.nights = {"Col", "Col"};
    made.trip.leaves = {test::at_col({"boat"})};
    made.trip.leaves[0].day = 2;
    return made;
}

TEST(ThingBooking, DriesBoatsWhereTheyLie) {
    test::RandomTrip made = after_a_lake();
    Plan plan = make_plan(made.trip, made.route);
    // The night before has dried it: 3 kg are left, and a tenth of it was water.
    ASSERT_EQ(plan.left.size(), 1U);
    EXPECT_EQ(plan.left[0].day, 2);
    EXPECT_NEAR(plan.left[0].mass_kg, 3.0, 1e-9);
    EXPECT_EQ(moved_mg(plan, 0, Account::dried, "dried over night"), 300'000);
    made.trip.days.nights = {"Tarn"}; // a night away, half way round
    made.trip.leaves[0].day = 1;
    made.trip.route.places.push_back(made.trip.route.places.front());
    made.trip.route.places.back().name = "Tarn";
    RoutePlace tarn = made.route.places.front();
    tarn.name = "Tarn";
    tarn.along_m = 5e3;
    tarn.leg = 2;
    tarn.spec = 1;
    made.route.places.insert(made.route.places.begin() + 1, tarn);
    plan = make_plan(made.trip, made.route);
    EXPECT_NEAR(plan.left.at(0).mass_kg, 3.3, 1e-9) << "left wet";
    EXPECT_EQ(moved_mg(plan, 0, Account::dried, "dried over night"), 300'000);
    EXPECT_EQ(moved_mg(plan, 0, Account::laid_down, "dried over night"), -300'000);
    EXPECT_EQ(moved_mg(plan, 0, Account::pack, "fetched at Col"), 3'000'000) << "fetched dry";
}

} // namespace
} // namespace tumpline::planner
