/// Days and legs as text, each figure under its heading: sums and times worked from the hand-built
/// plan.

#include "cli/text/plan_text.h"
#include "tests/support/hand_built_plan.h"
#include "tests/support/text_lines.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <string>

namespace tumpline::cli {
namespace {

using testing::HasSubstr;

std::string shown_days(const planner::Plan& plan, Section section) {
    return test::squeezed(plan_text(
        plan,
        {.units = planner::UnitSystem::metric, .colour = false, .show = {.sections = {section}}}));
}

// Day 1: 18 600 s over the saddle and 2 940 s across the tarn are 5 h 59 min, with 2 100 s and
// 3 120 s beside them; the band reaches from 50 minutes before 15:26 to 80 after.
TEST(TextDays, HasEachFigureOfADayUnderItsHeading) {
    const std::string text = shown_days(test::hand_built_plan(), Section::days);
    EXPECT_THAT(text, HasSubstr("Day Date From To Set off Arrive between Sunset Dusk\n"));
    EXPECT_THAT(text,
                HasSubstr(" 1 Fri 2027-06-18 Road end Birch spit 08:00 15:26 14:36-16:46 22:51 "
                          "after 24:00\n"));
    EXPECT_THAT(text,
                HasSubstr("Day Distance On foot Carry Afloat Up Down Moving Transitions Rests\n"));
    EXPECT_THAT(text,
                HasSubstr(" 1 17.3 km 14.2 km 3.1 km 620 m 310 m 5 h 59 min 35 min 52 min\n"));
    // 15 100 m: 1 100 m carried, 14 000 m afloat; 3 240 s + 6 900 s; 1 200 s + 1 500 s; 1 140 s
    EXPECT_THAT(text,
                HasSubstr(" 2 15.1 km 1.10 km 14.0 km 12 m 100 m 2 h 49 min 45 min 19 min\n"));
    // 13 600 m: 4 100 m on foot, 9 500 m afloat; 19 m and 22 m down; 4 740 s + 4 080 s
    EXPECT_THAT(text,
                HasSubstr(" 3 13.6 km 4.1 km 9.5 km 40 m 41 m 2 h 27 min 1 h 00 min 24 min\n"));
}

// 15 800 s and 22 300 s are 4.4 h and 6.2 h; half an hour and less is not rounded away: 2 600 s are
// 0.7 h.
TEST(TextDays, HasEachFigureOfALegUnderItsHeading) {
    const std::string text = shown_days(test::hand_built_plan(), Section::legs);
    EXPECT_THAT(text, HasSubstr("Leg Travel Length Up/down Moving between Transitions Arrive\n"));
    EXPECT_THAT(text, HasSubstr("14.2 km 620/310 m 5 h 10 min 4.4-6.2 h 14:02\n"));
    EXPECT_THAT(
        text, HasSubstr("2 paddle Across Long Tarn 3.1 km 0/0 m 49 min 0.7-1.0 h 35 min 15:26\n"));
    EXPECT_THAT(text,
                HasSubstr("3 portage Fall carry 1.10 km 12/68 m 54 min 0.8-1.1 h 20 min 09:14\n"));
    EXPECT_THAT(
        text,
        HasSubstr("4.1 paddle Upper river 14.0 km 0/33 m 1 h 55 min 1.7-2.4 h 25 min 11:53\n"));
    // 33 m over 14 km, and 0.006
    EXPECT_THAT(text, HasSubstr("falls 2.4 m/km, the steepest 500 m 6.0 m/km\n"));
    EXPECT_THAT(text, HasSubstr("40/22 m 1 h 08 min 1.0-1.4 h 1 h 00 min 11:51\n"));
}

} // namespace
} // namespace tumpline::cli
