/// Boats and paddles beside the water, and bow and stern, in the text of a plan.

#include "cli/text/plan_text.h"
#include "planner/make_plan.h"
#include "tests/support/lake_and_rapids.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <vector>

namespace tumpline::cli {
namespace {

using testing::HasSubstr;
using testing::Not;

std::string boats_of(const test::RandomTrip& made) {
    return plan_text(planner::make_plan(made.trip, made.route),
                     {.show = {.sections = {Section::boats}}});
}

TEST(TextSuits, StandLegByLeg) {
    test::RandomTrip made = test::lake_and_rapids({.pieces = 2, .stroke = planner::Stroke::low});
    made.trip.craft[0].suits = {{planner::Water::lake, 0}};
    const std::string text = boats_of(made);
    EXPECT_THAT(text,
                HasSubstr("\nBoats and paddles beside the water\n  leg 2, leg 2 (lake)\n"
                          "    boat suits: made for lakes\n"
                          "    paddle (Ada) suits: its stroke fits this water\n"
                          "  leg 3, leg 3 (river, class III)\n"
                          "    boat does not suit: rivers are not among what it is made for"));
    EXPECT_THAT(text,
                HasSubstr("  paddle (Ada): 2 pieces, for a low stroke; two pieces or one "
                          "stick out of a pack\n"));
    made.trip.craft[0].suits.clear();
    made.trip.kit[0].paddle.reset();
    EXPECT_THAT(boats_of(made), Not(HasSubstr("beside the water")));
}

TEST(TextSuits, SayTheSameOnceForAllLegsOfWhichItIsTrue) {
    test::RandomTrip made = test::lake_and_rapids();
    made.trip.craft[0].suits = {{planner::Water::lake, 0}};
    planner::Plan plan = planner::make_plan(made.trip, made.route);
    std::vector<planner::LegSuitability>& legs = plan.suitability.legs;
    for (planner::LegSuitability row : std::vector(legs)) // a second lake after the rapids
        if (row.leg == 2) {
            row.leg = 7;
            row.leg_name = "Far lake";
            legs.push_back(row);
        }
    const std::string text = plan_text(plan, {.show = {.sections = {Section::boats}}});
    EXPECT_THAT(text, HasSubstr("  legs 2, 7 (lake)\n    boat suits: made for lakes\n"));
    EXPECT_THAT(text, Not(HasSubstr("Far lake")));
}

TEST(TextSuits, BowAndSternStandWhereTheyAreSaid) {
    test::RandomTrip made = test::lake_and_rapids();
    EXPECT_THAT(boats_of(made), Not(HasSubstr("Bow and stern")));
    planner::KitItem barrel;
    barrel.name = "barrel";
    barrel.mass_kg = 6.5;
    barrel.lies = planner::BoatEnd::stern;
    made.trip.kit.push_back(barrel);
    const std::string text = boats_of(made);
    EXPECT_THAT(text,
                HasSubstr("\nBow and stern\n  from leg 2, day 1: boat: bow 0 g, stern "
                          "6.5 kg of what is said to lie there: 6.5 kg"));
    EXPECT_THAT(text, Not(HasSubstr("from leg 3"))) << "nothing has changed";
}

} // namespace
} // namespace tumpline::cli
