/// The table of units, each unit against its definition.

#include "planner/quantities/quantity_units.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <string_view>

namespace tumpline::planner {
namespace {

double si_of(Dimension dimension, std::string_view name) {
    for (const Unit& unit : measure(dimension).units)
        if (std::find(unit.names.begin(), unit.names.end(), name) != unit.names.end())
            return unit.si;
    ADD_FAILURE() << "no unit " << name;
    return 0.0;
}

// The international yard and pound of 1959: 0.9144 m and 0.45359237 kg, exactly.
TEST(QuantityUnits, OfLengthAndMassAreTheInternationalOnes) {
    EXPECT_EQ(si_of(Dimension::length, "m"), 1.0);
    EXPECT_EQ(si_of(Dimension::length, "km"), 1000.0);
    EXPECT_NEAR(si_of(Dimension::length, "ft"), 0.9144 / 3.0, 1e-15);
    EXPECT_NEAR(si_of(Dimension::length, "mi"), 1760.0 * 0.9144, 1e-9);
    EXPECT_NEAR(si_of(Dimension::length, "rods"), 5.5 * 0.9144, 1e-12); // 16 1/2 feet
    EXPECT_NEAR(si_of(Dimension::mass, "lb"), 0.45359237, 1e-15);
    EXPECT_NEAR(si_of(Dimension::mass, "oz"), 0.45359237 / 16.0, 1e-15);
    EXPECT_NEAR(si_of(Dimension::mass, "g"), 1e-3, 1e-18);
    EXPECT_EQ(si_of(Dimension::mass, "t"), 1000.0);
    EXPECT_NEAR(si_of(Dimension::mass, "mg"), 1e-6, 1e-21);
}

TEST(QuantityUnits, OfVolumeAreTenthsOfALitreAndOfEachOther) {
    EXPECT_EQ(si_of(Dimension::volume, "L"), 1.0);
    EXPECT_NEAR(si_of(Dimension::volume, "dl"), 0.1, 1e-16);
    EXPECT_NEAR(si_of(Dimension::volume, "cl"), 0.01, 1e-17);
    EXPECT_NEAR(si_of(Dimension::volume, "ml"), 0.001, 1e-18);
    EXPECT_EQ(si_of(Dimension::volume, "m3"), 1000.0);
}

TEST(QuantityUnits, OfSpeedFollowFromLengthAndTime) {
    EXPECT_NEAR(si_of(Dimension::speed, "km/h"), 1.0 / 3.6, 1e-12);
    EXPECT_NEAR(si_of(Dimension::speed, "mph"), 1609.344 / 3600.0, 1e-12);
    EXPECT_NEAR(si_of(Dimension::speed, "kn"), 1852.0 / 3600.0, 1e-12); // the nautical mile of 1929
}

TEST(QuantityUnits, EverySpellingMeansOneUnit) {
    for (const Dimension dimension : {Dimension::length, Dimension::mass, Dimension::speed}) {
        std::vector<std::string_view> all;
        for (const Unit& unit : measure(dimension).units)
            all.insert(all.end(), unit.names.begin(), unit.names.end());
        std::sort(all.begin(), all.end());
        EXPECT_EQ(std::adjacent_find(all.begin(), all.end()), all.end());
        EXPECT_FALSE(measure(dimension).example.empty());
    }
}

} // namespace
} // namespace tumpline::planner
