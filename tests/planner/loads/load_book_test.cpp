#include "planner/loads/load_book.h"

#include "planner/make_plan.h"
#include "tests/support/plain_trip.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <string>

namespace tumpline::planner {
namespace {

using test::party_thing;
using test::thing;

/// Ada walks two legs of 6 km; a spring on the first one, 4 km before its end, and none else.
test::PlainTrip with_a_spring_on_the_way() {
    test::PlainTrip plain = test::plain_trip({test::walk(6000.0), test::walk(6000.0)});
    plain.trip.days.hours = 24.0;
    plain.trip.water.walking_lps = 1.0 / 3600.0;
    plain.trip.water.reserve_l = 0.0;
    plain.trip.water.capacity_l = 20.0;
    test::add_place(plain, PlaceKind::water, "Spring", 2000.0);
    return plain;
}

TEST(LoadBook, TellsALegsAndADaysWorstPackWhereWaterIsFilledMidway) {
    const Plan plan = [] {
        const test::PlainTrip plain = with_a_spring_on_the_way();
        return make_plan(plain.trip, plain.route);
    }();
    const MemberLoad& load = plan.legs.at(0).loads.at(0);
    const std::vector<Entry>& entries = plan.ledger.entries;
    const auto filled = std::find_if(entries.begin(), entries.end(), [](const Entry& entry) {
        return entry.why == "filled at Spring";
    });
    ASSERT_NE(filled, entries.end());
    // At the set-off the water of 2 km, at the spring that of 10: the rest is the same but for
    // what was eaten on 2 km.
    EXPECT_GT(load.pack_max_kg, load.pack_start_kg + 0.5);
    const double at_spring_kg =
        static_cast<double>(plan.ledger.balance_mg(0, Account::pack, filled->step + 1)) / 1e6;
    EXPECT_NEAR(load.pack_max_kg, at_spring_kg, 1e-9);
    EXPECT_NEAR(load.parts.water_kg, static_cast<double>(filled->mass_mg) / 1e6, 1e-5);
    EXPECT_NEAR(plan.days.at(0).members.at(0).heaviest_kg, at_spring_kg, 1e-9);
    EXPECT_EQ(plan.days.at(0).members.at(0).heaviest_leg, PlanLegNumber{1});
}

/// A lake of 4 km whose water nobody drinks, with a spring at 1 km, then a dry walk of 10 km.
test::PlainTrip afloat_past_a_spring() {
    test::PlainTrip plain = test::plain_trip({test::lake(4000.0), test::walk(10'000.0)});
    plain.route.legs[0].spec.drinkable = false;
    plain.trip.route.legs[0].drinkable = false;
    plain.trip.days.hours = 24.0;
    plain.trip.water.walking_lps = 1.0 / 3600.0;
    plain.trip.water.reserve_l = 0.0;
    plain.trip.water.capacity_l = 20.0;
    plain.trip.craft[0].bags_l = {60.0, 60.0};
    test::add_place(plain, PlaceKind::water, "Spring", 1000.0);
    return plain;
}

double in_bags_kg(const CraftLoad& craft, const std::string& what) {
    double sum_kg = 0.0;
    for (const auto* bag : {&craft.left, &craft.right})
        for (const Stowed& one : *bag)
            sum_kg += one.what == what ? one.mass_kg : 0.0;
    return sum_kg;
}

TEST(LoadBook, JudgesABoatWhereItIsLadenMost) {
    test::PlainTrip plain = afloat_past_a_spring();
    const Plan plan = make_plan(plain.trip, plain.route);
    const CraftLoad& craft = plan.legs.at(0).craft.at(0);
    const MemberLoad& load = plan.legs.at(0).loads.at(0);
    ASSERT_GT(load.pack_max_kg, load.pack_start_kg + 1.0) << "much water at the spring";
    EXPECT_NEAR(craft.load_kg, 70.0 + load.worn_kg + load.pack_max_kg, 1e-9);
    EXPECT_NEAR(craft.left_kg + craft.right_kg + craft.at_hand_kg, load.pack_max_kg, 1e-6);
    // Between the load of the start and that of the spring: told although it set off within.
    plain.trip.craft[0].payload_kg = 70.0 + load.pack_start_kg + 0.5;
    EXPECT_EQ(test::cautions_of(plain, "craft-over-payload").size(), 1U);
}

TEST(LoadBook, SinksABoatByItsHeaviestLoad) {
    test::PlainTrip plain = afloat_past_a_spring();
    plain.trip.craft[0].waterplane_m2 = 1.0;
    plain.trip.craft[0].freeboard_m = 0.20;
    const Plan plan = make_plan(plain.trip, plain.route);
    // A kilogram over a square metre is a millimetre.
    EXPECT_NEAR(plan.legs[0].craft[0].draft_change_m.value(),
                plan.legs[0].loads[0].pack_max_kg / 1000.0,
                1e-9);
}

TEST(LoadBook, StowsWaterAsTheTripFileSays) {
    test::PlainTrip plain = afloat_past_a_spring();
    const auto craft = [&] { return make_plan(plain.trip, plain.route).legs.at(0).craft.at(0); };
    const double water_kg =
        make_plan(plain.trip, plain.route).legs.at(0).loads.at(0).parts.water_kg;
    ASSERT_GT(water_kg, 2.0);
    EXPECT_NEAR(in_bags_kg(craft(), "water"), water_kg - 1.0, 1e-6) << "a litre at hand";
    EXPECT_NEAR(craft().at_hand_kg, 1.0, 1e-6);
    plain.trip.water.stow = WaterStow::bags;
    EXPECT_NEAR(in_bags_kg(craft(), "water"), water_kg, 1e-6);
    EXPECT_EQ(craft().at_hand_kg, 0.0);
    plain.trip.water.stow = WaterStow::at_hand;
    EXPECT_EQ(in_bags_kg(craft(), "water"), 0.0);
    EXPECT_NEAR(craft().at_hand_kg, water_kg, 1e-6);
}

TEST(LoadBook, FillsTheBagsByTheVolumeOfWaterAndFood) {
    test::PlainTrip plain = afloat_past_a_spring();
    plain.trip.water.stow = WaterStow::bags;
    plain.trip.food.ration_kg = 10.0;
    plain.trip.craft[0].bags_l = {25.0, 25.0};
    EXPECT_TRUE(test::cautions_of(plain, "bags-too-small").empty());
    plain.trip.food.volume_l_per_kg = 5.0; // over ten kilograms: more than 50 L
    EXPECT_EQ(test::cautions_of(plain, "bags-too-small").size(), 1U);
    plain.trip.food.volume_l_per_kg.reset();
    plain.trip.craft[0].bags_l = {1.0, 1.0}; // less than the water alone
    EXPECT_EQ(test::cautions_of(plain, "bags-too-small").size(), 1U);
}

TEST(LoadBook, CountsWhatIsWornInTheLoadOfACraft) {
    test::PlainTrip plain = test::plain_trip({test::lake(3000.0)});
    const auto load_kg = [&] {
        return make_plan(plain.trip, plain.route).legs.at(0).craft.at(0).load_kg;
    };
    const double without_kg = load_kg();
    plain.trip.kit = {thing("dry suit", 1.5), thing("paddle", 0.9)};
    plain.trip.kit[0].afloat = ItemUse::worn;
    plain.trip.kit[1].afloat = ItemUse::used;
    EXPECT_NEAR(load_kg(), without_kg + 2.4, 1e-3);
}

/// Ada's suit rides ashore in a sack that Bo bears, and she wears it on the water.
test::PlainTrip suit_in_anothers_sack() {
    test::PlainTrip plain =
        test::plain_trip({test::walk(2000.0), test::lake(2000.0), test::walk(2000.0)});
    plain.trip.party[0].carry_limit_kg = 20.0;
    test::add_member(plain, "Bo", 30.0);
    plain.trip.craft[0].wet_fraction = 0.0;
    Craft other = plain.trip.craft[0];
    other.name = "other boat";
    other.crew = {"Bo"};
    plain.trip.craft.push_back(other);
    KitItem suit = thing("suit", 1.5);
    suit.afloat = ItemUse::worn;
    suit.piece = "sack";
    KitItem clothes = thing("Bo's clothes", 2.0);
    clothes.owner = "Bo";
    clothes.piece = "sack";
    KitItem sack = party_thing("sack, empty", 1.0);
    sack.piece = "sack";
    sack.bearer = "Bo";
    plain.trip.kit = {suit, clothes, sack};
    return plain;
}

TEST(LoadBook, TakesAThingOutOfAnothersPackToWearIt) {
    const test::PlainTrip plain = suit_in_anothers_sack();
    const Plan plan = make_plan(plain.trip, plain.route);
    // Ashore the sack with all 4.5 kg is Bo's; afloat the suit's 1.5 kg are on Ada.
    for (const std::size_t leg : {std::size_t{0}, std::size_t{2}}) {
        EXPECT_NEAR(plan.legs.at(leg).loads[1].parts.kit_kg, 4.5, 1e-9) << leg;
        EXPECT_EQ(plan.legs.at(leg).loads[0].parts.kit_kg, 0.0) << leg;
        EXPECT_EQ(plan.legs.at(leg).loads[0].worn_kg, 0.0) << leg;
    }
    EXPECT_NEAR(plan.legs.at(1).loads[1].parts.kit_kg, 3.0, 1e-9);
    EXPECT_NEAR(plan.legs.at(1).loads[0].worn_kg, 1.5, 1e-9);
    EXPECT_EQ(plan.legs.at(1).loads[1].worn_kg, 0.0);
}

TEST(LoadBook, TellsTheSamePackOfADayWhateverIsWornAfloat) {
    test::PlainTrip plain = suit_in_anothers_sack();
    plain.trip.food.ration_kg = 0.0;
    plain.trip.food.reserve_days = 0.0;
    plain.trip.fuel.boiled_l = 0.0;
    plain.trip.fuel.container_kg = 0.0;
    const Plan plan = make_plan(plain.trip, plain.route);
    const PlanDay& day = plan.days.at(0);
    // Bo's sack and one of the two boats of 3 kg, Ada the other; water comes and goes.
    EXPECT_NEAR(day.members[1].pack_end_kg - day.members[1].pack_start_kg,
                day.members[0].pack_end_kg - day.members[0].pack_start_kg,
                1e-9);
}

} // namespace
} // namespace tumpline::planner
