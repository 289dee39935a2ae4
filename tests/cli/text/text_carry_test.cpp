/// Portages, packs and boats as text, each figure under its heading.

#include "cli/text/plan_text.h"
#include "tests/support/hand_built_plan.h"
#include "tests/support/text_lines.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <string>

namespace tumpline::cli {
namespace {

using testing::HasSubstr;

std::string shown_carry(const planner::Plan& plan, Section section) {
    return test::squeezed(plan_text(
        plan,
        {.units = planner::UnitSystem::metric, .colour = false, .show = {.sections = {section}}}));
}

// One carry: 1 260 s and 1 200 s, 17.72 kg are 1.291 of Björn's limit; rolled up: 1 230 s and 5 700
// s.
TEST(TextCarry, HasEachFigureOfAWayUnderItsHeading) {
    const std::string text = shown_carry(test::hand_built_plan(), Section::portages);
    EXPECT_THAT(text, HasSubstr("Fall carry: 1.10 km, 12 m up, 68 m down; each walks 3.3 km\n"));
    EXPECT_THAT(text,
                HasSubstr("Carries Boats Walked Moving Transitions Heaviest load Who Of limit\n"));
    EXPECT_THAT(text,
                HasSubstr("one inflated 1.1 km 21 min 20 min 17.7 kg Björn 129 % over limit\n"));
    EXPECT_THAT(text,
                HasSubstr("one rolled 1.1 km 21 min 1 h 35 min 17.9 kg Björn 130 % over limit\n"));
    EXPECT_THAT(text, HasSubstr("two inflated 3.3 km 54 min 20 min 13.9 kg Björn 99 % chosen\n"));
    EXPECT_THAT(text, HasSubstr("Rolled and inflated take the same time over 2.35 km.\n"));
    EXPECT_THAT(text, HasSubstr("Ada, carry 1: 12.9 kg: pack\n"));
    EXPECT_THAT(text, HasSubstr("Ada, carry 2: 3.9 kg: red boat, paddle\n"));
    EXPECT_THAT(text, HasSubstr("Björn, carry 2: 3.8 kg: blue boat\n"));
}

// 1 260 s and 1 200 s are 41 min, 1 980 s less than the 4 440 s of the way planned.
TEST(TextCarry, HasTheTimeOfEachWayOverAllPortages) {
    planner::Plan plan = test::hand_built_plan();
    plan.carrying.portages = 2;
    const std::string text = shown_carry(plan, Section::portages);
    EXPECT_THAT(text,
                HasSubstr("Carries Boats Time vs plan Each walks Heaviest load Who Of limit\n"));
    EXPECT_THAT(text, HasSubstr("as planned 1 h 14 min 3.3 km"));
    EXPECT_THAT(text, HasSubstr("one inflated 41 min -33 min 1.1 km 17.7 kg Björn 129 %"));
}

TEST(TextCarry, HasEachPartOfAPackUnderItsHeading) {
    planner::Plan plan = test::hand_built_plan();
    planner::MemberLoad& load = plan.legs[0].loads[1];
    load.pack_start_kg = 20.1;
    load.pack_end_kg = 18.2;
    load.pack_max_kg = 21.3;
    load.limit_kg = 24.5;
    load.worn_kg = 2.4;
    load.parts = {.kit_kg = 8.9,
                  .craft_kg = 3.7,
                  .food_kg = 5.6,
                  .fuel_kg = 0.5,
                  .water_kg = 2.8,
                  .waste_kg = 0.2};
    const std::string text = test::squeezed(pack_text(plan,
                                                      {.units = planner::UnitSystem::metric,
                                                       .colour = false,
                                                       .show = {.sections = {Section::loads}}}));
    EXPECT_THAT(text,
                HasSubstr("kg start end worst limit worn = kit craft food fuel water waste\n"));
    EXPECT_THAT(text, HasSubstr("Björn 20.1 18.2 21.3 24.5 2.4 8.9 3.7 5.6 0.5 2.8 0.2\n"));
}

// The red boat: bedding 1.4 kg and food 2.31 kg to the left, clothes 2.1 kg and the stove's 0.52 kg
// to the right, 1.35 kg at hand; with Ada's 68 kg and 1.8 kg worn 77.48 kg; it sinks 21 mm of its
// 20 cm.
TEST(TextCarry, HasEachFigureOfABoatUnderItsHeading) {
    const std::string text = shown_carry(test::hand_built_plan(), Section::boats);
    EXPECT_THAT(text, HasSubstr("Leg Day Craft Load Payload Left Right At hand Draft increase\n"));
    EXPECT_THAT(text,
                HasSubstr(" 1 red boat 77.5 kg 160.0 kg 3.7 kg 2.6 kg 1.4 kg 21 mm freeboard "
                          "18 cm\n"));
    // the blue one: 82 kg and 1.8 kg, 1.4 + 2.6 kg, 2.1 + 1.9 kg, 1 kg
    EXPECT_THAT(text, HasSubstr(" 1 blue boat 92.8 kg 160.0 kg 4.0 kg 4.0 kg 1.0 kg 24 mm"));
}

// Of the six legs Ada bears most on the first: 19.104 kg of 22 kg.
TEST(TextCarry, NamesTheHeaviestPackOfEach) {
    const std::string text = shown_carry(test::hand_built_plan(), Section::packs);
    EXPECT_THAT(text, HasSubstr("Heaviest pack Of limit Where\n"));
    EXPECT_THAT(text, HasSubstr("Ada 19.1 kg 87 % day 1, leg 1: Road end over the saddle\n"));
    EXPECT_THAT(text, HasSubstr("Björn 20.2 kg 84 % day 1, leg 1: Road end over the saddle\n"));
    EXPECT_THAT(text, HasSubstr("4.2 3 Upper river 11.1 10.9 11.1 12.0 11.7 12.0\n"));
}

} // namespace
} // namespace tumpline::cli
