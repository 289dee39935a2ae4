#include "geo/profiles/height_cleaning.h"

#include "geo/profiles/profile.h"
#include "tests/support/noisy_heights.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <vector>

namespace tumpline::geo {
namespace {

using Noise = test::HeightNoise;

constexpr double step_m = 25.0;
constexpr Cleaning raster_cleaning{.radius = 3, .threshold_m = 5.0};
constexpr Cleaning track_cleaning{.radius = 5, .threshold_m = 10.0};

std::vector<double> level(double length_m) {
    return std::vector<double>(static_cast<std::size_t>(length_m / step_m) + 1, 400.0);
}

/// Waves of ground: height from foot to summit, and distance from summit to summit.
std::vector<double> waves(double height_m, double apart_m) {
    std::vector<double> heights_m = level(20'000.0);
    for (std::size_t i = 0; i < heights_m.size(); ++i)
        heights_m[i] +=
            0.5 * height_m * std::sin(2.0 * M_PI * static_cast<double>(i) * step_m / apart_m);
    return heights_m;
}

double ascent_m(const std::vector<double>& heights_m) {
    return climb(heights_m, 0.0).ascent_m;
}

double mean_ascent_m_per_km(const Noise& noise, const Cleaning& cleaning) {
    constexpr int draws = 50;
    constexpr double length_m = 10'000.0;
    double sum_m = 0.0;
    for (std::uint64_t seed = 1; seed <= draws; ++seed)
        sum_m +=
            ascent_m(cleaned_land(test::noisy(level(length_m), step_m, noise, seed), cleaning));
    return sum_m / draws / (length_m / 1000.0);
}

TEST(HeightCleaning, TurningPointsAreTheEndsOfSwingsThatCount) {
    EXPECT_EQ(turning_points({0, 10, 8, 20, 4, 9, 5, 30}, 5.0),
              (std::vector<std::size_t>{0, 3, 4, 7}));
    EXPECT_EQ(turning_points({0, 10, 8, 20, 4, 10, 4, 30}, 5.0),
              (std::vector<std::size_t>{0, 3, 4, 5, 6, 7}));
    EXPECT_EQ(turning_points({3, 0, 10}, 5.0), (std::vector<std::size_t>{1, 2}));
    EXPECT_TRUE(turning_points({0, 4, 0, 4}, 5.0).empty());
    EXPECT_TRUE(turning_points({}, 5.0).empty());
    EXPECT_TRUE(turning_points({7}, 5.0).empty());
}

TEST(HeightCleaning, KeepsABareRampHoweverGentleAndShort) {
    for (const double slope : {-0.3, -0.01, -0.0004, 0.0, 0.0004, 0.01, 0.3})
        for (const std::size_t samples : {2U, 3U, 4U, 7U, 20U, 400U}) {
            std::vector<double> ramp_m(samples);
            for (std::size_t i = 0; i < samples; ++i)
                ramp_m[i] = 1234.5 + slope * step_m * static_cast<double>(i);
            for (const Cleaning& cleaning : {raster_cleaning, track_cleaning}) {
                const std::vector<double> clean_m = cleaned_land(ramp_m, cleaning);
                ASSERT_EQ(clean_m.size(), samples);
                for (std::size_t i = 0; i < samples; ++i)
                    EXPECT_NEAR(clean_m[i], ramp_m[i], 1e-9)
                        << slope << " over " << samples << " samples, sample " << i;
            }
        }
}

// The spread of heights from SRTM and Copernicus rasters along a path is 1.5 to 2 m at best
// (docs/models/elevation.md). Independent errors leave nothing; errors that go together over 50 m
// leave under a metre of climb in a kilometre, where the plain sum has 10 to 20.
TEST(HeightCleaning, LevelGroundUnderARastersNoiseDoesNotClimb) {
    EXPECT_LT(mean_ascent_m_per_km({.sigma_m = 1.5, .correlation_m = 0.0}, raster_cleaning), 0.05);
    EXPECT_LT(mean_ascent_m_per_km({.sigma_m = 2.0, .correlation_m = 0.0}, raster_cleaning), 0.1);
    EXPECT_LT(mean_ascent_m_per_km({.sigma_m = 1.5, .correlation_m = 50.0}, raster_cleaning), 0.2);
    EXPECT_LT(mean_ascent_m_per_km({.sigma_m = 2.0, .correlation_m = 50.0}, raster_cleaning), 1.0);
}

TEST(HeightCleaning, LevelGroundUnderAReceiversNoiseHardlyClimbs) {
    EXPECT_LT(mean_ascent_m_per_km({.sigma_m = 3.0, .correlation_m = 0.0}, track_cleaning), 0.05);
    EXPECT_LT(mean_ascent_m_per_km({.sigma_m = 5.0, .correlation_m = 0.0}, track_cleaning), 0.3);
    EXPECT_LT(mean_ascent_m_per_km({.sigma_m = 3.0, .correlation_m = 100.0}, track_cleaning), 0.5);
    EXPECT_LT(mean_ascent_m_per_km({.sigma_m = 5.0, .correlation_m = 100.0}, track_cleaning), 4.0);
}

// A barometer's errors are a metre at most from minute to minute, and slow
// (docs/models/elevation.md).
TEST(HeightCleaning, LevelGroundUnderABarometersNoiseDoesNotClimb) {
    constexpr Cleaning barometer{.radius = 3, .threshold_m = barometer_threshold_m};
    EXPECT_LT(mean_ascent_m_per_km({.sigma_m = 1.0, .correlation_m = 0.0}, barometer), 0.01);
    EXPECT_LT(mean_ascent_m_per_km({.sigma_m = 1.0, .correlation_m = 300.0}, barometer), 0.05);
    EXPECT_LT(mean_ascent_m_per_km({.sigma_m = 1.5, .correlation_m = 300.0}, barometer), 1.0);
    const std::vector<double> hills_m = waves(25.0, 500.0); // lost by a receiver's threshold
    EXPECT_NEAR(
        ascent_m(cleaned_land(hills_m, barometer)), ascent_m(hills_m), 0.02 * ascent_m(hills_m));
    EXPECT_LT(ascent_m(cleaned_land(hills_m, track_cleaning)), 0.1 * ascent_m(hills_m));
}

TEST(HeightCleaning, HillsKeepTheirHeightUnderNoise) {
    for (const double apart_m : {500.0, 1000.0, 2000.0, 4000.0}) {
        const std::vector<double> ground_m = waves(0.05 * apart_m, apart_m);
        const double true_m = ascent_m(ground_m);
        EXPECT_NEAR(ascent_m(cleaned_land(ground_m, raster_cleaning)), true_m, 0.02 * true_m)
            << "summits " << apart_m << " m apart";
        for (std::uint64_t seed = 1; seed <= 5; ++seed)
            EXPECT_NEAR(
                ascent_m(cleaned_land(
                    test::noisy(ground_m, step_m, {.sigma_m = 1.5, .correlation_m = 50.0}, seed),
                    raster_cleaning)),
                true_m,
                0.05 * true_m)
                << "summits " << apart_m << " m apart, seed " << seed;
    }
}

TEST(HeightCleaning, IsTheMirrorImageForTheMirrorImage) {
    for (std::uint64_t seed = 1; seed <= 20; ++seed) {
        std::vector<double> heights_m =
            test::noisy(waves(40.0, 1500.0), step_m, {.sigma_m = 3.0, .correlation_m = 50.0}, seed);
        const std::vector<double> there_m = cleaned_land(heights_m, raster_cleaning);
        std::reverse(heights_m.begin(), heights_m.end());
        const std::vector<double> back_m = cleaned_land(heights_m, raster_cleaning);
        EXPECT_NEAR(climb(there_m, 0.0).ascent_m, climb(back_m, 0.0).descent_m, 1e-6);
        EXPECT_NEAR(climb(there_m, 0.0).descent_m, climb(back_m, 0.0).ascent_m, 1e-6);
    }
}

TEST(HeightCleaning, PlainRisesAddUpToTheSwingsThatCount) {
    for (std::uint64_t seed = 1; seed <= 20; ++seed) {
        const std::vector<double> clean_m = cleaned_land(
            test::noisy(waves(40.0, 1500.0), step_m, {.sigma_m = 3.0, .correlation_m = 50.0}, seed),
            raster_cleaning);
        EXPECT_NEAR(climb(clean_m, 0.0).ascent_m, climb(clean_m, 1e-6).ascent_m, 1e-6);
        EXPECT_NEAR(climb(clean_m, 0.0).descent_m, climb(clean_m, 1e-6).descent_m, 1e-6);
        EXPECT_NEAR(clean_m.back() - clean_m.front(),
                    climb(clean_m, 0.0).ascent_m - climb(clean_m, 0.0).descent_m,
                    1e-6);
    }
}

TEST(HeightCleaning, ParabolasKeepAParabola) {
    std::vector<double> heights_m;
    for (int i = -20; i <= 20; ++i)
        heights_m.push_back(100.0 - 0.3 * i * i + 0.7 * i);
    const std::vector<double> smooth_m = smoothed_by_parabolas(heights_m, 3);
    for (std::size_t i = 3; i + 3 < heights_m.size(); ++i)
        EXPECT_NEAR(smooth_m[i], heights_m[i], 1e-9);
    // Weights of five points: [SavitzkyGolay1964], table I: -3, 12, 17, 12, -3 over 35.
    EXPECT_NEAR(smoothed_by_parabolas({0, 0, 0, 35, 0, 0, 0}, 2)[3], 17.0, 1e-12);
    EXPECT_NEAR(smoothed_by_parabolas({0, 0, 35, 0, 0, 0, 0}, 2)[3], 12.0, 1e-12);
    EXPECT_NEAR(smoothed_by_parabolas({0, 35, 0, 0, 0, 0, 0}, 2)[3], -3.0, 1e-12);
}

TEST(HeightCleaning, ALakeIsLevelAtItsMedian) {
    EXPECT_EQ(cleaned_lake({5, 1, 90}), (std::vector<double>{5, 5, 5}));
    EXPECT_EQ(cleaned_lake({4, 1, 6, 90}), (std::vector<double>{5, 5, 5, 5}));
    EXPECT_TRUE(cleaned_lake({}).empty());
}

TEST(HeightCleaning, ARiverNeverRisesDownstream) {
    double sum_m = 0.0;
    for (std::uint64_t seed = 1; seed <= 20; ++seed) {
        std::vector<double> river_m = level(12'000.0);
        for (std::size_t i = 0; i < river_m.size(); ++i)
            river_m[i] -= 0.002 * step_m * static_cast<double>(i); // 24 m in all
        const std::vector<double> clean_m = cleaned_river(
            test::noisy(river_m, step_m, {.sigma_m = 3.0, .correlation_m = 50.0}, seed), 9);
        for (std::size_t i = 1; i < clean_m.size(); ++i)
            ASSERT_LE(clean_m[i], clean_m[i - 1]) << "seed " << seed << ", sample " << i;
        EXPECT_NEAR(clean_m.front() - clean_m.back(), 24.0, 10.0) << "seed " << seed;
        sum_m += clean_m.front() - clean_m.back();
    }
    EXPECT_NEAR(sum_m / 20.0, 24.0, 3.0);
}

TEST(HeightCleaning, ARiverDrawnUpstreamIsLevel) {
    const std::vector<double> clean_m = cleaned_river({1, 2, 3, 4, 5, 6, 7, 8, 9}, 0);
    EXPECT_EQ(clean_m, std::vector<double>(9, 5.0));
}

} // namespace
} // namespace tumpline::geo
