#include "planner/defaults/defaults.h"
#include "planner/models/stove_fuel.h"
#include "tests/support/plain_trip.h"

#include <gtest/gtest.h>

#include <algorithm>

/// Fuel for a litre, as a trip file has it reckoned.
namespace tumpline::planner {
namespace {

Trip trip_with(const Fuel& fuel) {
    test::PlainTrip plain = test::plain_trip({test::walk(1000.0)});
    plain.trip.fuel = fuel;
    return plain.trip;
}

double grams(const Fuel& fuel) {
    return 1000.0 * assume(trip_with(fuel)).fuel.kg_per_litre;
}

bool assumes(const Fuel& fuel, const std::string& key) {
    const Assumed assumed = assume(trip_with(fuel));
    return std::any_of(assumed.defaults.begin(),
                       assumed.defaults.end(),
                       [&](const DefaultUsed& used) { return used.key == key; });
}

// 376.74 kJ for a litre from 10 to 100 C, over efficiency and lower heating value, by hand.
TEST(AssumedFuel, FollowsFromTheStove) {
    EXPECT_NEAR(grams({}), 376.74 / (0.50 * 45.564), 1e-3);
    Fuel spirit;
    spirit.stove = "ethanol";
    EXPECT_NEAR(grams(spirit), 376.74 / (0.45 * 26.81), 1e-3);
    EXPECT_TRUE(assumes({}, "/fuel/stove"));
    EXPECT_TRUE(assumes({}, "/fuel/start"));
    EXPECT_TRUE(assumes({}, "/fuel/per_litre"));
    EXPECT_FALSE(assumes(spirit, "/fuel/stove"));
    EXPECT_TRUE(assume(trip_with(spirit)).fuel.by_model);
}

TEST(AssumedFuel, OfOnesOwnCountsAsItStands) {
    Fuel own;
    own.kg_per_litre = 0.012;
    own.stove = "ethanol";
    EXPECT_DOUBLE_EQ(grams(own), 12.0);
    EXPECT_FALSE(assumes(own, "/fuel/per_litre"));
    EXPECT_FALSE(assumes(own, "/fuel/stove"));
    EXPECT_FALSE(assume(trip_with(own)).fuel.by_model);
}

TEST(AssumedFuel, ColderWaterTakesMore) {
    Fuel cold;
    cold.start_c = 1.0;
    EXPECT_NEAR(grams(cold) / grams({}), 99.0 / 90.0, 1e-9);
}

TEST(AssumedFuel, WaterOnlyBroughtToTheBoilHighUpTakesLess) {
    Fuel high;
    high.altitude_m = 3000.0;
    EXPECT_NEAR(grams(high) / grams({}), (boiling_point_c(3000.0) - 10.0) / 90.0, 1e-9);
    EXPECT_LT(grams(high), 0.9 * grams({}));
}

// 2.09 x 5 + 334 + 4.186 x 100 = 763.05 kJ, by hand.
TEST(AssumedFuel, SnowIsMeltedFirst) {
    Fuel snow;
    snow.melt_snow = true;
    EXPECT_NEAR(grams(snow), 763.05 / (0.50 * 45.564), 1e-3);
    snow.start_c = -20.0;
    EXPECT_NEAR(grams(snow), (763.05 + 2.09 * 15.0) / (0.50 * 45.564), 1e-3);
    snow.start_c = 4.0; // snow is no warmer than 0
    EXPECT_NEAR(grams(snow), (763.05 - 2.09 * 5.0) / (0.50 * 45.564), 1e-3);
}

TEST(AssumedFuel, SnowTakesMoreOfOnesOwnFigureToo) {
    Fuel snow;
    snow.melt_snow = true;
    snow.kg_per_litre = 0.012;
    EXPECT_NEAR(grams(snow), 12.0 * 763.05 / 376.74, 1e-3);
}

} // namespace
} // namespace tumpline::planner
