#include "planner/models/load_effect.h"

#include "planner/models/load_carriage.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

namespace tumpline::planner {
namespace {

TEST(EqualEffort, MoreLoadIsNeverFaster) {
    double before = equal_effort_factor(0.0);
    EXPECT_EQ(before, 1.0);
    for (int step = 1; step <= 30000; ++step) {
        const double factor = equal_effort_factor(step / 10000.0);
        EXPECT_LE(factor, before) << step;
        EXPECT_GT(factor, 0.0) << step;
        before = factor;
    }
    EXPECT_GT(equal_effort_factor(1e300), 0.0);
}

TEST(EqualEffort, TableIsWithinItsErrorOfTheExactRoot) {
    double worst = 0.0;
    for (int step = 0; step <= 20000; ++step) {
        const double load_ratio = 2.0 * std::pow(step / 20000.0, 3.0); // dense near no load
        worst = std::max(
            worst,
            std::abs(equal_effort_factor(load_ratio) - equal_effort_factor_exact(load_ratio)));
    }
    EXPECT_LT(worst, 1e-8);
}

TEST(EqualEffort, CostsWhatTheUnladenWalkerSpends) {
    const Carrying free{.body_kg = 70.0,
                        .load_kg = 0.0,
                        .speed_mps = 1.39,
                        .slope = 0.0,
                        .terrain = 1.0,
                        .resting_w = 70.0};
    for (const double load_kg : {1.0, 10.0, 20.0, 35.0, 46.2, 70.0}) {
        Carrying laden = free;
        laden.load_kg = load_kg;
        laden.speed_mps = 1.39 * equal_effort_factor(load_kg / laden.body_kg);
        EXPECT_NEAR(lcda_backpacking_2022_w(laden), lcda_backpacking_2022_w(free), 1e-6) << load_kg;
    }
}

// [Tranter1970]: 20 kg drop an average walker by one row, 0.79 to 0.82 of the speed at 6 h.
TEST(EqualEffort, AgreesWithTranterOnTwentyKilograms) {
    EXPECT_NEAR(equal_effort_factor(20.0 / 74.0), 0.805, 0.015);
}

// [Ruby2003]: without a pack of 16 kg, 20.75 % were hiked 21.5 % (men) and 26.3 % (women) faster.
// The base load of 4 to 8 kg and the speed of 0.8 to 1.1 m/s are our assumptions, body masses those
// of [Ruby2002]; the printed figures must lie between the extremes.
TEST(EqualEffort, DroppedPackIsNoticedAsMeasured) {
    const auto saving = [](double body_kg, double base_kg, double speed_mps) {
        Carrying walk{.body_kg = body_kg,
                      .load_kg = base_kg + 16.0,
                      .speed_mps = speed_mps,
                      .slope = 0.2075,
                      .terrain = 1.1,
                      .resting_w = body_kg};
        const double power_w = lcda_backpacking_2022_w(walk);
        walk.load_kg = base_kg;
        double low = speed_mps, high = 3.0 * speed_mps;
        for (int halving = 0; halving < 60; ++halving) {
            walk.speed_mps = 0.5 * (low + high);
            (lcda_backpacking_2022_w(walk) < power_w ? low : high) = walk.speed_mps;
        }
        return 1.0 - speed_mps / walk.speed_mps;
    };
    EXPECT_LT(saving(74.6, 4.0, 1.1), 0.215);
    EXPECT_GT(saving(74.6, 8.0, 0.8), 0.215);
    EXPECT_LT(saving(65.2, 4.0, 1.1), 0.263);
    EXPECT_GT(saving(65.2, 8.0, 0.8), 0.263);
}

TEST(LoadFactor, CountsFromTheLoadTheModelWasMeasuredUnder) {
    EXPECT_DOUBLE_EQ(load_factor(LoadEffect::equal_effort, 0.28, 0.28), 1.0);
    EXPECT_GT(load_factor(LoadEffect::equal_effort, 0.10, 0.28), 1.0);
    EXPECT_LT(load_factor(LoadEffect::equal_effort, 0.40, 0.28), 1.0);
    EXPECT_EQ(load_factor(LoadEffect::none, 0.40), 1.0);
}

TEST(LoadEffectNames, AreFoundAgain) {
    for (const LoadEffect effect : {LoadEffect::equal_effort, LoadEffect::none})
        EXPECT_EQ(load_effect(load_effect_name(effect)), effect);
    EXPECT_FALSE(load_effect("equal effort").has_value());
    EXPECT_TRUE(load_effect_covers(LoadEffect::equal_effort, 0.66));
    EXPECT_FALSE(load_effect_covers(LoadEffect::equal_effort, 0.67));
}

} // namespace
} // namespace tumpline::planner
