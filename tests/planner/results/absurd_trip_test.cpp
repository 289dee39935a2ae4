#include "geo/input_error.h"
#include "planner/make_plan.h"
#include "planner/plan.h"
#include "tests/support/plain_trip.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

/// Trips that nobody could make have a plan that says so, with figures that are numbers.
namespace tumpline::planner {
namespace {

TEST(AbsurdTrip, FoodForMonthsIsHeavyAndNotInfinite) {
    test::PlainTrip plain = test::plain_trip({test::walk(1'760'000.0, 0.0001)});
    const Plan plan = make_plan(plain.trip, plain.route);
    EXPECT_GT(plan.days.size(), 100U);
    EXPECT_LE(plan.days.size(), 400U);
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

TEST(AbsurdTrip, ARouteThatTakesYearsIsRefusedAndNamesItsLength) {
    const test::PlainTrip plain = test::plain_trip({test::walk(3'500'000.0, 0.0001)});
    try {
        (void)make_plan(plain.trip, plain.route);
        FAIL() << "planned";
    } catch (const geo::InputError& error) {
        ASSERT_EQ(error.problems().size(), 1U);
        EXPECT_EQ(error.problems()[0].place, "/route");
        EXPECT_NE(error.problems()[0].found.find("3500 km"), std::string::npos);
    }
}

TEST(AbsurdTrip, SomebodyWhoMayBearNothingIsPlannedAround) {
    test::PlainTrip plain = test::plain_trip({test::walk(3000.0)});
    Member child = plain.trip.party[0];
    child.name = "Bo";
    child.carry_limit_kg = 0.0;
    child.portage_limit_kg = 0.0;
    plain.trip.party.push_back(child);
    plain.trip.party[0].carry_limit_kg = 30.0;
    plain.trip.kit = {test::thing("tent", 5.0)};
    plain.trip.kit[0].owner.clear();
    const Plan plan = make_plan(plain.trip, plain.route);
    EXPECT_GT(plan.legs[0].loads[0].pack_start_kg, 5.0);
    EXPECT_NEAR(plan.legs[0].loads[1].parts.kit_kg, 0.0, 1e-9);
    for (const MemberLoad& load : plan.legs[0].loads)
        EXPECT_TRUE(std::isfinite(load.pack_start_kg));
}

TEST(AbsurdTrip, DaysOfRestThatNobodyGetsAreTold) {
    test::PlainTrip plain = test::plain_trip({test::walk(3000.0)});
    plain.trip.days.rest_days_after = {9};
    const Plan plan = make_plan(plain.trip, plain.route);
    EXPECT_EQ(std::count_if(plan.cautions.begin(),
                            plan.cautions.end(),
                            [](const Caution& one) { return one.code == "rest-day-unused"; }),
              1);
}

TEST(AbsurdTrip, ALimitOfHoursBelowTheUsualHoursIsKept) {
    test::PlainTrip plain = test::plain_trip({test::walk(20'000.0), test::walk(20'000.0)});
    plain.trip.days.hours.reset();
    plain.trip.days.hours_limit = 6.0;
    const Plan plan = make_plan(plain.trip, plain.route);
    for (const PlanDay& day : plan.days)
        EXPECT_LE(day.moving_s, 6.0 * 3600.0 + 1.0);
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
