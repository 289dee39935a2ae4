#include "cli/words/flow_words.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace tumpline::cli {
namespace {

using planner::FlowLevel;
using planner::GaugeReading;

Figures metric() {
    return {planner::UnitSystem::metric, "UTC", Blank::plain};
}

TEST(FlowWords, SetTheLevelsSideBySide) {
    planner::Plan plan;
    planner::FlowPlan low{.level = FlowLevel::low, .moving_s = 7200.0, .days = 1};
    low.legs.push_back({.leg = 2,
                        .name = "River",
                        .current_mps = 0.5,
                        .moving_s = 3600.0,
                        .reading = GaugeReading{6.0, false},
                        .river_class = 1,
                        .estimated = true,
                        .runnable = false,
                        .asked = true});
    low.before_dusk_s = {-600.0, std::nullopt, std::nullopt};
    low.titles = {"Both", "Low alone"};
    planner::FlowPlan high = low;
    high.level = FlowLevel::high;
    high.legs[0].current_mps = 2.0;
    high.legs[0].estimated = false;
    high.legs[0].asked = false;
    high.before_dusk_s = {600.0, 900.0, std::nullopt};
    high.titles = {"Both"};
    plan.flows = {low, high};
    const FlowTable table = flow_table(plan, metric());
    EXPECT_THAT(table.levels, testing::ElementsAre("low", "high"));
    const auto cells = [&](const std::string& what) {
        for (const FlowTable::Row& row : table.rows)
            if (row.what == what)
                return row.cells;
        return std::vector<std::string>{};
    };
    EXPECT_THAT(cells("  its current"), testing::ElementsAre("about 1.8 km/h", "7.2 km/h, as now"));
    EXPECT_THAT(cells("  its reading"), testing::Contains("6 m3/s, not runnable"));
    EXPECT_THAT(cells("day 1: before dusk"), testing::ElementsAre("10 min too late", "10 min"));
    EXPECT_THAT(cells("day 2: before dusk"), testing::ElementsAre("none", "15 min"));
    EXPECT_THAT(cells("day 3: before dusk"), testing::IsEmpty()); // nobody travels
    EXPECT_THAT(table.remarks, testing::Contains("low: Low alone."));
}

TEST(FlowWords, NameTheLevelThatIsMet) {
    planner::PlanFlow flow{.gauge = "bridge", .now = {.column = FlowLevel::high, .reading = {}}};
    flow.states = {{.current_mps = 1.0, .reading = GaugeReading{30.0, false}}};
    EXPECT_EQ(level_met(flow, metric()), "high water, 30 m3/s");
    flow.states.push_back({.current_mps = 2.0, .reading = GaugeReading{45.0, false}});
    EXPECT_EQ(level_met(flow, metric()), "30 m3/s, then 45 m3/s");
}

TEST(FlowWords, SayOnACardWhenNotToGoOn) {
    planner::Plan plan;
    plan.decisions.push_back(
        {.leg = 3,
         .day = 2,
         .name = "River",
         .at = "Landing",
         .along_m = 2000.0,
         .gauge = "bridge",
         .below = GaugeReading{8.0, false},
         .above = GaugeReading{40.0, false},
         .not_at = {},
         .above_why = "it is said not to be runnable",
         .reading_known = true,
         .latest = planner::LatestStart{.at = geo::sys_seconds{std::chrono::hours{15}},
                                        .keeps = "dusk",
                                        .passed = false},
         .wind_mps = 8.0,
         .wind_craft = "red boat",
         .instead = {"Bank trail"},
         .wait_at = "Landing",
         .back_to = "Road",
         .back_s = 3600.0});
    const std::vector<CardWords> cards = card_words(plan, metric());
    ASSERT_THAT(cards, testing::SizeIs(1));
    EXPECT_EQ(cards[0].head, "Day 2, leg 3, River: decide at Landing");
    EXPECT_THAT(
        cards[0].lines,
        testing::ElementsAre(
            "Not below 8 m3/s at the gauge \"bridge\": it is said not to be runnable.",
            "Not above 40 m3/s at the gauge \"bridge\": it is said not to be runnable.",
            "Not after 15:00: later than that misses dusk, at the plan's pace.",
            "Not in wind above 29 km/h over open water, the ceiling of red boat.",
            "Otherwise: take Bank trail; or stay at Landing and look again; the nearest way out "
            "behind is Road, 1 h 00 min."));
}

} // namespace
} // namespace tumpline::cli
