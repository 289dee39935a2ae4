#include "planner/models/cold.h"

#include "tests/support/check_rows.h"

#include <gtest/gtest.h>

namespace tumpline::planner {
namespace {

using test::PublishedValue;

const test::Evaluators cold_rows{
    .numbers = {{"wind-chill-2001",
                 [](const auto& row) {
                     return wind_chill(
                         {.air_c = row.input("air_c"), .wind_mps = row.input("wind_mps")});
                 }},
                {"wind_chill_f",
                 [](const auto& row) {
                     constexpr double mps_per_mile_an_hour = 0.44704;
                     const double chill =
                         wind_chill({.air_c = (row.input("air_f") - 32.0) / 1.8,
                                     .wind_mps = mps_per_mile_an_hour * row.input("wind_mph")});
                     return 1.8 * chill + 32.0;
                 }},
                {"frostbite_from",
                 [](const auto& row) { return frostbite_in(row.input("chill")).value().from_min; }},
                {"frostbite_to",
                 [](const auto& row) { return frostbite_in(row.input("chill")).value().to_min; }}},
    .texts = {}};

class ColdRows : public testing::TestWithParam<PublishedValue> {};

TEST_P(ColdRows, Agree) {
    test::check_row(GetParam(), cold_rows);
}

INSTANTIATE_TEST_SUITE_P(Published,
                         ColdRows,
                         testing::ValuesIn(test::published("cold")),
                         test::row_name);

TEST(Cold, AFaintWindChillsNobody) {
    EXPECT_EQ(wind_chill({.air_c = -10.0, .wind_mps = 1.0}), -10.0); // 3.6 km/h
}

TEST(Cold, TheIndexIsNeverAboveTheAir) {
    EXPECT_LE(wind_chill({.air_c = 25.0, .wind_mps = 2.0}), 25.0);
}

TEST(Cold, FrostbiteIsALowRiskDownToMinus27) {
    EXPECT_FALSE(frostbite_in(-27.0));
    EXPECT_EQ(frostbite_in(-55.0)->to_min, 2.0);
}

TEST(Cold, WaterHasItsStages) {
    EXPECT_FALSE(cold_water_stage(25.0));
    EXPECT_EQ(cold_water_stage(24.9), "breathing begins to be affected");
    EXPECT_EQ(cold_water_stage(16.0), "dangerous: the breath is harder and harder to control");
    EXPECT_EQ(cold_water_stage(12.0),
              "very dangerous: cold shock at its strongest, no control of the breath");
    EXPECT_EQ(cold_water_stage(4.0), "very dangerous and painful: no control of the breath");
}

} // namespace
} // namespace tumpline::planner
