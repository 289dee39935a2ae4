#include "planner/loads/kit_masses.h"

#include "tests/support/plain_trip.h"

#include <gtest/gtest.h>

namespace tumpline::planner {
namespace {

/// Ropes of 0.7 kg, three of them, that take up 40 % of their mass; a boat of 3.2 kg that takes
/// up a quarter of its own.
test::PlainTrip ropes_and_boat() {
    test::PlainTrip plain = test::plain_trip({test::lake(2000.0)});
    plain.trip.kit = {test::thing("mug", 0.1), test::thing("rope", 0.7)};
    plain.trip.kit[1].count = 3;
    plain.trip.kit[1].wet_fraction = 0.4;
    plain.trip.craft[0].mass_kg = 3.2;
    plain.trip.craft[0].wet_fraction = 0.25;
    return plain;
}

TEST(KitMasses, AreAllOfTheCountInWholeMilligrams) {
    KitItem peg = test::thing("peg", 0.0123456); // 12 345.6 mg each
    peg.count = 5;
    // 5 * 12 345.6 = 61 728, without rounding each first to 12 346.
    EXPECT_EQ(item_mg(peg), 61'728);
    EXPECT_DOUBLE_EQ(peg.all_kg(), 0.061728);
}

TEST(KitMasses, AreHeavierByTheWaterThatClingsToAllOfThem) {
    const test::PlainTrip plain = ropes_and_boat();
    const Assumed assumed = assume(plain.trip);
    // 3 * 0.7 = 2.1 kg; 40 % of it is 0.84 kg.
    EXPECT_EQ(item_water_mg(assumed, 1), 840'000);
    EXPECT_EQ(item_mg(plain.trip, assumed, 1, Wetness::dry), 2'100'000);
    EXPECT_EQ(item_mg(plain.trip, assumed, 1, Wetness::wet), 2'940'000);
    EXPECT_EQ(item_mg(plain.trip, assumed, 0, Wetness::wet), 100'000) << "a mug takes up nothing";
}

TEST(KitMasses, OfABoatAreThoseOfTheTripFileAndItsWater) {
    const Assumed assumed = assume(ropes_and_boat().trip);
    // A quarter of 3.2 kg is 0.8 kg.
    EXPECT_EQ(craft_water_mg(assumed.craft[0]), 800'000);
    EXPECT_EQ(craft_mg(assumed.craft[0], Wetness::dry), 3'200'000);
    EXPECT_EQ(craft_mg(assumed.craft[0], wetness(true)), 4'000'000);
}

} // namespace
} // namespace tumpline::planner
