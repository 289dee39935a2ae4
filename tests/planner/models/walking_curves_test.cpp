/// Curves of speed against slope at points that can be worked by hand from the printed formulas;
/// rows printed by others are in walking_rows_test.cpp.

#include "planner/models/walking_curves.h"

#include <gtest/gtest.h>

#include <cmath>

namespace tumpline::planner {
namespace {

TEST(WalkingCurves, OfToblerPeakAtASlightDescent) {
    EXPECT_NEAR(tobler_1993_mps(-0.05), 6.0 / 3.6, 1e-12);
    EXPECT_NEAR(tobler_1993_mps(0.0), 6.0 / 3.6 * std::exp(-0.175), 1e-12); // 5.04 km/h
    EXPECT_NEAR(tobler_1993_mps(0.15), tobler_1993_mps(-0.25), 1e-12);      // 0.2 to either side
}

TEST(WalkingCurves, OfTheSwissSignpostsWalkTheLevelAtFourPointTwo) {
    EXPECT_NEAR(1.0 / swiss_signpost_s_per_m(0.0) * 3.6, 4.2, 0.02);
    // Beyond 40 %: 17 x minutes a kilometre uphill, x ten times the slope; -9 x downhill.
    EXPECT_NEAR(swiss_signpost_s_per_m(0.5), 17.0 * 5.0 * 60.0 / 1000.0, 1e-9);
    EXPECT_NEAR(swiss_signpost_s_per_m(-0.5), 9.0 * 5.0 * 60.0 / 1000.0, 1e-9);
}

TEST(WalkingCurves, OfIrmischerAndClarkeTellThePathFromTheWood) {
    // At -5 % on the path and -2 % off it the bell is at its top.
    EXPECT_NEAR(irmischer_clarke_2018_mps(-0.05, Footing::on_path), 1.11, 1e-12);
    EXPECT_NEAR(irmischer_clarke_2018_mps(-0.02, Footing::off_path), 0.78, 1e-12);
}

TEST(WalkingCurves, OfNaismithAndLangmuirJumpOnlyAsWritten) {
    EXPECT_NEAR(naismith_langmuir_mps(0.0), 1.0 / 0.72, 1e-12); // 5 km/h
    EXPECT_NEAR(naismith_langmuir_mps(0.2), 1.0 / (0.72 + 1.2), 1e-12);
    const double eight_degrees = -std::tan(8.0 * std::acos(-1.0) / 180.0);
    EXPECT_NEAR(naismith_langmuir_mps(eight_degrees), 1.0 / (0.72 + 2.0 * eight_degrees), 1e-12);
    EXPECT_NEAR(naismith_langmuir_smoothed_mps(0.2), naismith_langmuir_mps(0.2), 1e-12);
    EXPECT_NEAR(
        naismith_langmuir_smoothed_mps(eight_degrees), naismith_langmuir_mps(eight_degrees), 1e-12);
}

} // namespace
} // namespace tumpline::planner
