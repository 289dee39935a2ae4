#include "planner/models/wind.h"

#include "tests/support/check_rows.h"

#include <fmt/format.h>
#include <gtest/gtest.h>

#include <cstddef>

namespace tumpline::planner {

namespace {

using test::PublishedValue;

const test::Evaluators evaluators{
    .numbers = {{"beaufort",
                 [](const auto& row) {
                     return static_cast<double>(beaufort(row.input("wind_mps")));
                 }},
                {"beaufort_middle",
                 [](const auto& row) {
                     return beaufort_middle_mps(static_cast<int>(row.input("force")));
                 }},
                {"height_factor",
                 [](const auto& row) { return wind_height_factor(row.input("height_m")); }}},
    .texts = {{"beaufort_knots", [](const auto& row) {
                   const BeaufortForce& force =
                       beaufort_scale()[static_cast<std::size_t>(row.input("force"))];
                   return fmt::format("[{},{}]", force.from_kn, force.to_kn.value());
               }}}};

class WindRows : public testing::TestWithParam<PublishedValue> {};

TEST_P(WindRows, Agree) {
    test::check_row(GetParam(), evaluators);
}

INSTANTIATE_TEST_SUITE_P(Published,
                         WindRows,
                         testing::ValuesIn(test::published("wind")),
                         test::row_name);

TEST(WindScale, ForceNeverFallsAsTheWindRises) {
    int before = 0;
    for (int centimetres = -100; centimetres <= 10000; ++centimetres) {
        const int force = beaufort(centimetres / 100.0);
        EXPECT_GE(force, before);
        EXPECT_LE(force, before + 1);
        before = force;
    }
    EXPECT_EQ(before, 12);
}

TEST(WindScale, KilometresPerHourMeetTheScaleAtItsPrintedLimits) {
    EXPECT_EQ(beaufort(19.7 / 3.6), 4); // 5.47 m/s reads as 5.5
    EXPECT_EQ(beaufort(19.5 / 3.6), 3); // 5.42 m/s reads as 5.4
    EXPECT_EQ(beaufort(28.8 / 3.6), 5);
}

TEST(WindScale, TheScaleHasNoGapsAndOneNameForEachForce) {
    for (std::size_t i = 1; i < beaufort_scale().size(); ++i) {
        const BeaufortForce& lighter = beaufort_scale()[i - 1];
        EXPECT_NEAR(beaufort_scale()[i].from_mps, lighter.to_mps.value() + 0.1, 1e-9);
        EXPECT_EQ(beaufort_scale()[i].force, static_cast<int>(i));
        EXPECT_NE(beaufort_name(static_cast<int>(i)), lighter.name);
    }
    EXPECT_EQ(beaufort_name(-3), "calm");
    EXPECT_EQ(beaufort_name(40), "hurricane force");
}

TEST(WindScale, TheMiddleOfAForceLiesInIt) {
    for (int force = 1; force <= 11; ++force)
        EXPECT_EQ(beaufort(beaufort_middle_mps(force)), force);
}

TEST(WindScale, WindIsLighterLowerDown) {
    EXPECT_EQ(wind_height_factor(0.0), 0.0);
    EXPECT_EQ(wind_height_factor(-1.0), 0.0);
    EXPECT_NEAR(wind_height_factor(10.0), 1.0, 1e-12);
    EXPECT_LT(wind_height_factor(0.7), wind_height_factor(1.5));
}

TEST(WindScale, ACrossingIsJudgedAgainstItsCeiling) {
    EXPECT_EQ(crossing_wind(5.0, 7.9), CrossingWind::below);
    EXPECT_EQ(crossing_wind(7.0, 7.9), CrossingWind::nearly);
    EXPECT_EQ(crossing_wind(7.9, 7.9), CrossingWind::nearly);
    EXPECT_EQ(crossing_wind(8.0, 7.9), CrossingWind::above);
}

} // namespace

} // namespace tumpline::planner
