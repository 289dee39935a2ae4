#include "cli/text/plan_text.h"

#include "cli/words/text_width.h"
#include "tests/support/hand_built_plan.h"
#include "tests/support/text_lines.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <sstream>
#include <string>
#include <vector>

namespace tumpline::cli {
namespace {

using planner::Plan;
using planner::UnitSystem;
using testing::HasSubstr;
using testing::Not;

/// Where a text begins that must be there.
std::size_t place(const std::string& text, const std::string& part) {
    const std::size_t at = text.find(part);
    EXPECT_NE(at, std::string::npos) << "no \"" << part << "\" in\n" << text;
    return at;
}

std::size_t times(const std::string& text, const std::string& part) {
    std::size_t count = 0;
    for (std::size_t at = text.find(part); at != text.npos; at = text.find(part, at + 1))
        ++count;
    return count;
}

class PlanText : public testing::TestWithParam<UnitSystem> {
  protected:
    [[nodiscard]] static std::string show(const Plan& plan) {
        return plan_text(plan, {.units = GetParam(), .colour = false, .show = show_all("plan")});
    }
};

TEST_P(PlanText, KeepsToItsWidthAndLeavesNoBlanksAtTheEnds) {
    Plan plan = test::hand_built_plan();
    plan.trip.party[0].name = "Wilhelmine-Ängström Oberhuber-Szczęśniak the Younger";
    plan.trip.name =
        "長い名前の旅行 over the saddle and down the river, for the second time this year, slowly";
    for (planner::PlanLeg& leg : plan.legs)
        leg.loads[0].member = plan.trip.party[0].name;
    for (planner::PlanDay& day : plan.days) {
        day.to = "一二三四五六七八九十一二三四五六七八九十";
        day.members[0].member = plan.trip.party[0].name;
    }
    for (planner::Plan* shown : {&plan})
        for (const std::string& text :
             {show(*shown),
              pack_text(*shown, {.units = GetParam(), .colour = false, .show = show_all("pack")})})
            for (const std::string& line : test::lines_of(text)) {
                EXPECT_LE(columns_of(line), line_columns) << line;
                EXPECT_FALSE(line.ends_with(' ')) << line;
            }
}

TEST_P(PlanText, SaysFirstWhatMattersMost) {
    const std::string text = show(test::hand_built_plan());
    std::size_t last = 0;
    for (const char* part : {"Over the saddle",
                             "Nothing known stands against this plan",
                             "\nDays\n",
                             "Daylight: ",
                             "Day 1: legs",
                             "\nPacks in",
                             "Heaviest pack",
                             "\nPortage, day 2, leg 3",
                             "\nCraft",
                             "\nFood, fuel and water",
                             "\nAppointments",
                             "\nBail-out routes",
                             "\nLeft at home",
                             "\nCautions for the whole trip",
                             "\nAssumed",
                             "\nModels"}) {
        const std::size_t at = place(text, part);
        EXPECT_GE(at, last) << part;
        last = at;
    }
}

TEST_P(PlanText, TellsEveryCautionOnceAndBesideWhatItConcerns) {
    const Plan plan = test::hand_built_plan();
    const std::string text = show(plan);
    for (const planner::Caution& caution : plan.cautions)
        EXPECT_EQ(times(text, "(" + caution.code + ")"), 1U) << caution.code;
    const std::size_t hint = place(text, "(gradient-hint)");
    EXPECT_GT(hint, place(text, "Day 2: legs"));
    EXPECT_LT(hint, place(text, "Day 3: legs"));
}

TEST_P(PlanText, AStopComesFirstWithItsOwnWords) {
    Plan plan = test::hand_built_plan();
    plan.cautions.push_back(
        {planner::Level::stop, "wind-stops-boat", 1, planner::LegNumber{2}, "Too windy.", ""});
    plan.verdict.level = planner::VerdictLevel::cannot;
    plan.verdict.reasons.push_back({.level = planner::VerdictLevel::cannot,
                                    .code = "wind-stops-boat",
                                    .title = "Wind stops the boat",
                                    .subject = {},
                                    .worst = {},
                                    .days = {1},
                                    .legs = {2},
                                    .count = 1,
                                    .cautions = {plan.cautions.size() - 1},
                                    .line = "Wind stops the boat: day 1, leg 2"});
    const std::string text = plan_text(plan, {.units = GetParam()});
    EXPECT_THAT(text,
                HasSubstr("This plan cannot be done.\n  Wind stops the boat: day 1, leg 2\n"
                          "    Too windy.\n"));
    EXPECT_LT(place(text, "Too windy."), place(text, "\nDays\n"));
}

TEST_P(PlanText, SaysHowMuchDaylightIsToSpare) {
    using namespace std::chrono_literals;
    Plan plan = test::hand_built_plan();
    plan.days[1].light.twilight.day = geo::SunDay::rises_and_sets;
    plan.days[1].light.twilight.set = plan.days[1].arrive + 95min;
    plan.days[1].before_dusk_s = 95.0 * 60.0;
    EXPECT_THAT(show(plan), HasSubstr("day 2 with the least to spare: 1 h 35 min."));
    plan.cautions.push_back({planner::Level::caution, "after-dusk", 2, {}, "Late.", ""});
    EXPECT_THAT(show(plan), HasSubstr("Daylight: day 2 ends after dusk."));
    plan.cautions.pop_back();
    plan.days[1].light.twilight = {geo::SunDay::always_below, {}, {}};
    EXPECT_THAT(show(plan), HasSubstr("on some days it does not get light"));
}

TEST(PlanTextFigures, PacksStandUnderTheirMembersAndHeadings) {
    Plan plan = test::hand_built_plan();
    plan.legs[0].loads[0].pack_max_kg = 21.4;
    plan.legs[0].loads[1].pack_max_kg = 22.5;
    const std::string text = test::squeezed(plan_text(plan, {.show = show_all("plan")}));
    const std::string packs = text.substr(place(text, "\nPacks in kg"));
    EXPECT_THAT(packs, HasSubstr("Ada Björn\n"));
    EXPECT_THAT(packs, HasSubstr("Leg Day start end worst start end worst\n"));
    EXPECT_THAT(packs, HasSubstr(" 1 1 Road end over the saddle 19.1 17.9 21.4 20.2 18.9 22.5\n"));
}

TEST(PlanTextFigures, CurrentAndWindAreSaidToHelpOrToHinder) {
    Plan plan = test::hand_built_plan();
    planner::PlanLeg& tarn = plan.legs[1];
    tarn.current_mps = -1.0;
    tarn.wind_head_mps = -1.2;
    std::string text = test::squeezed(plan_text(plan, {.show = show_all("plan")}));
    EXPECT_THAT(text, HasSubstr("assumed current 3.6 km/h, against"));
    EXPECT_THAT(text, HasSubstr("tailwind 4.3 km/h"));
    tarn.current_mps = 0.8;
    tarn.wind_head_mps = 1.2;
    text = test::squeezed(plan_text(plan, {.show = show_all("plan")}));
    EXPECT_THAT(text, HasSubstr("assumed current 2.9 km/h;"));
    EXPECT_THAT(text, testing::ContainsRegex("headwind[ \n]+4.3 km/h")); // over the end of a line
    EXPECT_THAT(text, Not(HasSubstr("km/h, against")));
}

TEST(PlanTextFigures, AClimbThatNobodyKnowsIsUnknown) {
    Plan plan = test::hand_built_plan();
    plan.totals.heights_known = false;
    plan.legs[0].heights_known = false;
    plan.days[0].heights_known = false;
    const std::string text = test::squeezed(plan_text(plan, {.show = show_all("plan")}));
    EXPECT_THAT(text, HasSubstr("afloat; heights unknown; "));
    EXPECT_THAT(text, HasSubstr("14.2 km unknown 5 h 10 min"));
}

TEST(PackText, HasTheListsOfWhatEveryoneSetsOffWith) {
    const std::string text = test::squeezed(pack_text(test::hand_built_plan(), {}));
    EXPECT_THAT(text, HasSubstr("Ada: 18.4 kg in the pack (limit 22.0 kg), 1.1 kg worn"));
    EXPECT_THAT(text, HasSubstr("Björn: 18.7 kg in the pack (limit 24.0 kg), 1.1 kg worn"));
    EXPECT_THAT(text, HasSubstr(" tent party 1.9 kg pack left bag\n"));
    EXPECT_THAT(text, HasSubstr(" boots Björn 1.1 kg worn\n"));
    EXPECT_THAT(text, HasSubstr(" paddle Ada 970 g pack in use\n"));
    EXPECT_THAT(text, HasSubstr(" food 4.7 kg pack\n"));
    EXPECT_THAT(text, HasSubstr(" thigh straps (Ada) 450 g "));
}

TEST_P(PlanText, NamesCannotDriveTheTerminal) {
    Plan plan = test::hand_built_plan();
    plan.trip.name = "red\033[31m\r\nname\u202e";
    plan.legs[0].name = "one\ntwo\033]0;title\a";
    const std::string text = show(plan);
    EXPECT_EQ(text.find('\033'), std::string::npos);
    EXPECT_EQ(text.find('\r'), std::string::npos);
    EXPECT_EQ(text.find('\a'), std::string::npos);
    EXPECT_EQ(text.find("\u202e"), std::string::npos);
    EXPECT_THAT(text, HasSubstr("one two"));
}

TEST_P(PlanText, AnEmptyPlanIsShownToo) {
    EXPECT_THAT(show(Plan{}), HasSubstr("Nothing known stands against this plan"));
    EXPECT_FALSE(pack_text(Plan{}, {.units = GetParam(), .colour = false}).empty());
}

INSTANTIATE_TEST_SUITE_P(Units,
                         PlanText,
                         testing::Values(UnitSystem::metric, UnitSystem::imperial),
                         [](const auto& units) {
                             return units.param == UnitSystem::metric ? "metric" : "imperial";
                         });

TEST(PlanTextUnits, ShowsTheSameFiguresInBothSystems) {
    const Plan plan = test::hand_built_plan();
    const std::string metric =
        plan_text(plan, {.units = UnitSystem::metric, .colour = false, .show = show_all("plan")});
    const std::string imperial =
        plan_text(plan, {.units = UnitSystem::imperial, .colour = false, .show = show_all("plan")});
    EXPECT_THAT(metric, HasSubstr("20.2 kg")); // Björn's pack of 20.23 kg, 44.6 lb
    EXPECT_THAT(imperial, HasSubstr("44.6 lb"));
    EXPECT_THAT(imperial, Not(HasSubstr(" kg")));
    EXPECT_THAT(imperial, Not(HasSubstr(" km")));
}

TEST(PlanTextColour, IsOnlyInHeadings) {
    const Plan plan = test::hand_built_plan();
    std::string coloured = plan_text(plan, {.units = UnitSystem::metric, .colour = true});
    for (const char* code : {"\033[1m", "\033[0m"})
        for (std::size_t at = coloured.find(code); at != coloured.npos; at = coloured.find(code))
            coloured.erase(at, std::string(code).size());
    EXPECT_EQ(coloured, plan_text(plan, {.units = UnitSystem::metric, .colour = false}));
}

} // namespace
} // namespace tumpline::cli
