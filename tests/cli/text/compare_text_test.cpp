/// Two plans side by side as text: each figure under its plan, and what the second has more.

#include "cli/text/compare_text.h"

#include "tests/support/hand_built_plan.h"
#include "tests/support/text_lines.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <chrono>
#include <string>
#include <utility>

namespace tumpline::cli {
namespace {

using namespace std::chrono_literals;
using testing::HasSubstr;

/// The hand-built plan, and one an hour and 110 m longer with 700 g more food, whose second day
/// ends 45 minutes later, whose first pack is heavier, which is nearer to missing the bus and says
/// less.
planner::Comparison of_two_plans() {
    planner::Plan first = test::hand_built_plan();
    planner::Plan second = first;
    second.totals.moving_s += 3600.0;
    second.totals.food_kg += 0.7;
    second.totals.ascent_m += 110.0;
    second.days[1].arrive += 45min;
    second.appointments[0].spare_s -= 1800.0;
    planner::MemberLoad& load = second.legs[0].loads[0];
    load.pack_max_kg = 20.9; // 95 % of 22 kg; it was 19.104 kg, 87 %
    second.days[0].members[0].heaviest_kg = 20.9;
    second.cautions.erase(second.cautions.begin());
    return planner::compare({std::move(first), std::move(second)});
}

std::string shown_side_by_side(Section section) {
    return test::squeezed(compare_text(
        of_two_plans(),
        {"one.json", "two.json"},
        {.units = planner::UnitSystem::metric, .colour = false, .show = {.sections = {section}}}));
}

TEST(CompareText, HasTheTotalsUnderTheirPlans) {
    const std::string text = shown_side_by_side(Section::totals);
    EXPECT_THAT(text, HasSubstr(" A B B - A\n"));
    EXPECT_THAT(text, HasSubstr("distance 46.0 km 46.0 km\n"));
    EXPECT_THAT(text, HasSubstr("up 670 m 780 m +110 m\n"));
    EXPECT_THAT(text, HasSubstr("down 450 m 450 m\n"));
    EXPECT_THAT(text, HasSubstr("moving 11 h 15 min 12 h 15 min +1 h 00 min\n"));
    EXPECT_THAT(text, HasSubstr("transitions 2 h 20 min 2 h 20 min\n"));
    EXPECT_THAT(text, HasSubstr("food 9.9 kg 10.6 kg +700 g\n"));
}

TEST(CompareText, HasTheDaysUnderTheirPlans) {
    const std::string text = shown_side_by_side(Section::days);
    EXPECT_THAT(text, HasSubstr("Day A to Arrive B to Arrive Later by\n"));
    EXPECT_THAT(text, HasSubstr("2 Gravel bar 11:53 the same 12:38 +45 min\n"));
    EXPECT_THAT(text, HasSubstr("3 Road bridge 11:51 the same 11:51\n"));
}

TEST(CompareText, HasTheHeaviestPacksUnderTheirPlans) {
    const std::string text = shown_side_by_side(Section::packs);
    EXPECT_THAT(text, HasSubstr("Member A Of limit B Of limit B - A\n"));
    EXPECT_THAT(text, HasSubstr("Ada 19.1 kg 87 % 20.9 kg 95 % +1.8 kg\n"));
    EXPECT_THAT(text, HasSubstr("Björn 20.2 kg 84 % 20.2 kg 84 %\n"));
}

TEST(CompareText, HasWhatIsToSpareUnderItsPlans) {
    EXPECT_THAT(shown_side_by_side(Section::appointments),
                HasSubstr("last bus 4 h 44 min 4 h 14 min -30 min\n"));
}

TEST(CompareText, TellsWhatTheFirstHasAndTheSecondHasNot) {
    const std::string text = shown_side_by_side(Section::cautions);
    EXPECT_THAT(text, HasSubstr("Nothing breaks from A to B\n"));
    EXPECT_THAT(text, HasSubstr("What A has and B has not\n"));
    EXPECT_THAT(text, HasSubstr("The water is 9 °C"));
}

} // namespace
} // namespace tumpline::cli
