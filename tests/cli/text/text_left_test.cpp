/// What is left and fetched, in the text of a plan: first screen, section, legs.

#include "cli/text/plan_text.h"
#include "planner/make_plan.h"
#include "tests/support/out_and_back.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace tumpline::cli {
namespace {

using testing::HasSubstr;
using testing::Not;

planner::Plan with_leave(bool leaves) {
    test::RandomTrip made = test::out_and_back();
    if (leaves)
        made.trip.leaves = {test::at_col({"tent", "boat"})};
    return planner::make_plan(made.trip, made.route);
}

TEST(TextLeft, StandsOnTheFirstScreen) {
    const std::string text = plan_text(with_leave(true), {});
    // 3 kg of boat and 1.9 of tent
    EXPECT_THAT(text,
                HasSubstr("\nLeft and fetched\n"
                          "  day 1, Col at 2.0 km: boat, tent (4.9 kg); fetched on day 1 at 8.0 "
                          "km\n"));
    EXPECT_THAT(plan_text(with_leave(false), {}), Not(HasSubstr("Left and fetched")));
    EXPECT_THAT(plan_text(with_leave(false), {}), Not(HasSubstr(", left,")));
}

TEST(TextLeft, StandsUnderItsLegs) {
    const std::string text =
        plan_text(with_leave(true), {.show = {.sections = {Section::legs, Section::left}}});
    EXPECT_THAT(text, HasSubstr("leave at Col: boat, tent (4.9 kg)"));
    EXPECT_THAT(text, HasSubstr("fetch at Col: boat, tent (4.9 kg)"));
    EXPECT_THAT(text, HasSubstr("\nLeft and fetched\n"));
}

} // namespace
} // namespace tumpline::cli
