#include "planner/models/river.h"

#include "tests/support/check_rows.h"

#include <fmt/format.h>
#include <gtest/gtest.h>

#include <cmath>
#include <string>

namespace tumpline::planner {

namespace {

using test::PublishedValue;

TrapezoidSection section_of(const PublishedValue& row) {
    return {.bottom_m = row.input("width_m"), .depth_m = row.input("depth_m"), .side_slope = 0.0};
}

double section_velocity(const PublishedValue& row) {
    return manning_mps({.hydraulic_radius_m = hydraulic_radius_m(section_of(row)),
                        .slope = row.input("slope"),
                        .roughness = row.input("n")});
}

/// Of the section with sloping sides that passes the row's discharge at the row's velocity.
double slope_of_trapezoid(const PublishedValue& row) {
    const double wanted_m2 = row.input("discharge_m3ps") / row.input("velocity_mps");
    const double half = 0.5 * row.input("bottom_m") / row.input("side_slope");
    const TrapezoidSection section{
        .bottom_m = row.input("bottom_m"),
        .depth_m = -half + std::sqrt(half * half + wanted_m2 / row.input("side_slope")),
        .side_slope = row.input("side_slope")};
    EXPECT_NEAR(area_m2(section), wanted_m2, 1e-9);
    return manning_slope({.hydraulic_radius_m = hydraulic_radius_m(section),
                          .slope = 0.0,
                          .roughness = row.input("n")},
                         row.input("velocity_mps"));
}

TravelVelocity jobson_of(const PublishedValue& row) {
    return jobson({.discharge_m3ps = row.input("discharge_m3ps"),
                   .mean_annual_discharge_m3ps = row.input("mean_annual_discharge_m3ps"),
                   .drainage_area_m2 = row.input("drainage_area_m2"),
                   .slope = row.input_if("slope")})
        .value();
}

const test::Evaluators river_evaluators{
    .numbers = {{"section_velocity", section_velocity},
                {"section_discharge",
                 [](const auto& row) { return section_velocity(row) * area_m2(section_of(row)); }},
                {"manning_slope", slope_of_trapezoid},
                {"manning",
                 [](const auto& row) {
                     return manning_mps({.hydraulic_radius_m = row.input("hydraulic_radius_m"),
                                         .slope = row.input("slope"),
                                         .roughness = row.input("n")});
                 }},
                {"jarrett",
                 [](const auto& row) {
                     return jarrett_roughness(row.input("slope"),
                                              row.input("hydraulic_radius_ft") * 0.3048);
                 }},
                {"jobson_probable", [](const auto& row) { return jobson_of(row).probable_mps; }},
                {"jobson_maximum", [](const auto& row) { return jobson_of(row).maximum_mps; }},
                {"jobson_no_slope", [](const auto& row) { return jobson_of(row).probable_mps; }},
                {"leading_edge", [](const auto&) { return leading_edge_share; }},
                {"gradient",
                 [](const auto& row) { return m_per_km(row.input("ft_per_mile") / 5280.0); }}},
    .texts = {{"chow", [](const auto& row) {
                   const Roughness n = chow_roughness(row.text("channel")).value();
                   return fmt::format("[{},{},{}]", n.least, n.normal, n.most);
               }}}};

class RiverRows : public testing::TestWithParam<PublishedValue> {};

TEST_P(RiverRows, Agree) {
    test::check_row(GetParam(), river_evaluators);
}

INSTANTIATE_TEST_SUITE_P(Published,
                         RiverRows,
                         testing::ValuesIn(test::published("river")),
                         test::row_name);

Bed bed(double slope, double depth_m) {
    return {.slope = slope,
            .depth_m = depth_m,
            .roughness = chow_roughness(default_bed).value_or(chow_rows().front())};
}

TEST(River, EstimatesAreOrderedFiniteAndBelowCriticalFlow) {
    for (const Roughness& row : chow_rows())
        for (const double slope : {0.0, 1e-6, 0.0005, 0.0019, 0.002, 0.01, 0.09, 0.1, 1.0, 10.0})
            for (const double depth_m : {0.0, 0.05, 0.3, 1.0, 2.1, 2.2, 10.0}) {
                const CurrentEstimate current =
                    estimated_current({.slope = slope, .depth_m = depth_m, .roughness = row});
                EXPECT_LE(0.0, current.slow_mps);
                EXPECT_LE(current.slow_mps, current.likely_mps);
                EXPECT_LE(current.likely_mps, current.fast_mps);
                EXPECT_LE(current.fast_mps, std::sqrt(9.80665 * depth_m) + 1e-12);
            }
}

TEST(River, DeeperSteeperAndSmootherReachesRunFaster) {
    for (int centimetres = 10; centimetres < 300; centimetres += 10)
        EXPECT_LE(estimated_current(bed(0.001, centimetres / 100.0)).likely_mps,
                  estimated_current(bed(0.001, (centimetres + 10) / 100.0)).likely_mps);
    EXPECT_GT(manning_mps({1.0, 0.001, 0.03}), manning_mps({1.0, 0.001, 0.04}));
    EXPECT_GT(manning_mps({1.0, 0.002, 0.03}), manning_mps({1.0, 0.001, 0.03}));
}

TEST(River, SteepBedsTakeTheRougherFigure) {
    EXPECT_FALSE(estimated_current(bed(0.001, 0.6)).jarrett);
    const CurrentEstimate steep = estimated_current(bed(0.02, 0.6));
    EXPECT_TRUE(steep.jarrett);
    EXPECT_LT(steep.likely_mps, manning_mps({0.6, 0.02, 0.04}));
}

TEST(River, AReachTooSteepToBeARiverIsHeldAtCriticalFlow) {
    EXPECT_TRUE(estimated_current(bed(0.5, 0.6)).limited);
    EXPECT_FALSE(estimated_current(bed(0.001, 0.6)).limited);
}

TEST(River, ALevelOrRisingReachHasNoEstimate) {
    EXPECT_EQ(estimated_current(bed(0.0, 0.6)).fast_mps, 0.0);
    EXPECT_EQ(estimated_current(bed(-0.01, 0.6)).fast_mps, 0.0);
    EXPECT_EQ(manning_mps({1.0, -0.01, 0.03}), 0.0);
}

TEST(River, TheEnvelopeIsNeverBelowTheProbableVelocity) {
    for (const double discharge : {0.1, 1.0, 10.0, 1000.0})
        for (const double area_km2 : {10.0, 1000.0, 50000.0})
            for (const std::optional<double> slope :
                 {std::optional<double>(), std::optional(0.0001), std::optional(0.01)}) {
                const auto velocity = jobson({discharge, discharge, area_km2 * 1e6, slope});
                ASSERT_TRUE(velocity);
                EXPECT_GT(velocity->maximum_mps, velocity->probable_mps);
                EXPECT_TRUE(std::isfinite(velocity->maximum_mps));
            }
    EXPECT_FALSE(jobson({0.0, 10.0, 1e9, std::nullopt}));
    EXPECT_FALSE(jobson({10.0, 10.0, 1e9, 0.0}));
}

TEST(River, ManningsSlopeUndoesManningsVelocity) {
    const Channel channel{.hydraulic_radius_m = 0.7, .slope = 0.003, .roughness = 0.045};
    EXPECT_NEAR(manning_slope(channel, manning_mps(channel)), channel.slope, 1e-12);
    EXPECT_EQ(manning_slope({0.0, 0.0, 0.03}, 1.0), 0.0);
}

TEST(River, AHintNamesNoClass) {
    for (int per_mille = -10; per_mille <= 200; ++per_mille) {
        const std::string hint(gradient_hint(per_mille / 1000.0));
        EXPECT_FALSE(hint.empty());
        for (const char* word : {"class", "grade", "easy", " I", " V", "safe"})
            EXPECT_EQ(hint.find(word), std::string::npos) << hint;
    }
}

TEST(River, GradientsConvertAsTheTradeDoes) {
    EXPECT_NEAR(ft_per_mile(0.001), 5.28, 1e-12);
    EXPECT_EQ(gradient_reach_m(0.0005), 5000.0);
    EXPECT_EQ(gradient_reach_m(0.005), 2000.0);
}

TEST(River, UnknownBedsAreNotGuessed) {
    EXPECT_FALSE(chow_roughness("Winding-Pools-Shoals"));
    EXPECT_TRUE(chow_roughness(default_bed));
}

// Half a foot to seven feet: 0.1524 to 2.1336 m.
TEST(River, JarrettsChannelsAreHalfAFootToSevenFeetDeep) {
    EXPECT_FALSE(jarrett_covers(0.01, 0.1520));
    EXPECT_TRUE(jarrett_covers(0.01, 0.1530));
    EXPECT_TRUE(jarrett_covers(0.01, 2.1330));
    EXPECT_FALSE(jarrett_covers(0.01, 2.1340));
}

} // namespace

} // namespace tumpline::planner
