#include "planner/decisions/draws.h"

#include "planner/decisions/statistics.h"

#include <gtest/gtest.h>

#include <cmath>
#include <cstdint>
#include <vector>

/// Numbers drawn, against what others printed.
namespace tumpline::planner {
namespace {

struct PrintedQuantile {
    double p;
    double quantile;
    double tolerance;
};

// The first three are the checks printed with the algorithm [Wichura1988], from memory; the others
// stand in every table of the normal distribution.
TEST(NormalQuantile, AgreesWithPrintedFigures) {
    const std::vector<PrintedQuantile> printed{{0.25, -0.6744897501960817, 1e-15},
                                               {0.001, -3.090232306167814, 1e-14},
                                               {1e-20, -9.262340089798408, 1e-13},
                                               {0.975, 1.959964, 5e-7},
                                               {0.95, 1.644854, 5e-7},
                                               {0.5, 0.0, 0.0},
                                               {0.995, 2.575829, 5e-7}};
    for (const PrintedQuantile& row : printed)
        EXPECT_NEAR(normal_quantile(row.p), row.quantile, row.tolerance) << row.p;
}

// The distribution itself is in the C++ library: P(z) = erfc(-z / sqrt 2) / 2.
TEST(NormalQuantile, UndoesTheDistribution) {
    for (int k = 1; k < 2000; ++k) {
        const double p = k / 2000.0;
        const double back = 0.5 * std::erfc(-normal_quantile(p) / std::sqrt(2.0));
        EXPECT_NEAR(back, p, 1e-15 + 4e-15 * p) << p;
    }
}

// Source: the outputs of splitmix64 from state 1234567, as they go round with its reference code
// [Vigna2015]; from memory.
TEST(SeedOfADraw, IsSplitmix64) {
    EXPECT_EQ(seed_of(1234567, 0), 6457827717110365317U);
    EXPECT_EQ(seed_of(1234567, 1), 3203168211198807973U);
    EXPECT_EQ(seed_of(1234567, 2), 9817491932198370423U);
}

TEST(Normals, HaveTheMomentsOfANormalDistribution) {
    Normals normals(1);
    constexpr int count = 200'000;
    double sum = 0.0;
    double squares = 0.0;
    int beyond = 0;
    for (int k = 0; k < count; ++k) {
        const double z = normals.next();
        sum += z;
        squares += z * z;
        beyond += std::abs(z) > 1.959964 ? 1 : 0;
    }
    // Four standard errors each.
    EXPECT_NEAR(sum / count, 0.0, 4.0 / std::sqrt(count));
    EXPECT_NEAR(squares / count, 1.0, 4.0 * std::sqrt(2.0 / count));
    EXPECT_NEAR(static_cast<double>(beyond) / count, 0.05, 4.0 * std::sqrt(0.05 * 0.95 / count));
}

TEST(Draw, OfOneThingDoesNotDependOnTheSpreadOfAnother) {
    AssumedSpread spread = assume_spread({});
    Normals first(seed_of(7, 3));
    const Draw all = draw(first, spread, {.days = 3, .members = 2});
    spread.on_foot = {0.0, 0.0};
    spread.wind = 0.0;
    Normals second(seed_of(7, 3));
    const Draw fewer = draw(second, spread, {.days = 3, .members = 2});
    EXPECT_EQ(fewer.pace_on_foot, 1.0);
    EXPECT_EQ(fewer.wind[2], 1.0);
    EXPECT_EQ(fewer.eating, all.eating);
    EXPECT_EQ(fewer.form[2][1], all.form[2][1]);
}

/// Two of three lie between the sides, a sixth beyond each; the median is 1.
TEST(Draw, OfAPaceNotKnownLiesFurtherOnTheSlowSide) {
    const AssumedSpread spread = assume_spread({}, {.on_foot = false, .afloat = true});
    constexpr int count = 20'000;
    int slower = 0, within = 0, faster = 0, below_median = 0;
    for (std::uint64_t k = 0; k < count; ++k) {
        Normals normals(seed_of(11, k));
        // Of a time: 0.82 and 1.44 times the median, walks of [Sullivan2020].
        const double time = 1.0 / draw(normals, spread, {.days = 1, .members = 1}).pace_on_foot;
        slower += time > 1.44 ? 1 : 0;
        faster += time < 0.82 ? 1 : 0;
        within += time >= 0.82 && time <= 1.44 ? 1 : 0;
        below_median += time > 1.0 ? 1 : 0;
    }
    // The normal distribution has 0.1587 beyond one standard deviation; four standard errors each.
    const double error = 4.0 * std::sqrt(0.16 * 0.84 / count);
    EXPECT_NEAR(static_cast<double>(slower) / count, 0.1587, error);
    EXPECT_NEAR(static_cast<double>(faster) / count, 0.1587, error);
    EXPECT_NEAR(static_cast<double>(within) / count, 0.6827, 4.0 * std::sqrt(0.25 / count));
    EXPECT_NEAR(static_cast<double>(below_median) / count, 0.5, 4.0 * std::sqrt(0.25 / count));
}

TEST(Quantiles, AreFiguresOfTheDraws) {
    std::vector<double> hundred;
    for (int k = 100; k >= 1; --k)
        hundred.push_back(k);
    const Quantiles found = quantiles(hundred);
    EXPECT_EQ(found.q05, 5.0);
    EXPECT_EQ(found.q10, 10.0);
    EXPECT_EQ(found.q50, 50.0);
    EXPECT_EQ(found.q95, 95.0);
    EXPECT_EQ(quantiles({3.0}).q05, 3.0);
    EXPECT_EQ(quantiles({3.0}).q95, 3.0);
    EXPECT_EQ(quantiles({2.0, 1.0, 3.0}).q50, 2.0);
}

// Spearman's coefficient of the ten pairs of IQ and hours of television that textbooks and
// encyclopaedias work through: -29/165 = -0.1757.
TEST(RankCorrelation, AgreesWithTheTextbookExample) {
    const std::vector<double> iq{106, 100, 86, 101, 99, 103, 97, 113, 112, 110};
    const std::vector<double> hours{7, 27, 2, 50, 28, 29, 20, 12, 6, 17};
    EXPECT_NEAR(correlation(ranks(iq), ranks(hours)), -29.0 / 165.0, 1e-12);
}

TEST(RankCorrelation, IsNothingWithWhatDoesNotVary) {
    EXPECT_EQ(correlation(ranks({1, 2, 3}), ranks({4, 4, 4})), 0.0);
    EXPECT_EQ(ranks({5, 1, 5}), (std::vector<double>{2.5, 1.0, 2.5}));
}

} // namespace
} // namespace tumpline::planner
