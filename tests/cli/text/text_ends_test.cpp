/// Meetings, ways out and back as text, each figure under its heading.

#include "cli/text/plan_text.h"
#include "tests/support/hand_built_plan.h"
#include "tests/support/text_lines.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <string>

namespace tumpline::cli {
namespace {

using testing::HasSubstr;

std::string shown_ends(const planner::Plan& plan, Section section) {
    return test::squeezed(plan_text(
        plan,
        {.units = planner::UnitSystem::metric, .colour = false, .show = {.sections = {section}}}));
}

// Leaving the bar at 12:44 is 4 h 44 min after 08:00; the bus at 18:05 less 1 h 30 min and 11:51
// leave as much.
TEST(TextEnds, HasEachHourToLeaveUnderItsHeading) {
    const std::string text = shown_ends(test::hand_built_plan(), Section::appointments);
    EXPECT_THAT(text,
                HasSubstr("last bus at Road bridge, day 3 by 18:05: arrive 11:51, margin 1 h 30 "
                          "min, spare 4 h 44 min\n"));
    EXPECT_THAT(text, HasSubstr("To meet it, leave Day at latest vs plan why\n"));
    EXPECT_THAT(text,
                HasSubstr("Birch spit 2 20:07 +12 h 07 min to be at Gravel bar before midnight\n"));
    EXPECT_THAT(text, HasSubstr("Gravel bar 3 12:44 +4 h 44 min on time\n"));
}

// Under a minute from the plan's own hour is as planned; 63 s are a minute.
TEST(TextEnds, SaysAsPlannedWithinAMinuteOnly) {
    const auto leaving_by = [](double spare_s) {
        planner::Plan plan = test::hand_built_plan();
        plan.appointments[0].leave_by[0].spare_s = spare_s;
        return shown_ends(plan, Section::appointments);
    };
    EXPECT_THAT(leaving_by(57.0), HasSubstr("Birch spit 2 20:07 as planned to be"));
    EXPECT_THAT(leaving_by(63.0), HasSubstr("Birch spit 2 20:07 +1 min to be"));
    EXPECT_THAT(leaving_by(-63.0), HasSubstr("Birch spit 2 20:07 -1 min to be"));
}

// At km 20 800 s for each of 26 km forward are 5 h 47 min, 1 100 s for each of 20 km back 6 h 07
// min; at km 19 it is 27 * 800 s = 6 h 00 min and 19 * 1 100 s = 5 h 48 min.
TEST(TextEnds, TellsForwardFromBackAtThePointOfNoReturn) {
    const std::string text = shown_ends(test::hand_built_plan(), Section::bail_out);
    EXPECT_THAT(text, HasSubstr("km 20.0; forward Road bridge in 5 h 47 min,"));
    EXPECT_THAT(text, HasSubstr("back Road end in 6 h 07 min."));
    EXPECT_THAT(text,
                HasSubstr("Furthest from an exit: km 19.0; forward Road bridge in 6 h 00 min, "
                          "back Road end in 5 h 48 min."));
}

TEST(TextEnds, HasEachHourToTurnAroundUnderItsHeading) {
    const std::string text = shown_ends(test::hand_built_plan(), Section::turnaround);
    EXPECT_THAT(text, HasSubstr("Day Back to Dusk there by from where Way back\n"));
    EXPECT_THAT(text,
                HasSubstr("1 Road end 23:40 16:30 anywhere, even from Birch spit 7 h 10 min\n"));
    EXPECT_THAT(
        text,
        HasSubstr("2 Birch spit 09:14 km 18.4, leg 4: no return upstream from here 45 min\n"));
}

} // namespace
} // namespace tumpline::cli
