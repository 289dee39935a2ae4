/// How many plans a question may cost, counted by hand.

#include "planner/decisions/plan_budget.h"

#include "planner/decisions/choices.h"
#include "tests/support/plain_trip.h"

#include <gtest/gtest.h>

#include <string>
#include <vector>

namespace tumpline::planner {
namespace {

TEST(PlanBudget, IsAllThatIsAskedForOnATripOfUsualSize) {
    const test::PlainTrip plain = test::plain_trip({test::walk(9000.0)});
    const Prepared prepared = prepare(plain.trip, plain.route);
    EXPECT_EQ(plans_to_spend(prepared, most_remedy_plans), 12);
    EXPECT_EQ(plans_to_spend(prepared, 60), 60);
}

TEST(PlanBudget, ShrinksWithPortagesAndThingsAndEndsAtTwo) {
    // 20 portages of 1 500 things and 6 provisions, one member: 20 * (1 + 1 506) steps and one for
    // the walk, 1 to begin with: 30 142 of 150 000 is four times.
    std::vector<test::PlainLeg> legs{test::walk(5000.0)};
    for (int k = 0; k < 20; ++k) {
        legs.push_back(test::walk(500.0));
        legs.back().spec.travel = Travel::portage;
    }
    test::PlainTrip plain = test::plain_trip(legs);
    plain.trip.days.nights_auto = true; // stretches are not cut finely for the hours
    plain.trip.kit.assign(1'500, test::thing("thing", 0.01));
    EXPECT_EQ(plans_to_spend(prepare(plain.trip, plain.route), 12), 4);
    plain.trip.kit.assign(20'000, test::thing("thing", 0.001));
    EXPECT_EQ(plans_to_spend(prepare(plain.trip, plain.route), 12), 2);
}

TEST(Remedies, SayWhereTheirBudgetWasTooSmallToTryEverything) {
    // Ada bears one thing of 10 kg under a limit of 5 kg, Ben twenty of a kilogram that are nothing
    // to him. Of things to leave the lightest are tried first: twelve of Ben's, and none helps.
    test::PlainTrip plain = test::plain_trip({test::walk(9000.0)});
    plain.trip.party[0].carry_limit_kg = 5.0;
    Member ben = plain.trip.party[0];
    ben.name = "Ben";
    ben.carry_limit_kg = 60.0;
    plain.trip.party.push_back(ben);
    plain.trip.kit = {test::thing("stone", 10.0)};
    for (int k = 0; k < 20; ++k) {
        plain.trip.kit.push_back(test::thing("thing " + std::to_string(k), 1.0));
        plain.trip.kit.back().owner = "Ben";
    }
    const Plan many = make_plan_with_choices(plain.trip, plain.route);
    EXPECT_EQ(many.remedies.most_plans, 12);
    EXPECT_FALSE(many.remedies.leave);
    EXPECT_FALSE(many.remedies.all_tried);
    // With two of his there are plans enough, and the stone is found.
    plain.trip.kit.resize(3);
    const Plan few = make_plan_with_choices(plain.trip, plain.route);
    ASSERT_TRUE(few.remedies.leave);
    EXPECT_EQ(few.remedies.leave->things, (std::vector<std::string>{"Ada's stone"}));
    EXPECT_TRUE(few.remedies.all_tried);
}

} // namespace
} // namespace tumpline::planner
