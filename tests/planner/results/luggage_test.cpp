#include "planner/results/luggage.h"

#include "planner/make_plan.h"
#include "tests/support/plain_trip.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace tumpline::planner {
namespace {

TEST(Luggage, IsAPackEachThingsInHandAndHardBoats) {
    test::PlainTrip plain = test::plain_trip({test::walk(2'000.0), test::lake(2'000.0)});
    test::add_member(plain, "Bo", 30.0);
    plain.trip.craft[0].crew = {"Ada", "Bo"};
    plain.trip.craft[0].kind = CraftKind::tandem_canoe;
    plain.trip.craft[0].rolls_up = false;
    plain.trip.craft[0].mass_kg = 18.0;
    KitItem pole = test::thing("pole", 0.5);
    pole.ashore = ItemUse::used;
    pole.count = 2;
    KitItem boots = test::thing("boots", 1.2);
    boots.ashore = ItemUse::worn;
    plain.trip.kit = {test::party_thing("tent", 2.0), pole, boots};
    const Plan plan = make_plan(plain.trip, plain.route);
    ASSERT_EQ(plan.luggage.size(), 3U);
    const Luggage& all = plan.luggage.back();
    EXPECT_TRUE(all.member.empty());
    EXPECT_NEAR(all.worn_kg, 1.2, 1e-9);
    double food_and_fuel_kg = 0.0;
    for (const StartLoad& load : plan.start_loads)
        food_and_fuel_kg += load.food_kg + load.fuel_kg;
    // 18 kg of boat, 2 kg of tent, twice 0.5 kg of poles; neither water nor boots.
    EXPECT_NEAR(all.mass_kg, 21.0 + food_and_fuel_kg, 1e-6);
    EXPECT_NEAR(all.heaviest_kg, 18.0, 1e-9);
    EXPECT_EQ(std::count(all.pieces.begin(), all.pieces.end(), plain.trip.craft[0].name), 1);
    EXPECT_EQ(plan.luggage[0].member, "Ada");
    EXPECT_EQ(plan.luggage[0].pieces.size() + plan.luggage[1].pieces.size(), all.pieces.size());
    EXPECT_NEAR(plan.luggage[0].mass_kg + plan.luggage[1].mass_kg, all.mass_kg, 1e-9);
}

} // namespace
} // namespace tumpline::planner
