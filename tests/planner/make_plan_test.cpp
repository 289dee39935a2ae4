/// The steps from a trip to its plan, one by one and all at once.

#include "planner/make_plan.h"

#include "geo/input_error.h"
#include "tests/support/out_and_back.h"
#include "tests/support/plain_trip.h"

#include <gtest/gtest.h>

namespace tumpline::planner {
namespace {

/// 3 600 m at a metre a second without rests: an hour, whichever way the plan is asked for.
TEST(MakePlan, IsItsStepsOneAfterTheOther) {
    test::PlainTrip plain = test::plain_trip({test::walk(3'600.0)});
    plain.trip.models.walking = "constant";
    plain.trip.models.load_effect = "none";
    plain.trip.party[0].level_speed_mps = 1.0;
    const Prepared prepared = prepare(plain.trip, plain.route);
    const Plan by_steps = assemble_plan(prepared, settle_trip(prepared));
    const Plan at_once = make_plan(plain.trip, plain.route);
    EXPECT_NEAR(at_once.totals.moving_s, 3'600.0, 1e-6);
    EXPECT_EQ(by_steps.totals.moving_s, at_once.totals.moving_s);
    EXPECT_EQ(by_steps.totals.food_kg, at_once.totals.food_kg);
    EXPECT_EQ(by_steps.legs.size(), at_once.legs.size());
}

// Two things are left by two entries, one is left by one: one problem for the pair of entries.
TEST(MakePlan, RefusesWhatIsLeftAgainBeforeItIsFetched) {
    test::RandomTrip made = test::out_and_back();
    made.trip.file = "t.json";
    made.trip.leaves = {test::at_col({"tent", "lamp"}), test::at_col({"lamp", "tent", "poles"})};
    try {
        (void)make_plan(made.trip, made.route);
        FAIL() << "was planned";
    } catch (const geo::InputError& error) {
        ASSERT_EQ(error.problems().size(), 1U);
        EXPECT_EQ(error.problems()[0].place, "/leave/1");
        EXPECT_EQ(error.problems()[0].found,
                  "\"tent\" and 1 more, which /leave/0 has left at Col and not yet fetched");
    }
}

} // namespace
} // namespace tumpline::planner
