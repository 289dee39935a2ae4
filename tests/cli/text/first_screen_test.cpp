/// What a leader sees first: what stands on one screen, in which order, and how long trips fold.

#include "cli/app.h"
#include "cli/text/compare_text.h"
#include "cli/text/nights_text.h"
#include "cli/text/odds_text.h"
#include "cli/text/plan_text.h"
#include "cli/words/text_width.h"
#include "planner/decisions/choices.h"
#include "tests/support/hand_built_plan.h"
#include "tests/support/random_trip.h"
#include "tests/support/said.h"
#include "tests/support/source_tree.h"
#include "tests/support/text_lines.h"

#include <fmt/format.h>
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>
#include <sstream>
#include <string>
#include <vector>

namespace tumpline::cli {
namespace {

namespace fs = std::filesystem;
using planner::Plan;
using testing::HasSubstr;
using testing::Not;

std::string sample(const std::string& name) {
    return (test::root / "sample-routes" / name / "trip.json").string();
}

std::string printed(const std::vector<std::string>& arguments, std::size_t columns = line_columns) {
    std::ostringstream out, err;
    (void)run(arguments, {.out = out, .err = err, .columns = columns});
    return out.str();
}

TEST(FirstScreen, AFourDayTripOfTwoTakesAtMostEightyLines) {
    const std::vector<std::string> shown = test::lines_of(printed({"plan", sample("saddle")}));
    EXPECT_LE(shown.size(), 80U);
    EXPECT_GE(shown.size(), 30U); // and it is no empty page
}

TEST(FirstScreen, SaysVerdictDaysPacksBoatsFoodPackingAppointmentsInThisOrder) {
    const std::string text = printed({"plan", sample("saddle")});
    std::size_t last = 0;
    for (const char* part : {"Over the saddle",
                             " plan",
                             "\nDays\n",
                             "\nPacks on foot",
                             "\nBoats",
                             "\nTo buy",
                             "\nTo pack",
                             "\nAppointments",
                             "\nMore: --show"}) {
        const std::size_t at = text.find(part, last);
        ASSERT_NE(at, std::string::npos) << part << " in\n" << text;
        last = at;
    }
}

TEST(FirstScreen, EveryPackedThingOfTheSampleStandsUnderItsBearer) {
    const std::string text = printed({"plan", sample("saddle")});
    const std::string packing = text.substr(text.find("\nTo pack"));
    for (const char* thing : {"tent", "throw bag", "repair kit", "food", "water"})
        EXPECT_THAT(packing, HasSubstr(thing));
}

TEST(FirstScreen, AStopExplainsItselfUnderItsTitle) {
    const std::string text = printed({"plan", sample("saddle"), "--set", "/craft/0/payload=60 kg"});
    EXPECT_THAT(text, HasSubstr("This plan cannot be done."));
    EXPECT_LT(text.find("This plan cannot be done."), text.find("\nDays\n"));
}

TEST(FirstScreen, ABrokenLimitIsNeverCalledClear) {
    const std::string text =
        printed({"plan", sample("saddle"), "--set", "/party/0/carry_limit=12 kg"});
    EXPECT_THAT(text, HasSubstr("This plan breaks what you asked."));
    EXPECT_THAT(text, Not(HasSubstr("Nothing known stands against")));
    EXPECT_THAT(text, HasSubstr("! is over the bearer's limit"));
    EXPECT_THAT(text, Not(HasSubstr("can be carried out")));
}

/// A plan of many days, each as the second of the plan written by hand.
Plan long_plan(int days) {
    Plan plan = test::hand_built_plan();
    const planner::PlanDay day = plan.days[1];
    std::vector<planner::PlanLeg> legs;
    for (const planner::PlanLeg& leg : plan.legs)
        if (leg.day == day.day)
            legs.push_back(leg);
    plan.days.clear();
    plan.legs.clear();
    for (int k = 1; k <= days; ++k) {
        plan.days.push_back(day);
        plan.days.back().day = k;
        for (planner::PlanLeg leg : legs) {
            leg.day = k;
            plan.legs.push_back(leg);
        }
    }
    for (planner::PlanDay& one : plan.days)
        for (planner::MemberDay& member : one.members)
            member.heaviest_leg = 0;
    plan.heaviest_packs.clear();
    plan.cautions.clear();
    plan.verdict = {};
    plan.turn_rounds.clear();
    plan.appointments.clear();
    return plan;
}

TEST(FirstScreen, OfALongTripEveryDayKeepsALineAndLegsFold) {
    const std::vector<std::string> ten = test::lines_of(plan_text(long_plan(10), {}));
    const std::vector<std::string> ninety = test::lines_of(plan_text(long_plan(90), {}));
    EXPECT_EQ(ninety.size() - ten.size(), 80U); // one line for each day more, and no other
    EXPECT_THAT(plan_text(long_plan(90), {}), HasSubstr("the 10 worst of"));
}

TEST(FirstScreen, TheWorstLegsAreKept) {
    Plan plan = long_plan(40);
    std::size_t heavy = 0;
    for (planner::PlanLeg& leg : plan.legs)
        if (leg.day == 33 && leg.travel != planner::Travel::paddle && heavy == 0) {
            leg.name = "The heavy one";
            leg.loads[0].pack_max_kg = 3.0 * leg.loads[0].limit_kg;
            ++heavy;
        }
    ASSERT_EQ(heavy, 1U);
    const std::string text = plan_text(plan, {});
    EXPECT_THAT(text, HasSubstr("The heavy one"));
    EXPECT_THAT(text, HasSubstr("300 %"));
}

class Widths : public testing::TestWithParam<std::size_t> {};

TEST_P(Widths, OfEveryCommandWithSections) {
    for (const char* name : {"saddle", "fourteen-portages", "five-over-two-passes"})
        for (const char* command : {"plan", "pack", "nights", "odds"})
            for (const bool all : {false, true})
                for (const char* units : {"metric", "imperial"}) {
                    std::vector<std::string> words{command, sample(name), "--units", units};
                    if (all)
                        words.insert(words.end(), {"--show", "all"});
                    if (command == std::string("odds"))
                        words.insert(words.end(), {"--draws", "20"});
                    if (command == std::string("nights") && name != std::string("saddle"))
                        continue; // slow, and of the same shape
                    for (const std::string& line : test::lines_of(printed(words, GetParam())))
                        EXPECT_LE(columns_of(line), GetParam()) << command << ": " << line;
                }
}

TEST_P(Widths, OfComparedPlans) {
    for (const std::string& line : test::lines_of(printed(
             {"compare", sample("saddle"), "--set", "/party/0/carry_limit=12 kg", "--show", "all"},
             GetParam())))
        EXPECT_LE(columns_of(line), GetParam()) << line;
}

TEST_P(Widths, OfWhatARecordingTeaches) {
    const std::string recorded = (test::root / "sample-routes/saddle/recorded.gpx").string();
    for (const std::string& line :
         test::lines_of(printed({"pace", recorded, "--against", sample("saddle")}, GetParam())))
        EXPECT_LE(columns_of(line), GetParam()) << line;
}

TEST_P(Widths, OfMadeUpPlans) {
    for (std::uint64_t seed = 1; seed <= 20; ++seed) {
        const test::RandomTrip random = test::random_trip(seed);
        const Plan plan = planner::make_plan_with_choices(random.trip, random.route);
        for (const Show& show : {Show{}, show_all("plan")})
            for (const std::string& line :
                 test::lines_of(plan_text(plan, {.columns = GetParam(), .show = show})))
                EXPECT_LE(columns_of(line), GetParam()) << "seed " << seed << ": " << line;
        for (const std::string& line :
             test::lines_of(pack_text(plan, {.columns = GetParam(), .show = show_all("pack")})))
            EXPECT_LE(columns_of(line), GetParam()) << "seed " << seed << ": " << line;
    }
}

TEST_P(Widths, OfHelp) {
    for (const char* command : {"plan", "odds", "export", "new", "compare"})
        for (const std::string& line : test::lines_of(printed({command, "--help"}, GetParam())))
            EXPECT_LE(columns_of(line), GetParam()) << line;
}

INSTANTIATE_TEST_SUITE_P(Columns, Widths, testing::Values(72, 100, 120));

TEST(ShownSections, OnlyThoseThatWereNamed) {
    const std::string legs = printed({"plan", sample("saddle"), "--show", "legs"});
    EXPECT_THAT(legs, HasSubstr("\nDay 1: legs"));
    EXPECT_THAT(legs, Not(HasSubstr("\nTo pack")));
    EXPECT_THAT(legs, Not(HasSubstr("\nModels")));
    const std::string two = printed({"plan", sample("saddle"), "--show", "legs,assumptions"});
    EXPECT_THAT(two, HasSubstr("\nDay 1: legs"));
    EXPECT_THAT(two, HasSubstr("\nModels"));
    EXPECT_THAT(printed({"plan", sample("saddle"), "--show", "cautions"}), HasSubstr("\nCautions"));
}

TEST(ShownSections, AnUnknownOneIsAnsweredWithTheNearest) {
    const test::Said said = test::say({"plan", sample("saddle"), "--show", "leg"});
    EXPECT_EQ(said.code, ExitCode::bad_input);
    EXPECT_THAT(said.err, HasSubstr("write \"legs\""));
    EXPECT_TRUE(said.out.empty());
}

TEST(ShownSections, JsonIsAlwaysWhole) {
    EXPECT_EQ(printed({"plan", sample("saddle"), "--format", "json", "--show", "days"}),
              printed({"plan", sample("saddle"), "--format", "json"}));
}

TEST(ShownSections, RemediesArePlannedOnlyWhereTheyAreShown) {
    const std::vector<std::string> heavy{
        "plan", sample("saddle"), "--set", "/party/0/carry_limit=12 kg"};
    std::vector<std::string> asked = heavy;
    asked.insert(asked.end(), {"--show", "remedies"});
    EXPECT_THAT(printed(asked), HasSubstr("Accept the weight"));
    EXPECT_THAT(printed(heavy), Not(HasSubstr("Accept the weight")));
    const test::RandomTrip random = test::random_trip(3);
    Plan none = planner::make_plan_with_choices(
        random.trip, random.route, {}, {.remedies = false, .other_ways = false});
    EXPECT_TRUE(none.remedies.overloaded.empty());
    EXPECT_TRUE(none.other_ways.ways.empty());
}

TEST(Strict, APlanThatBreaksWhatWasAskedIsNone) {
    const std::vector<std::string> words{
        "plan", sample("saddle"), "--set", "/party/0/carry_limit=12 kg"};
    EXPECT_EQ(test::say(words).code, ExitCode::done);
    std::vector<std::string> strict = words;
    strict.emplace_back("--strict");
    EXPECT_EQ(test::say(strict).code, ExitCode::no_plan);
}

TEST(UnitsOfTheTrip, AreReadUnlessTheCommandSaysOthers) {
    const std::string imperial = printed({"plan", sample("saddle"), "--set", "/units=imperial"});
    EXPECT_THAT(imperial, HasSubstr(" lb"));
    EXPECT_THAT(imperial, Not(HasSubstr(" kg")));
    const std::string metric =
        printed({"plan", sample("saddle"), "--set", "/units=imperial", "--units", "metric"});
    EXPECT_EQ(metric, printed({"plan", sample("saddle")}));
    const test::Said wrong = test::say({"plan", sample("saddle"), "--set", "/units=imperal"});
    EXPECT_EQ(wrong.code, ExitCode::bad_input);
    EXPECT_THAT(wrong.err, HasSubstr("imperial"));
}

TEST(Settings, ALongOneWithoutASignIsNotRepeated) {
    const test::Said said =
        test::say({"plan", sample("saddle"), "--set", std::string(100'000, 'x')});
    EXPECT_EQ(said.code, ExitCode::bad_input);
    EXPECT_LT(said.err.size(), 500U);
}

} // namespace
} // namespace tumpline::cli
