#include "planner/decisions/drawn_flow.h"

#include <gtest/gtest.h>

#include <cmath>

namespace tumpline::planner {
namespace {

/// 3, 5 and 7 km/h at 10, 40 and 90 m3/s.
RiverFlow three_levels() {
    RiverFlow flow;
    flow.columns[0] =
        FlowColumn{.current_mps = 3.0 / 3.6, .reading = GaugeReading{10.0}, .river_class = 1};
    flow.columns[1] =
        FlowColumn{.current_mps = 5.0 / 3.6, .reading = GaugeReading{40.0}, .river_class = 2};
    flow.columns[2] =
        FlowColumn{.current_mps = 7.0 / 3.6, .reading = GaugeReading{90.0}, .river_class = 4};
    return flow;
}

TEST(FlowScale, HasTheColumnsAtZeroOneAndTwo) {
    const FlowScale scale(three_levels());
    EXPECT_EQ(scale.now(), 1.0);
    EXPECT_NEAR(scale.at(0.0).current_mps, 3.0 / 3.6, 1e-12);
    EXPECT_NEAR(scale.at(1.0).current_mps, 5.0 / 3.6, 1e-12);
    EXPECT_NEAR(scale.at(2.0).current_mps, 7.0 / 3.6, 1e-12);
    EXPECT_EQ(scale.at(0.0).river_class, 1);
}

TEST(FlowScale, GoesByTheLogarithmOfADischarge) {
    RiverFlow flow = three_levels();
    flow.now = {.column = {}, .reading = GaugeReading{20.0}}; // half way from 10 to 40 by doublings
    const FlowScale scale(flow);
    ASSERT_TRUE(scale.now());
    EXPECT_NEAR(*scale.now(), 0.5, 1e-12);
    const FlowState half = scale.at(0.5);
    EXPECT_NEAR(half.reading->value, 20.0, 1e-9);
    // The plan's own current at 20 m3/s: a third of the way from 3 to 5 km/h.
    EXPECT_NEAR(half.current_mps, (3.0 + 2.0 / 3.0) / 3.6, 1e-9);
    EXPECT_EQ(half.river_class, 2);                        // the harder of both
    EXPECT_NEAR(scale.at(1.5).reading->value, 60.0, 1e-9); // root of 40 * 90
}

TEST(FlowScale, StaysAtTheLastColumns) {
    const FlowScale scale(three_levels());
    EXPECT_NEAR(scale.at(-3.0).current_mps, 3.0 / 3.6, 1e-12);
    EXPECT_NEAR(scale.at(9.0).current_mps, 7.0 / 3.6, 1e-12);
}

TEST(FlowScale, WithoutReadingsGoesEvenly) {
    RiverFlow flow = three_levels();
    for (std::optional<FlowColumn>& column : flow.columns)
        column->reading = std::nullopt;
    flow.columns[1] = std::nullopt; // low at 0, high at 2
    flow.now = {.column = FlowLevel::low, .reading = {}};
    const FlowScale scale(flow);
    EXPECT_EQ(scale.now(), 0.0);
    EXPECT_NEAR(scale.at(0.5).current_mps, 4.0 / 3.6, 1e-12); // a quarter of the way from 3 to 7
    EXPECT_FALSE(scale.at(0.5).reading);
    EXPECT_EQ(scale.at(0.5).river_class, 4);
}

TEST(FlowScale, IsNoneWhereNowLiesBeyondItOrOneColumnIsAll) {
    RiverFlow flow = three_levels();
    flow.now = {.column = {}, .reading = GaugeReading{120.0}};
    EXPECT_FALSE(FlowScale(flow).now());
    flow.now = {.column = {}, .reading = GaugeReading{.value = 1.2, .stage = true}};
    EXPECT_FALSE(FlowScale(flow).now());
    RiverFlow one;
    one.columns[1] = FlowColumn{.current_mps = 1.0, .reading = {}, .river_class = {}};
    EXPECT_FALSE(FlowScale(one).now());
}

// Of a standard normal one in ten lies beyond 1.28155.
TEST(FlowShift, TakesOneDrawInTenBeyondTheNextColumn) {
    EXPECT_NEAR(flow_shift(1.2815515655), 1.0, 1e-9);
    EXPECT_EQ(flow_shift(0.0), 0.0);
    EXPECT_NEAR(0.5 * std::erfc(1.2815515655 / std::sqrt(2.0)), 0.1, 1e-9);
}

} // namespace
} // namespace tumpline::planner
