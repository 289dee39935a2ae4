#include "planner/results/packed_items.h"

#include "planner/make_plan.h"
#include "tests/support/plain_trip.h"
#include "tests/support/random_trip.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cstddef>

namespace tumpline::planner {
namespace {

constexpr double rounding_kg = 1e-6;

/// Of the rows that one member bears and that are in this place when setting off.
double rows_kg(const Plan& plan, std::size_t member, Account at_start, Part part) {
    double sum_kg = 0.0;
    for (const PackedItem& item : plan.items)
        if (item.bearer == member && item.at_start == at_start && item.part == part)
            sum_kg += item.mass_kg;
    return sum_kg;
}

/// Ada walks 5 km and paddles 2 km. Two of her things have one name.
test::PlainTrip two_of_one_name() {
    test::PlainTrip plain = test::plain_trip({test::walk(5000.0), test::lake(2000.0)});
    plain.trip.weather.water_c = 9.0;
    plain.trip.kit = {test::thing("dry suit", 1.4),
                      test::thing("dry suit", 1.6),
                      test::thing("boots", 1.1),
                      test::thing("paddle", 0.9),
                      test::thing("tent", 2.0),
                      test::thing("gloves", 0.1)};
    Condition cold, rapids;
    cold.water_below_c = 10.0;
    rapids.river_class = 4;
    plain.trip.kit[0].when = {cold};
    plain.trip.kit[1].when = {rapids};
    plain.trip.kit[2].ashore = ItemUse::worn;
    plain.trip.kit[3].ashore = ItemUse::used;
    plain.trip.kit[3].afloat = ItemUse::used;
    plain.trip.kit[4].owner.clear();
    plain.trip.kit[5].count = 3;
    return plain;
}

TEST(PackedItems, OfTwoThingsOfOneNameOnlyTheOneStaysThatIsNotNeeded) {
    const test::PlainTrip plain = two_of_one_name();
    const Plan plan = make_plan(plain.trip, plain.route);
    ASSERT_EQ(plan.items.size(), 7U); // six things and a boat
    EXPECT_TRUE(plan.items[0].comes);
    EXPECT_EQ(plan.items[0].why, "water at 9 C, below 10 C");
    EXPECT_EQ(plan.items[0].bearer, std::size_t{0});
    EXPECT_FALSE(plan.items[1].comes);
    EXPECT_EQ(plan.items[1].why, "no water of class IV or harder is named");
    EXPECT_FALSE(plan.items[1].bearer);
    EXPECT_FALSE(plan.items[1].at_start);
    EXPECT_DOUBLE_EQ(plan.items[1].mass_kg, 1.6);
}

TEST(PackedItems, SayWhereEachThingIs) {
    const test::PlainTrip plain = two_of_one_name();
    const Plan plan = make_plan(plain.trip, plain.route);
    const PackedItem& suit = plan.items[0];
    EXPECT_EQ(suit.at_start, Account::pack);
    EXPECT_TRUE(suit.stowage == Stowage::left || suit.stowage == Stowage::right);
    EXPECT_EQ(suit.in_craft, std::size_t{0});
    EXPECT_EQ(plan.items[2].at_start, Account::worn);
    EXPECT_NE(plan.items[2].stowage, Stowage::none); // boots are stowed afloat
    EXPECT_EQ(plan.items[3].at_start, Account::in_use);
    EXPECT_EQ(plan.items[3].stowage, Stowage::none);
    EXPECT_EQ(plan.items[4].owner, "");
    EXPECT_EQ(plan.items[5].count, 3);
    EXPECT_DOUBLE_EQ(plan.items[5].mass_kg, 0.3);
    EXPECT_EQ(plan.items[6].part, Part::craft);
    EXPECT_EQ(plan.items[6].owner, "Ada"); // who sits in it alone
    EXPECT_EQ(plan.items[6].at_start, Account::pack);
    // 5 km on foot, level: 1.4 kg over 5 km are 7 kg km.
    EXPECT_NEAR(suit.carry_kg_km, 7.0, 0.01);
    EXPECT_NEAR(suit.carry_kg_m_up, 0.0, 0.01);
}

TEST(PackedItems, CostTheWayAndTheClimbThatThePlanPrints) {
    test::PlainTrip plain = test::plain_trip({test::walk(4000.0, 0.1), test::lake(1000.0)});
    plain.trip.kit = {test::thing("pot", 0.5)};
    const Plan plan = make_plan(plain.trip, plain.route);
    // 0.5 kg over 4 km and up a tenth of it; the lake is not walked.
    EXPECT_NEAR(plan.items[0].carry_kg_km, 2.0, 0.01);
    EXPECT_NEAR(plan.items[0].carry_kg_m_up, 200.0, 2.0);
    EXPECT_NEAR(plan.items[0].carry_kg_m_up, 0.5 * plan.totals.ascent_m, 1e-9);
}

TEST(StartLoads, AreTheRowsAndWhatIsEatenBurntAndDrunk) {
    const test::PlainTrip plain = two_of_one_name();
    const Plan plan = make_plan(plain.trip, plain.route);
    ASSERT_EQ(plan.start_loads.size(), 1U);
    const StartLoad& load = plan.start_loads[0];
    EXPECT_EQ(load.member, "Ada");
    // Suit 1.4, tent 2.0, gloves 3 x 0.1 and the boat of 3.0 kg; boots and paddle are not in the
    // pack.
    EXPECT_NEAR(load.pack_kg - load.food_kg - load.fuel_kg - load.water_kg - load.waste_kg,
                6.7,
                rounding_kg);
    EXPECT_NEAR(load.worn_kg, 1.1, rounding_kg);
    EXPECT_NEAR(load.in_hand_kg, 0.9, rounding_kg);
    EXPECT_GT(load.food_kg, load.fuel_kg);
    EXPECT_GT(load.water_kg, 0.0);
    EXPECT_EQ(load.limit_kg, plan.legs[0].loads[0].limit_kg);
}

TEST(StartLoads, AfloatFromTheStartHaveNoLimitAndTheBoatIsInNoPack) {
    test::PlainTrip plain = test::plain_trip({test::lake(2000.0), test::walk(5000.0)});
    plain.trip.kit = {test::thing("boots", 1.1), test::thing("paddle", 0.9)};
    plain.trip.kit[0].ashore = ItemUse::worn;
    plain.trip.kit[1].afloat = ItemUse::used;
    const Plan plan = make_plan(plain.trip, plain.route);
    EXPECT_FALSE(plan.start_loads[0].limit_kg);
    EXPECT_EQ(plan.items[0].at_start, Account::pack); // as afloat
    EXPECT_EQ(plan.items[1].at_start, Account::in_use);
    EXPECT_EQ(plan.items[2].at_start, Account::in_use);
    EXPECT_NEAR(plan.start_loads[0].in_hand_kg, 0.9, rounding_kg);
    EXPECT_NEAR(plan.start_loads[0].worn_kg, 0.0, rounding_kg);
}

class RandomPacking : public testing::TestWithParam<int> {};

INSTANTIATE_TEST_SUITE_P(Seeds, RandomPacking, testing::Range(1, 41));

TEST_P(RandomPacking, RowsSumToWhatEveryoneSetsOffWith) {
    const test::RandomTrip random = test::random_trip(static_cast<std::uint64_t>(GetParam()));
    const Plan plan = make_plan(random.trip, random.route);
    ASSERT_EQ(plan.items.size(), random.trip.kit.size() + random.trip.craft.size());
    ASSERT_EQ(plan.start_loads.size(), random.trip.party.size());
    for (std::size_t m = 0; m < plan.start_loads.size(); ++m) {
        const StartLoad& load = plan.start_loads[m];
        const double pack_kg = rows_kg(plan, m, Account::pack, Part::kit) +
                               rows_kg(plan, m, Account::pack, Part::craft) + load.food_kg +
                               load.fuel_kg + load.water_kg + load.waste_kg;
        EXPECT_NEAR(pack_kg, load.pack_kg, rounding_kg) << load.member;
        EXPECT_NEAR(rows_kg(plan, m, Account::worn, Part::kit), load.worn_kg, rounding_kg);
        EXPECT_NEAR(rows_kg(plan, m, Account::in_use, Part::kit), load.in_hand_kg, rounding_kg);
        const PlanLeg& first = plan.legs.front();
        if (first.travel == Travel::portage) // there it is cut into carries
            continue;
        EXPECT_NEAR(load.pack_kg, first.loads[m].pack_start_kg, rounding_kg);
        EXPECT_NEAR(load.worn_kg + load.in_hand_kg, first.loads[m].worn_kg, rounding_kg);
    }
}

TEST_P(RandomPacking, EveryThingThatComesHasABearerAndEveryOtherAReason) {
    const test::RandomTrip random = test::random_trip(static_cast<std::uint64_t>(GetParam()));
    const Plan plan = make_plan(random.trip, random.route);
    for (const PackedItem& item : plan.items) {
        EXPECT_EQ(item.comes, item.bearer.has_value()) << item.item;
        EXPECT_EQ(item.comes, item.at_start.has_value()) << item.item;
        EXPECT_TRUE(item.comes || !item.why.empty()) << item.item;
        if (item.part == Part::kit) {
            EXPECT_EQ(item.item, random.trip.kit[item.index].name);
        }
    }
}

} // namespace
} // namespace tumpline::planner
