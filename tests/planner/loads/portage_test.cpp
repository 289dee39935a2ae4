#include "planner/loads/portage.h"

#include "planner/make_plan.h"
#include "planner/quantities/milligrams.h"
#include "planner/solution/fixed_point.h"
#include "tests/support/plain_trip.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <string>
#include <vector>

namespace tumpline::planner {
namespace {

using test::party_thing;
using test::thing;

/// Ada (limit 20 kg) and Bo (30 kg) on a lake, a carry of 600 m and a lake; times hang on no load.
test::PlainTrip two_carry(double slope = 0.0) {
    test::PlainTrip plain =
        test::plain_trip({test::lake(2000.0), test::walk(600.0, slope), test::lake(2000.0)});
    test::make_portage(plain, 1);
    plain.trip.party[0].carry_limit_kg = 20.0;
    test::add_member(plain, "Bo", 30.0);
    plain.trip.craft[0].crew = {"Ada", "Bo"};
    plain.trip.craft[0].kind = CraftKind::tandem_canoe;
    plain.trip.craft[0].rolls_up = false;
    plain.trip.craft[0].mass_kg = 18.0;
    plain.trip.craft[0].wet_fraction = 0.0;
    plain.trip.models.load_effect = "none";
    return plain;
}

void set_carries(test::PlainTrip& plain, double carries) {
    plain.route.legs[1].spec.carries = carries;
}

PlanLeg carry_of(const test::PlainTrip& plain) {
    return make_plan(plain.trip, plain.route).legs.at(1);
}

const CarryChoice& choice(const PlanLeg& leg, double carries) {
    return *std::find_if(leg.choices.begin(), leg.choices.end(), [&](const CarryChoice& one) {
        return one.carries == carries && !one.rolled;
    });
}

int loads_with(const PlanLeg& leg, const std::string& piece) {
    int found = 0;
    for (const MemberLoad& load : leg.loads)
        for (const Carry& carry : load.carries)
            for (const CarriedThing& thing : carry.pieces)
                found += thing.what == piece ? thing.count : 0;
    return found;
}

TEST(Portage, CarriesAContainerOnOneBack) {
    test::PlainTrip plain = two_carry();
    KitItem mine = thing("clothes", 4.0);
    KitItem yours = thing("clothes", 4.5);
    yours.owner = "Bo";
    KitItem barrel = party_thing("barrel, empty", 2.0);
    for (KitItem* item : {&mine, &yours, &barrel})
        item->piece = "barrel";
    plain.trip.kit = {mine, yours, barrel};
    plain.trip.food.piece = "barrel";
    set_carries(plain, 1.0);
    const PlanLeg leg = carry_of(plain);
    EXPECT_EQ(loads_with(leg, "barrel"), 1);
    EXPECT_EQ(loads_with(leg, "food"), 0);
    // 18 kg of canoe on Bo; the barrel with 10.5 kg of things and all food on Ada.
    EXPECT_NEAR(leg.loads[0].parts.kit_kg, 10.5, 1e-9);
    EXPECT_GT(leg.loads[0].parts.food_kg, 1.0);
    EXPECT_EQ(leg.loads[1].parts.food_kg, 0.0);
}

TEST(Portage, HoldsEachMemberToTheLimitOfPortages) {
    test::PlainTrip plain = two_carry();
    plain.trip.kit = {party_thing("sack", 17.0)};
    // The canoe of 18 kg with Bo, the sack with Ada: her 17 kg and what else there is.
    plain.trip.party[0].portage_limit_kg = 26.0;
    plain.trip.party[1].portage_limit_kg = 27.0;
    const PlanLeg strong = carry_of(plain);
    EXPECT_EQ(strong.loads[0].limit_kg, 26.0);
    EXPECT_EQ(strong.loads[1].limit_kg, 27.0);
    EXPECT_TRUE(choice(strong, 1.0).within_limits);
    plain.trip.party[0].portage_limit_kg = 16.0; // the sack is too much for Ada alone
    plain.trip.party[1].portage_limit_kg = 27.0;
    EXPECT_FALSE(choice(carry_of(plain), 1.0).within_limits);
}

TEST(Portage, TakesTheFewestLengthsWithinTheLimits) {
    test::PlainTrip plain = two_carry();
    plain.trip.kit = {party_thing("sack", 13.0)};
    EXPECT_EQ(carry_of(plain).lengths, 1.0);
    // 13 and 13 kg of sacks and 18 of canoe on 20 and 30 kg: 26 are over Ada's limit, 18 + 13 over
    // Bo's; of three loads each keeps to its limit.
    plain.trip.kit.push_back(party_thing("other sack", 13.0));
    EXPECT_EQ(carry_of(plain).lengths, 2.0);
}

TEST(Portage, CarriesAWetBoat) {
    test::PlainTrip plain = two_carry();
    set_carries(plain, 1.0);
    const double dry_kg = carry_of(plain).loads[1].pack_max_kg;
    plain.trip.craft[0].wet_fraction = 0.1; // 1.8 kg of water on 18 kg
    EXPECT_NEAR(carry_of(plain).loads[1].pack_max_kg, dry_kg + 1.8, 0.05);
}

TEST(Portage, WalksBackOverTheClimbOfADescent) {
    // Down a fifth with each of two loads, and up once between them. The times of a walk of that
    // length each way, whatever is borne:
    const auto walked_s = [](double slope) {
        test::PlainTrip walk = test::plain_trip({test::walk(600.0, slope)});
        walk.trip.models.load_effect = "none";
        return make_plan(walk.trip, walk.route).legs.at(0).moving_s;
    };
    const double down_s = walked_s(-0.2);
    const double up_s = walked_s(0.2);
    ASSERT_GT(up_s, 1.2 * down_s);
    test::PlainTrip plain = two_carry(-0.2);
    set_carries(plain, 2.0);
    plain.trip.kit = {party_thing("sack", 12.0), party_thing("other sack", 12.0)};
    EXPECT_NEAR(carry_of(plain).moving_s, 2.0 * down_s + up_s, 1.0);
}

TEST(Portage, ReckonsEveryWayForTheTableOfChoices) {
    test::PlainTrip plain = two_carry();
    plain.trip.kit = {party_thing("sack", 12.0)};
    const PlanLeg leg = carry_of(plain);
    ASSERT_EQ(leg.choices.size(), 4U); // 1, 1.5, 2 and 3, whole: the canoe does not roll up
    EXPECT_NEAR(choice(leg, 2.0).walked_m, 1800.0, 0.1);
    EXPECT_NEAR(choice(leg, 1.5).walked_m, 1200.0, 0.1);
    EXPECT_TRUE(choice(leg, 1.0).chosen);
}

TEST(Portage, LeavesOwnThingsWithTheirOwners) {
    test::PlainTrip plain = two_carry();
    KitItem pack = thing("Bo's pack", 1.7);
    pack.owner = "Bo";
    plain.trip.kit = {thing("Ada's pack", 1.6), thing("Ada's clothes", 3.0), pack};
    for (const double carries : {1.0, 1.5, 2.0}) {
        set_carries(plain, carries);
        const PlanLeg leg = carry_of(plain);
        for (const MemberLoad& load : leg.loads)
            for (const Carry& carry : load.carries)
                for (const CarriedThing& piece : carry.pieces)
                    for (const std::string owner : {"Ada", "Bo"})
                        EXPECT_TRUE(!piece.what.starts_with(owner + "'s") || load.member == owner)
                            << piece.what << " with " << load.member << " by " << carries;
        EXPECT_EQ(loads_with(leg, "Ada's pack"), 1);
    }
}

const CarryChoice& choice(const PlanLeg& leg, double carries, CarryBy by) {
    return *std::find_if(leg.choices.begin(), leg.choices.end(), [&](const CarryChoice& one) {
        return one.carries == carries && one.by == by;
    });
}

/// The canoe is over both limits.
test::PlainTrip heavy_canoe() {
    test::PlainTrip plain = two_carry();
    plain.trip.craft[0].mass_kg = 34.0;
    return plain;
}

TEST(Portage, TakesABoatOverEveryLimitByTwo) {
    test::PlainTrip plain = heavy_canoe();
    const PlanLeg alone = carry_of(plain);
    EXPECT_TRUE(std::none_of(alone.choices.begin(), alone.choices.end(), [](const auto& one) {
        return one.within_limits;
    }));
    EXPECT_FALSE(test::cautions_of(plain, "item-over-limits").empty());
    plain.trip.craft[0].borne_by = 2;
    const PlanLeg leg = carry_of(plain);
    const CarryChoice& by_two = choice(leg, 1.0, CarryBy::two);
    EXPECT_TRUE(by_two.chosen);
    EXPECT_TRUE(by_two.within_limits);
    EXPECT_DOUBLE_EQ(leg.lengths, 1.0);
    // As the slower of them alone over the one length, and a quarter longer.
    EXPECT_NEAR(by_two.moving_s, 1.25 * choice(leg, 1.0, CarryBy::hands).moving_s, 1e-6);
    for (const MemberLoad& load : leg.loads) {
        EXPECT_NEAR(load.parts.craft_kg, 17.0, 1e-9) << load.member;
        ASSERT_EQ(load.carries.size(), 1U);
        EXPECT_TRUE(std::any_of(load.carries[0].pieces.begin(),
                                load.carries[0].pieces.end(),
                                [](const CarriedThing& thing) { return thing.one_end; }));
    }
    EXPECT_TRUE(test::cautions_of(plain, "item-over-limits").empty());
    EXPECT_NE(make_plan(plain.trip, plain.route).carrying.sentence.find("between them"),
              std::string::npos);
}

TEST(Portage, RollsACartWhereItIsARoadOnly) {
    test::PlainTrip plain = heavy_canoe();
    KitItem cart = party_thing("cart", 5.0);
    cart.cart_payload_kg = 60.0;
    plain.trip.kit.push_back(cart);
    const PlanLeg path = carry_of(plain);
    EXPECT_TRUE(std::none_of(path.choices.begin(), path.choices.end(), [](const auto& one) {
        return one.by == CarryBy::cart;
    }));
    plain.route.legs[1].spec.cart = true;
    const PlanLeg leg = carry_of(plain);
    const CarryChoice& rolled = choice(leg, 1.0, CarryBy::cart);
    EXPECT_TRUE(rolled.chosen);
    EXPECT_GE(rolled.on_cart_kg, 39.0); // canoe and cart, perhaps more
    EXPECT_NEAR(rolled.moving_s, 1.15 * choice(leg, 1.0, CarryBy::hands).moving_s, 1e-6);
    // Bo pulls; what lies on the cart is not on the back.
    EXPECT_DOUBLE_EQ(leg.loads[1].parts.craft_kg, 0.0);
    EXPECT_EQ(std::count_if(leg.loads[1].carries.begin(),
                            leg.loads[1].carries.end(),
                            [](const Carry& carry) { return carry.on_cart; }),
              1);
    double carried_kg = 0.0;
    for (const MemberLoad& load : leg.loads)
        for (const Carry& carry : load.carries)
            carried_kg += carry.pack_kg;
    double by_hand_kg = 0.0;
    for (const MemberLoad& load : path.loads)
        for (const Carry& carry : load.carries)
            by_hand_kg += carry.pack_kg;
    EXPECT_NEAR(carried_kg, by_hand_kg, 0.1); // the same things, but for the food of a quicker day
}

TEST(Portage, IsCarriedByTheHandsAskedForWhereTheyCanBeHad) {
    test::PlainTrip plain = heavy_canoe();
    KitItem cart = party_thing("cart", 5.0);
    cart.cart_payload_kg = 60.0;
    plain.trip.kit.push_back(cart);
    plain.trip.craft[0].borne_by = 2;
    TripLeg& spec = plain.route.legs[1].spec;
    spec.cart = true;
    const auto taken = [&] {
        const PlanLeg leg = carry_of(plain);
        return std::find_if(leg.choices.begin(),
                            leg.choices.end(),
                            [](const auto& one) { return one.chosen; })
            ->by;
    };
    EXPECT_EQ(taken(), CarryBy::cart); // the walk takes 1.15 times as long, by two 1.25
    for (const CarryBy by : {CarryBy::hands, CarryBy::two, CarryBy::cart}) {
        spec.carry_by = by;
        EXPECT_EQ(taken(), by);
        spec.carries = 3.0; // apart from the count of carries
        EXPECT_EQ(taken(), by);
        spec.carries.reset();
    }
    plain.trip.craft[0].borne_by.reset();
    spec.carry_by = CarryBy::two; // nothing is left that two may carry
    EXPECT_EQ(taken(), CarryBy::cart);
}

TEST(Portage, ACartWeighsATenthAndItsRise) {
    Stretch stretch{};
    stretch.from_m = 100.0;
    stretch.to_m = 900.0;
    stretch.ascent_m = 40.0;
    EXPECT_DOUBLE_EQ(cart_drag(stretch), 0.15); // 0.1 and 40 of 800 m
}

/// Pieces over the carry of `two_carry`, in the ways that one is chosen from.
PortagePlan carried_over(const test::PlainTrip& plain,
                         const std::vector<Piece>& pieces,
                         const PortagePlan* kept = nullptr) {
    const Prepared prepared = prepare(plain.trip, plain.route);
    return plan_portage({.leg = plain.route.legs[1].spec,
                         .stretch = prepared.stretches.stretches[1],
                         .index = 1,
                         .assumed = prepared.assumed,
                         .party = plain.trip.party,
                         .rolled_pieces = {},
                         .whole_pieces = pieces,
                         .rolled_worn_kg = {},
                         .whole_worn_kg = {0.0, 0.0},
                         .may_roll = false,
                         .may_whole = true,
                         .rolled_change_s = 0.0,
                         .whole_change_s = 0.0,
                         .every_way = false,
                         .pinned = {},
                         .kept = kept});
}

PortagePlan two_sacks(const test::PlainTrip& plain,
                      const std::vector<double>& sacks_kg,
                      const PortagePlan* kept = nullptr) {
    std::vector<Piece> pieces;
    for (const double sack_kg : sacks_kg) {
        Piece piece{.name = "sack", .owner = pieces.size()};
        piece.add(Part::kit, kg_to_mg(sack_kg));
        pieces.push_back(piece);
    }
    return carried_over(plain, pieces, kept);
}

TEST(Portage, KeepsTheLoadsOfBeforeWhereGramsWouldTurnThemRound) {
    test::PlainTrip plain = two_carry();
    set_carries(plain, 1.0);
    // The heavier sack goes to Bo, who may bear 30 kg, the other to Ada with her 20.
    const PortagePlan before = two_sacks(plain, {12.0, 12.1});
    EXPECT_EQ(before.relay.loads[0].pieces, (std::vector<std::size_t>{0}));
    EXPECT_EQ(before.relay.loads[1].pieces, (std::vector<std::size_t>{1}));
    const PortagePlan anew = two_sacks(plain, {12.2, 12.1});
    EXPECT_EQ(anew.relay.loads[0].pieces, (std::vector<std::size_t>{1}));
    const PortagePlan kept = two_sacks(plain, {12.2, 12.1}, &before);
    EXPECT_EQ(kept.relay.loads[0].pieces, (std::vector<std::size_t>{0}));
    EXPECT_EQ(kept.relay.loads[0].mass_mg, 12'200'000);
    EXPECT_NEAR(kept.relay.heaviest_ratio, 12.2 / 20.0, 1e-12);
    EXPECT_EQ(kept.pieces[0].mass_mg, 12'200'000) << "what is carried is of now";
}

TEST(Portage, LeavesOutWaysThatCannotKeepTheLimitsAndFindsTheNearestOfThoseLeft) {
    // 90 kg in ten sacks for limits of 20 and 30: once 50, one and a half 70, twice 100 kg.
    test::PlainTrip plain = two_carry();
    const PortagePlan twice = two_sacks(plain, std::vector<double>(10, 9.0));
    // Ada bears two at a time, Bo three: all ten in four loads.
    EXPECT_EQ(twice.relay.carries, 2.0);
    ASSERT_EQ(twice.choices.size(), 1U) << "the others are over the limits by their sum alone";
    EXPECT_TRUE(twice.choices[0].within_limits);
    // Sacks of 31 kg keep no limit of anybody: the fewest lengths come as near as any.
    const PortagePlan none = two_sacks(plain, {31.0});
    EXPECT_EQ(none.relay.carries, 1.0);
    EXPECT_NEAR(none.relay.heaviest_ratio, 31.0 / 30.0, 1e-12);
}

TEST(Portage, FindsTheWayByTwoAndTheCartWhereNoBackCanBearABoat) {
    test::PlainTrip plain = two_carry();
    Piece canoe{.name = "canoe", .owner = 0};
    canoe.add(Part::craft, kg_to_mg(34.0)); // limits of 20 and 30 kg
    canoe.boat = true;
    canoe.bearers = 2;
    const PortagePlan by_two = carried_over(plain, {canoe});
    EXPECT_EQ(by_two.relay.by, CarryBy::two);
    EXPECT_EQ(by_two.relay.carries, 1.0);
    EXPECT_NEAR(by_two.relay.heaviest_ratio, 17.0 / 20.0, 1e-12);
    ASSERT_EQ(by_two.pieces.size(), 2U) << "its two ends";
    EXPECT_EQ(by_two.pieces[0].mass_mg + by_two.pieces[1].mass_mg, canoe.mass_mg);
    canoe.bearers = 1;
    Piece cart{.name = "cart", .owner = 0};
    cart.add(Part::kit, kg_to_mg(5.0));
    cart.cart_payload_kg = 60.0;
    EXPECT_EQ(carried_over(plain, {canoe, cart}).relay.by, CarryBy::hands) << "no road";
    plain.route.legs[1].spec.cart = true;
    const PortagePlan rolled = carried_over(plain, {canoe, cart});
    EXPECT_EQ(rolled.relay.by, CarryBy::cart);
    EXPECT_EQ(rolled.relay.heaviest_ratio, 0.0); // nothing on a back
    // Kept, it stays on its cart.
    cart.add(Part::kit, kg_to_mg(1.0));
    const PortagePlan kept = carried_over(plain, {canoe, cart}, &rolled);
    EXPECT_EQ(kept.relay.by, CarryBy::cart);
    EXPECT_EQ(pulled_mg(kept.relay, kept.relay.loads[1]), kg_to_mg(40.0));
}

} // namespace
} // namespace tumpline::planner
