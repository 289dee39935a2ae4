#include "planner/cautions/range_tally.h"

#include <fmt/format.h>
#include <gtest/gtest.h>

namespace tumpline::planner {
namespace {

UnitText degrees(double value) {
    return UnitText(fmt::format("{:.0f} C", value), fmt::format("{:.0f} F", 1.8 * value + 32.0));
}

TEST(RangeExcess, KeepsTheFurthestValueAndTheWayOutside) {
    RangeExcess excess(-10.0, 20.0);
    EXPECT_FALSE(excess.any());
    excess.see(20.0, 100.0);
    EXPECT_FALSE(excess.any()) << "its ends are inside";
    excess.see(25.0, 100.0);
    excess.see(30.0, 50.0);
    EXPECT_TRUE(excess.any());
    EXPECT_EQ(excess.length_m(), 150.0);
    EXPECT_EQ(excess.worst(degrees).metric, "30 C");
    EXPECT_EQ(excess.worst(degrees).imperial, "86 F");
    excess.see(-15.0);
    EXPECT_EQ(excess.worst(degrees).metric, "-15 C and 30 C");
    EXPECT_EQ(excess.range(degrees).metric, "-10 to 20 C");
    EXPECT_EQ(RangeExcess(std::nullopt, 20.0).range(degrees).metric, "up to 20 C");
    EXPECT_EQ(RangeExcess(-10.0, std::nullopt).range(degrees).metric, "from -10 C");
}

TEST(RangeTally, SaysOnlyWhatLiesOutside) {
    RangeTally tally;
    tally.add("air", RangeExcess(0.0, 20.0), degrees);
    EXPECT_TRUE(tally.empty());
    RangeExcess hot(0.0, 20.0);
    hot.see(25.0);
    tally.add("air", hot, degrees);
    RangeExcess cold(0.0, 20.0);
    cold.see(-5.0, 1000.0);
    tally.add("water", cold, degrees);
    EXPECT_EQ(tally.text("model").metric,
              "Outside the range of model: air 25 C (covers 0 to 20 C); water -5 C over 1.0 km "
              "(covers 0 to 20 C).");
}

} // namespace
} // namespace tumpline::planner
