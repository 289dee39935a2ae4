/// Odds as text, each share and hour under its heading: an answer written by hand.

#include "cli/text/odds_text.h"

#include "tests/support/hand_built_parts.h"
#include "tests/support/hand_built_plan.h"
#include "tests/support/text_lines.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <string>

namespace tumpline::cli {
namespace {

using test::clock_minutes;
using test::hand_built_time;
using testing::HasSubstr;

planner::Odds hand_built_odds() {
    planner::Odds odds;
    odds.plan = test::hand_built_plan();
    odds.options.draws = 2000;
    odds.options.seed = 7;
    odds.under_way_s.q50 = 40'020.0; // 11 h 07 min
    odds.under_way_s.q90 = 46'860.0; // 13 h 01 min
    planner::OddsDay& day = odds.days.emplace_back();
    day.day = 2;
    day.arrive.q05 = hand_built_time(2, clock_minutes(11, 1));
    day.arrive.q10 = hand_built_time(2, clock_minutes(11, 12));
    day.arrive.q50 = hand_built_time(2, clock_minutes(11, 53));
    day.arrive.q90 = hand_built_time(2, clock_minutes(12, 44));
    day.arrive.q95 = hand_built_time(2, clock_minutes(13, 5));
    day.after_dusk = 0.031;
    day.held_up = 0.12;
    day.leading = planner::Assumption::wind;
    planner::OddsAppointment& bus = odds.appointments.emplace_back();
    bus.appointment = 0;
    bus.missed = 0.004;
    bus.within_margin = 0.23;
    planner::OddsStage& stage = odds.stages.emplace_back();
    stage.stage = 0;
    stage.runs_out = {0.02, 0.31};
    stage.left_kg.q05 = 0.7;
    planner::OddsWater& water = odds.water.emplace_back();
    water.stretch = 0;
    water.uses_reserve = 0.41;
    water.needs_more = 0.06;
    planner::OddsLeg& leg = odds.legs.emplace_back();
    leg.plan_leg = 1;
    planner::OddsPack& pack = leg.packs.emplace_back();
    pack.member = "Ada";
    pack.plan_kg = 19.1;
    pack.start_kg.q05 = 18.2;
    pack.start_kg.q50 = 19.3;
    pack.start_kg.q95 = 20.4;
    pack.over_limit = 0.15;
    planner::Influence& pace = odds.influences.emplace_back();
    pace.assumption = planner::Assumption::pace_on_foot;
    pace.spread = 0.12;
    pace.time_share = 0.62;
    pace.food_share = 0.21;
    pace.water_share = 0.34;
    return odds;
}

std::string shown_odds(Section section) {
    return test::squeezed(odds_text(
        hand_built_odds(),
        {.units = planner::UnitSystem::metric, .colour = false, .show = {.sections = {section}}}));
}

TEST(OddsText, HasTheArrivalsUnderTheirShares) {
    const std::string text = shown_odds(Section::arrivals);
    EXPECT_THAT(text, HasSubstr("2000 draws, seed 7;"));
    EXPECT_THAT(text, HasSubstr("take up to 11 h 07 min"));
    EXPECT_THAT(text, HasSubstr("up to\n13 h 01 min."));
    EXPECT_THAT(text,
                HasSubstr("Day To Plan 5 % 10 % 50 % 90 % 95 % After dusk Stopped Main driver\n"));
    EXPECT_THAT(text,
                HasSubstr(" 2 Gravel bar 11:53 11:01 11:12 11:53 12:44 13:05 3 % 12 % wind\n"));
}

TEST(OddsText, TellsMissedFromMetWithLessThanTheMargin) {
    const std::string text = shown_odds(Section::appointments);
    EXPECT_THAT(text, HasSubstr("missed in 0.4 % of the draws"));
    EXPECT_THAT(text, HasSubstr("margin of 1 h 30 min in 23 %."));
}

TEST(OddsText, TellsFoodAsPlannedFromADayLost) {
    const std::string text = shown_odds(Section::food);
    EXPECT_THAT(text, HasSubstr("runs out in 2 % of the draws as planned, in 31 % if a day is"));
    EXPECT_THAT(text, HasSubstr("In nineteen of twenty 700 g or more are left."));
}

TEST(OddsText, HasTheWaterUnderItsHeadings) {
    const std::string text = shown_odds(Section::water);
    EXPECT_THAT(text, HasSubstr("From To Days Dips into the reserve Needs more than filled\n"));
    EXPECT_THAT(text, HasSubstr("Road end Shelf spring 1 41 % 6 %\n"));
}

TEST(OddsText, HasThePacksUnderTheirShares) {
    const std::string text = shown_odds(Section::packs);
    EXPECT_THAT(text, HasSubstr("Leg Day Member Plan 5 % 50 % 95 % Over limit\n"));
    EXPECT_THAT(text, HasSubstr("Road end over the saddle Ada 19.1 18.2 19.3 20.4 15 %\n"));
}

TEST(OddsText, HasWhatMattersUnderItsHeadings) {
    const std::string text = shown_odds(Section::drivers);
    EXPECT_THAT(text, HasSubstr("Assumption Spread Time under way Food eaten Water carried\n"));
    EXPECT_THAT(text, HasSubstr("pace on foot 0.12 62 % 21 % 34 %\n"));
}

} // namespace
} // namespace tumpline::cli
