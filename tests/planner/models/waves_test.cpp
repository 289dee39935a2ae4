#include "planner/models/waves.h"

#include "tests/support/check_rows.h"

#include <gtest/gtest.h>

#include <cmath>

namespace tumpline::planner {
namespace {

using test::PublishedValue;

constexpr double very_far_m = 1e9;

WindOverFetch wind_of(const PublishedValue& row) {
    return {.wind_mps = row.input("wind_mps"),
            .fetch_m = row.input_if("fetch_m").value_or(very_far_m)};
}

/// Friction velocity, as the manual has it.
double friction_mps(double wind_mps) {
    return wind_mps * std::sqrt(0.001 * (1.1 + 0.035 * wind_mps));
}

const test::Evaluators wave_rows{
    .numbers = {{"wave_height", [](const auto& row) { return waves_of(wind_of(row)).height_m; }},
                {"wave_period", [](const auto& row) { return waves_of(wind_of(row)).period_s; }},
                {"wave_growth", [](const auto& row) { return waves_grow_s(wind_of(row)); }},
                {"wave_height_full",
                 [](const auto& row) {
                     const double u = friction_mps(row.input("wind_mps"));
                     return 9.81 * waves_of(wind_of(row)).height_m / (u * u);
                 }},
                {"wave_period_full",
                 [](const auto& row) {
                     return 9.81 * waves_of(wind_of(row)).period_s /
                            friction_mps(row.input("wind_mps"));
                 }},
                {"wave_height_constant",
                 [](const auto& row) {
                     const double u = friction_mps(row.input("wind_mps"));
                     const double X = 9.81 * row.input("fetch_m") / (u * u);
                     return 9.81 * waves_of(wind_of(row)).height_m / (u * u) / std::sqrt(X);
                 }},
                {"wave_period_constant",
                 [](const auto& row) {
                     const double u = friction_mps(row.input("wind_mps"));
                     const double X = 9.81 * row.input("fetch_m") / (u * u);
                     return 9.81 * waves_of(wind_of(row)).period_s / u / std::cbrt(X);
                 }}},
    .texts = {}};

class WaveRows : public testing::TestWithParam<PublishedValue> {};

TEST_P(WaveRows, Agree) {
    test::check_row(GetParam(), wave_rows);
}

INSTANTIATE_TEST_SUITE_P(Published,
                         WaveRows,
                         testing::ValuesIn(test::published("waves")),
                         test::row_name);

TEST(Waves, ThereAreNoneWithoutWindOrOpenWater) {
    EXPECT_EQ(waves_of({.wind_mps = 0.0, .fetch_m = 5000.0}).height_m, 0.0);
    EXPECT_EQ(waves_of({.wind_mps = 8.0, .fetch_m = 0.0}).period_s, 0.0);
}

TEST(Waves, FourTimesTheFetchMakesThemTwiceAsHigh) {
    const double near_m = waves_of({.wind_mps = 8.0, .fetch_m = 1000.0}).height_m;
    EXPECT_NEAR(waves_of({.wind_mps = 8.0, .fetch_m = 4000.0}).height_m, 2.0 * near_m, 1e-12);
}

} // namespace
} // namespace tumpline::planner
