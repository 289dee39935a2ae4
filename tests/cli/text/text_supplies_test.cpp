/// Food, fuel and water as text, each figure under its heading.

#include "cli/text/plan_text.h"
#include "tests/support/hand_built_plan.h"
#include "tests/support/text_lines.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <string>

namespace tumpline::cli {
namespace {

using testing::HasSubstr;

std::string shown_supplies(const planner::Plan& plan, Section section) {
    return test::squeezed(plan_text(
        plan,
        {.units = planner::UnitSystem::metric, .colour = false, .show = {.sections = {section}}}));
}

TEST(TextSupplies, HasEachFigureOfAStageAndADayInItsPlace) {
    planner::Plan plan = test::hand_built_plan();
    plan.stages[0].fuel_kg = 0.16;
    const std::string text = shown_supplies(plan, Section::food);
    EXPECT_THAT(text,
                HasSubstr("Days 1 to 3, Road end to Road bridge: 9.9 kg of food (packaging 560 g, "
                          "reserve 1.3 kg), 160 g of\n"));
    EXPECT_THAT(text, HasSubstr("Pack for 2 breakfasts trail, 3 days 3 dinners Total\n"));
    EXPECT_THAT(text, HasSubstr("Ada 920 g 1.7 kg 1.2 kg 3.8 kg\n"));
    EXPECT_THAT(text, HasSubstr("Björn 1.0 kg 1.9 kg 1.3 kg 4.2 kg\n"));
    EXPECT_THAT(text, HasSubstr("carried by Ada 48 %, Björn 52 %\n")); // 0.475 and 0.525
    EXPECT_THAT(text,
                HasSubstr("1 day lost: the reserve covers it, food to the evening of day 4; 12 g "
                          "of fuel short.\n"));
    EXPECT_THAT(text,
                HasSubstr("2 days lost: 2.6 kg of food short; the stage ends on day 5, the food "
                          "on the evening of day 3;\n 70 g of fuel short.\n"));
    EXPECT_THAT(text, HasSubstr("Day Who Energy Food eaten Water drunk Pack, setting off\n"));
    // 1 650 kcal at rest, 2 410 over the saddle, 190 across the tarn
    EXPECT_THAT(text, HasSubstr(" 1 Ada 4250 kcal 610 g 4.9 L 19.1 kg\n"));
    EXPECT_THAT(text, HasSubstr("Björn 4950 kcal 700 g 4.9 L 20.2 kg\n")); // 1 900, 2 830, 215
}

TEST(TextSupplies, HasEachFigureOfAStretchBetweenSpringsUnderItsHeading) {
    const std::string text = shown_supplies(test::hand_built_plan(), Section::food);
    EXPECT_THAT(text, HasSubstr("Water from at to Hours Dry camps Fill Vessels\n"));
    EXPECT_THAT(text, HasSubstr("Road end km 0.0 Shelf spring 2.7 Ada 2.7 L, Björn 2.8 L 4.0 L\n"));
    EXPECT_THAT(text,
                HasSubstr("Shelf spring km 6.3 Birch spit 3.4 1 Ada 1.2 L, Björn 1.3 L 4.0 L\n"));
    EXPECT_THAT(text, HasSubstr("of it 400 ml each for the night of day 1 at Birch spit\n"));
}

} // namespace
} // namespace tumpline::cli
