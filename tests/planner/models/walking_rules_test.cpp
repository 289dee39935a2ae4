/// The rules for whole walks, each worked by its own words on one walk; rows printed by others are
/// in walking_rows_test.cpp.

#include "planner/models/walking_rules.h"

#include <gtest/gtest.h>

namespace tumpline::planner {
namespace {

constexpr double hour_s = 3600.0;
constexpr WalkTotals hills{.length_m = 12'000.0, .ascent_m = 900.0, .descent_m = 600.0};

TEST(WalkingRules, OfNaismith) {
    EXPECT_NEAR(
        naismith_metric_s(hills), (12.0 / 5.0 + 900.0 / 600.0) * hour_s, 1e-6); // 3 h 54 min
    // 3 miles of 1609.344 m and 2000 feet of 0.3048 m.
    EXPECT_NEAR(
        naismith_1892_s(hills), (12.0 / 1.609344 / 3.0 + 900.0 / 0.3048 / 2000.0) * hour_s, 1e-6);
}

TEST(WalkingRules, OfLangmuirTellModerateFromSteepDescent) {
    // Ten minutes off for 300 m of moderate descent, ten on for 300 m of steep.
    EXPECT_NEAR(langmuir_1984_s(hills, {.moderate_m = 600.0, .steep_m = 0.0}),
                naismith_metric_s(hills) - 20.0 * 60.0,
                1e-6);
    EXPECT_NEAR(langmuir_1984_s(hills, {.moderate_m = 0.0, .steep_m = 300.0}),
                naismith_metric_s(hills) + 10.0 * 60.0,
                1e-6);
    EXPECT_NEAR(langmuir_party_s(hills), (12.0 / 4.0 + 900.0 / 450.0) * hour_s, 1e-6); // 5 h
    EXPECT_EQ(langmuir_1984_s({100.0, 0.0, 600.0}, {.moderate_m = 600.0, .steep_m = 0.0}), 0.0);
}

TEST(WalkingRules, OfSwitzerlandAndGermany) {
    EXPECT_NEAR(swiss_rule_of_thumb_s(hills), (3.0 + 2.25 + 0.75) * hour_s, 1e-6); // 6 h
    EXPECT_NEAR(swiss_training_rule_s(hills), (3.0 + 2.25) * hour_s, 1e-6);
    EXPECT_NEAR(swiss_effort_km(hills), 12.0 + 9.0 + 4.0, 1e-9);
    // h = 3, v = 3 + 1.2 = 4.2: the greater and half of the lesser.
    EXPECT_NEAR(din_33466_s(hills), (4.2 + 1.5) * hour_s, 1e-6);
    EXPECT_NEAR(scarf_2007_m(hills, scarf_men), 12'000.0 + 8.0 * 900.0, 1e-9);
}

TEST(WalkingRules, OfTranterLeaveCellsBlank) {
    EXPECT_FALSE(tranter_s(20.0 * hour_s, 50.0 * 60.0));
    ASSERT_TRUE(tranter_s(4.0 * hour_s, 15.0 * 60.0));
    // A burden drops one row: never quicker.
    EXPECT_GT(*tranter_s(4.0 * hour_s,
                         15.0 * 60.0,
                         {.load_20_kg = true, .night_or_headwind = false, .bad_footing_levels = 0}),
              *tranter_s(4.0 * hour_s, 15.0 * 60.0));
}

} // namespace
} // namespace tumpline::planner
