#include "planner/trip/river_flow.h"

#include <gtest/gtest.h>

#include <cmath>

namespace tumpline::planner {
namespace {

GaugeReading discharge(double value_m3ps) {
    return {.value = value_m3ps, .stage = false};
}

FlowNow reading(double value_m3ps) {
    return {.column = {}, .reading = discharge(value_m3ps)};
}

FlowNow level(FlowLevel column) {
    return {.column = column, .reading = {}};
}

/// 1 m/s at 10 m3/s, 2 m/s and class III at 30; low at 5 without a current.
RiverFlow of_three_levels() {
    RiverFlow flow;
    flow.columns[0] = FlowColumn{.current_mps = {}, .reading = discharge(5.0), .river_class = 1};
    flow.columns[1] = FlowColumn{.current_mps = 1.0, .reading = discharge(10.0), .river_class = {}};
    flow.columns[2] = FlowColumn{.current_mps = 2.0, .reading = discharge(30.0), .river_class = 3};
    flow.leg_class = 2;
    flow.runnable = std::array{discharge(4.0), discharge(40.0)};
    return flow;
}

TEST(RiverFlow, TakesAColumnAsItIsGiven) {
    const std::optional<FlowState> high = flow_state(of_three_levels(), level(FlowLevel::high));
    ASSERT_TRUE(high);
    EXPECT_EQ(high->current_mps, 2.0);
    EXPECT_EQ(high->river_class, 3);
    EXPECT_FALSE(high->estimated);
    EXPECT_EQ(flow_state(of_three_levels(), level(FlowLevel::normal))->river_class, 2); // the leg's
}

TEST(RiverFlow, CarriesACurrentFromTheNearestLevel) {
    // half the 10 m3/s of "normal": 1 m/s 0.5^0.40 = 0.7579 m/s
    const std::optional<FlowState> low = flow_state(of_three_levels(), level(FlowLevel::low));
    ASSERT_TRUE(low);
    EXPECT_NEAR(low->current_mps, 0.7579, 1e-4);
    EXPECT_TRUE(low->estimated);
}

TEST(RiverFlow, LiesBetweenLevelsByTheReadingAndTakesTheHarderClass) {
    // 15 is a quarter of the way from 10 to 30: 1.25 m/s
    const std::optional<FlowState> state = flow_state(of_three_levels(), reading(15.0));
    ASSERT_TRUE(state);
    EXPECT_NEAR(state->current_mps, 1.25, 1e-12);
    EXPECT_EQ(state->river_class, 3);
    EXPECT_FALSE(state->estimated);
}

TEST(RiverFlow, ReachesBeyondTheLevelsAsAnEstimateAndNoFurtherThanFiveTimes) {
    const std::optional<FlowState> flood = flow_state(of_three_levels(), reading(60.0));
    ASSERT_TRUE(flood);
    EXPECT_NEAR(flood->current_mps, 2.0 * std::pow(2.0, 0.40), 1e-12);
    EXPECT_TRUE(flood->beyond);
    EXPECT_FALSE(flow_state(of_three_levels(), reading(151.0))); // over five times 30
}

TEST(RiverFlow, DoesNotReachBeyondStages) {
    RiverFlow flow;
    const GaugeReading one{.value = 1.0, .stage = true};
    flow.columns[1] = FlowColumn{.current_mps = 1.0, .reading = one, .river_class = {}};
    EXPECT_TRUE(flow_state(flow, {.column = {}, .reading = one}));
    EXPECT_FALSE(
        flow_state(flow, {.column = {}, .reading = GaugeReading{.value = 1.2, .stage = true}}));
}

TEST(RiverFlow, IsRunnableBetweenItsReadings) {
    const RiverFlow flow = of_three_levels();
    EXPECT_EQ(is_runnable(flow, *flow_state(flow, reading(4.0))), true);
    EXPECT_EQ(is_runnable(flow, *flow_state(flow, reading(3.9))), false);
    EXPECT_EQ(is_runnable(flow, *flow_state(flow, reading(41.0))), false);
    RiverFlow unread = flow;
    unread.columns[1]->reading.reset();
    EXPECT_FALSE(is_runnable(unread, *flow_state(unread, level(FlowLevel::normal))));
}

TEST(RiverFlow, IsAskedForBesideTheTripFile) {
    TripLeg leg;
    leg.flow = of_three_levels();
    leg.flow->times.push_back({.hours = HoursOfDay{36'000.0, 50'400.0}, .now = reading(15.0)});
    set_flow(leg);
    EXPECT_EQ(leg.current_mps, 1.0);
    EXPECT_EQ(leg.river_class, 3); // of the release
    ask_flow(leg, FlowLevel::high);
    EXPECT_EQ(leg.current_mps, 2.0);
    EXPECT_TRUE(leg.flow->asked);
    EXPECT_TRUE(leg.flow->times.empty());
    TripLeg without;
    ask_flow(without, FlowLevel::high);
    EXPECT_FALSE(without.current_mps);
}

TEST(RiverFlow, ShowsReadingsInBothUnits) {
    EXPECT_EQ(reading_words(discharge(21.0)).metric, "21 m3/s");
    EXPECT_EQ(reading_words(discharge(21.0)).imperial, "742 ft3/s"); // 21 / 0.0283168 = 741.6
    EXPECT_EQ(reading_words({.value = 1.4, .stage = true}).metric, "1.40 m");
    EXPECT_EQ(reading_words({.value = 1.4, .stage = true}).imperial, "4.59 ft");
}

} // namespace
} // namespace tumpline::planner
