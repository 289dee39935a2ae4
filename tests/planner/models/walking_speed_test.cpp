#include "planner/models/walking_speed.h"

#include "planner/models/walking_curves.h"
#include "planner/models/walking_rules.h"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>

namespace tumpline::planner {
namespace {

class WalkingSpeed : public testing::TestWithParam<WalkingModel> {
  protected:
    [[nodiscard]] double at(double slope) const { return walking_speed_mps(GetParam(), slope); }

    /// The slope, in thousandths, at which the model is fastest.
    [[nodiscard]] int fastest_thousandth() const {
        int best = -400;
        for (int thousandth = -400; thousandth <= 400; ++thousandth)
            if (at(thousandth / 1000.0) > at(best / 1000.0))
                best = thousandth;
        return best;
    }
};

TEST_P(WalkingSpeed, IsFiniteAndAboveZeroOnAnySlope) {
    for (const double size : {0.0, 1e-300, 1e-9, 0.05, 0.4, 1.0, 2.0, 10.0, 1e6, 1e300}) {
        for (const double slope : {size, -size}) {
            EXPECT_TRUE(std::isfinite(at(slope))) << slope;
            EXPECT_GT(at(slope), 0.0) << slope;
            EXPECT_TRUE(std::isfinite(1.0 / at(slope))) << slope;
        }
    }
    EXPECT_GT(at(std::numeric_limits<double>::max()), 0.0);
    EXPECT_GT(at(std::numeric_limits<double>::lowest()), 0.0);
}

TEST_P(WalkingSpeed, FallsOnBothSidesOfItsFastestSlope) {
    // the Swiss standard's own step at -40 % rises by 1.5 %, and only there
    const double allowed = GetParam() == WalkingModel::swiss_signpost ? 1.016 : 1.0 + 1e-12;
    const int fastest = fastest_thousandth();
    for (int thousandth = fastest + 1; thousandth < 4000; ++thousandth)
        EXPECT_LE(at(thousandth / 1000.0), at((thousandth - 1) / 1000.0) * (1.0 + 1e-12))
            << thousandth;
    for (int thousandth = fastest - 1; thousandth > -4000; --thousandth)
        EXPECT_LE(at(thousandth / 1000.0),
                  at((thousandth + 1) / 1000.0) * (thousandth == -400 ? allowed : 1.0 + 1e-12))
            << thousandth;
}

TEST_P(WalkingSpeed, ChangesByNoJump) {
    // the Swiss standard's two straight lines meet its polynomial to within 1.6 %
    for (int step = -40000; step < 40000; ++step) {
        const double here = at(step / 10000.0);
        const double next = at((step + 1) / 10000.0);
        const bool edge = GetParam() == WalkingModel::swiss_signpost &&
                          (step == -4000 || step == -4001 || step == 3999 || step == 4000);
        EXPECT_NEAR(next / here, 1.0, edge ? 0.017 : 0.01) << step;
    }
}

TEST_P(WalkingSpeed, HoldsItsClimbingRateBeyondItsRange) {
    if (GetParam() == WalkingModel::constant)
        return; // knows no slope
    for (const double slope : {1.0, 2.0, 5.0, -1.0, -2.0, -5.0}) {
        ASSERT_FALSE(walking_speed_covers(GetParam(), slope));
        EXPECT_NEAR(at(slope) * slope, at(2.0 * slope) * 2.0 * slope, 1e-12) << slope;
    }
}

TEST_P(WalkingSpeed, KnowsItsName) {
    const std::string_view name = walking_model_name(GetParam());
    EXPECT_EQ(walking_model(name), GetParam());
    EXPECT_TRUE(walking_speed_covers(GetParam(), 0.0));
}

INSTANTIATE_TEST_SUITE_P(EveryModel,
                         WalkingSpeed,
                         testing::ValuesIn(walking_models().begin(), walking_models().end()),
                         [](const testing::TestParamInfo<WalkingModel>& model) {
                             std::string name(walking_model_name(model.param));
                             for (char& letter : name)
                                 letter = letter == '-' ? '_' : letter;
                             return name;
                         });

TEST(WalkingModel, TheBandIsTheSpreadOfPeopleOnTheLevel) {
    const double median_mps = walking_speed_mps(WalkingModel::sullivan_2020_moderate, 0.0);
    const TimeBand band = walking_time_band();
    // 1.3813 over 1.6801 is 0.8222, over 0.9605 it is 1.4381.
    EXPECT_NEAR(
        band.low, median_mps / walking_speed_mps(WalkingModel::sullivan_2020_high, 0.0), 0.005);
    EXPECT_NEAR(band.high, median_mps / walking_speed_mps(WalkingModel::sullivan_2020, 0.0), 0.005);
}

TEST(WalkingModel, AKnownPaceHasTheBandOfItsOwnSpread) {
    // 0.12 and 0.05 by the rule of Pythagoras are 0.13; e^0.13 is 1.1388.
    EXPECT_NEAR(learned_time_band(0.12, 0.05).high, 1.1388, 5e-5);
    EXPECT_NEAR(learned_time_band(0.12, 0.05).low, 1.0 / 1.1388, 5e-5);
}

TEST(WalkingModel, UnknownNameIsNone) {
    EXPECT_FALSE(walking_model("").has_value());
    EXPECT_FALSE(walking_model("Tobler").has_value());
}

TEST(WalkingModel, OnlyTheCrewsAreMeasuredUnderPacks) {
    for (const WalkingModel model : walking_models()) {
        EXPECT_EQ(walking_model_includes_load(model),
                  walking_model_name(model).starts_with("sullivan-2020"));
        EXPECT_EQ(walking_model_load_ratio(model) > 0.0, walking_model_includes_load(model));
        EXPECT_EQ(walking_load_reach_kg(model).has_value(), walking_model_includes_load(model));
    }
}

TEST(WalkingModel, EachIsInTheCatalogueOnceInItsPlace) {
    ASSERT_EQ(walking_speed_entries().size(), walking_models().size());
    for (std::size_t i = 0; i < walking_models().size(); ++i)
        EXPECT_EQ(walking_speed_entries()[i].name, walking_model_name(walking_models()[i]));
}

TEST(WalkingModel, OnlyIrmischerAndClarkeTellOtherGround) {
    for (const WalkingModel model : walking_models()) {
        bool differs = false;
        for (int percent = -60; percent <= 60; ++percent)
            differs = differs || walking_speed_mps(model, percent / 100.0, Footing::off_path) !=
                                     walking_speed_mps(model, percent / 100.0, Footing::on_path);
        EXPECT_EQ(differs, walking_model_knows_footing(model)) << walking_model_name(model);
    }
}

TEST(Langmuir, SmoothedLeavesTheRuleOutsideItsBands) {
    for (const double degrees : {10.0, 0.0, -4.4, -5.6, -8.0, -9.9, -14.1, -30.0}) {
        const double slope = std::tan(degrees * std::acos(-1.0) / 180.0);
        EXPECT_DOUBLE_EQ(naismith_langmuir_smoothed_mps(slope), naismith_langmuir_mps(slope))
            << degrees;
    }
}

TEST(Langmuir, SmoothedTakesAwayTheJumpOfFourfold) {
    const double gentle = std::tan(-12.0 * std::acos(-1.0) / 180.0);
    const double steep = std::tan(-12.1 * std::acos(-1.0) / 180.0);
    EXPECT_GT(naismith_langmuir_mps(gentle) / naismith_langmuir_mps(steep), 3.8);
    EXPECT_LT(naismith_langmuir_smoothed_mps(gentle) / naismith_langmuir_smoothed_mps(steep), 1.03);
}

// The route on which docs/models/walking_speed.md compares the models: 10 km, half of it up at 10 %
// and half down. Hours from the published formulas, reckoned apart from this code; drift guards.
TEST(StandardRoute, HasTheHoursOfTheTable) {
    const auto hours = [](WalkingModel model) {
        return (5000.0 / walking_speed_mps(model, 0.1) + 5000.0 / walking_speed_mps(model, -0.1)) /
               3600.0;
    };
    EXPECT_NEAR(hours(WalkingModel::swiss_signpost), 2.85, 0.005);
    EXPECT_NEAR(hours(WalkingModel::tobler), 2.40, 0.005);
    EXPECT_NEAR(hours(WalkingModel::naismith_langmuir), 2.56, 0.005);
    EXPECT_NEAR(hours(WalkingModel::irmischer_clarke), 2.67, 0.005);
    EXPECT_NEAR(hours(WalkingModel::campbell_2019), 2.70, 0.005);
    EXPECT_NEAR(hours(WalkingModel::sullivan_2020), 3.05, 0.005);
    constexpr WalkTotals route{.length_m = 10000.0, .ascent_m = 500.0, .descent_m = 500.0};
    EXPECT_NEAR(naismith_metric_s(route) / 3600.0, 2.83, 0.005);
    EXPECT_NEAR(langmuir_party_s(route) / 3600.0, 3.61, 0.005);
    EXPECT_NEAR(swiss_rule_of_thumb_s(route) / 3600.0, 4.38, 0.005);
    EXPECT_NEAR(din_33466_s(route) / 3600.0, 3.92, 0.005);
}

TEST(Din33466, OnOneSlopeStepsAndLegAgree) {
    for (const double slope : {0.3, 0.05, 0.0, -0.05, -0.3}) {
        const double leg_s = din_33466_s({.length_m = 1000.0,
                                          .ascent_m = std::max(0.0, 1000.0 * slope),
                                          .descent_m = std::max(0.0, -1000.0 * slope)});
        EXPECT_NEAR(1000.0 / walking_speed_mps(WalkingModel::din_33466, slope), leg_s, 1e-9);
    }
}

TEST(Tranter, BlankCellsAndBurdensBeyondTheTableAreNotAttempted) {
    constexpr double hour = 3600.0;
    constexpr double minute = 60.0;
    EXPECT_FALSE(tranter_s(6.0 * hour, 50.0 * minute).has_value());
    EXPECT_FALSE(tranter_s(25.0 * hour, 15.0 * minute).has_value());
    EXPECT_FALSE(tranter_s(2.0 * hour, 51.0 * minute).has_value());
    const TranterBurden laden{
        .load_20_kg = true, .night_or_headwind = false, .bad_footing_levels = 0};
    EXPECT_EQ(tranter_s(6.0 * hour, 20.0 * minute, laden), tranter_s(6.0 * hour, 25.0 * minute));
    const TranterBurden dark{
        .load_20_kg = true, .night_or_headwind = true, .bad_footing_levels = 4};
    EXPECT_FALSE(tranter_s(2.0 * hour, 20.0 * minute, dark).has_value());
    EXPECT_EQ(tranter_s(0.0, 30.0 * minute), 0.0);
}

TEST(Tranter, SlowerOrLongerIsNeverQuicker) {
    for (int half_hours = 1; half_hours <= 48; ++half_hours) {
        const double naismith_s = 1800.0 * half_hours;
        for (const double fitness_min : {15.0, 20.0, 25.0, 30.0, 40.0}) {
            const auto here = tranter_s(naismith_s, 60.0 * fitness_min);
            const auto slower = tranter_s(naismith_s, 60.0 * fitness_min + 60.0);
            const auto shorter = tranter_s(naismith_s - 1800.0, 60.0 * fitness_min);
            if (here && slower) {
                EXPECT_GT(*slower, *here) << naismith_s << " at " << fitness_min;
            }
            if (here && shorter) {
                EXPECT_GT(*here, *shorter) << naismith_s << " at " << fitness_min;
            }
        }
    }
}

} // namespace
} // namespace tumpline::planner
