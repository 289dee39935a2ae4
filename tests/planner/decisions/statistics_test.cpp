#include "planner/decisions/statistics.h"

#include <gtest/gtest.h>

#include <vector>

namespace tumpline::planner {
namespace {

TEST(Statistics, OfTwentyFiguresTheQuantilesAreTheirRanks) {
    std::vector<double> values;
    for (int k = 20; k >= 1; --k) // 20 to 1: they need no order
        values.push_back(k);
    const Quantiles found = quantiles(values);
    EXPECT_EQ(found.q05, 1.0); // one of twenty is not above it
    EXPECT_EQ(found.q10, 2.0);
    EXPECT_EQ(found.q50, 10.0);
    EXPECT_EQ(found.q90, 18.0);
    EXPECT_EQ(found.q95, 19.0);
    EXPECT_EQ(mean(values), 10.5);
}

TEST(Statistics, EqualFiguresShareTheMeanOfTheirRanks) {
    EXPECT_EQ(ranks({30.0, 10.0, 30.0, 20.0}), (std::vector<double>{3.5, 1.0, 3.5, 2.0}));
}

TEST(Statistics, CorrelationIsPearsons) {
    EXPECT_DOUBLE_EQ(correlation({1.0, 2.0, 3.0}, {2.0, 4.0, 6.0}), 1.0);
    EXPECT_DOUBLE_EQ(correlation({1.0, 2.0, 3.0}, {6.0, 4.0, 2.0}), -1.0);
    // Sums of products about the means: 1 over the root of 2 times 2.
    EXPECT_DOUBLE_EQ(correlation({1.0, 2.0, 3.0}, {1.0, 3.0, 2.0}), 0.5);
    EXPECT_EQ(correlation({1.0, 2.0, 3.0}, {4.0, 4.0, 4.0}), 0.0);
}

} // namespace
} // namespace tumpline::planner
