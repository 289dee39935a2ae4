#include "planner/loads/portage_loads.h"

#include "planner/loads/limits.h"
#include "planner/quantities/milligrams.h"
#include "tests/support/random_draws.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <utility>
#include <vector>

namespace tumpline::planner {
namespace {

Piece kit_piece(const std::string& name, double mass_kg) {
    Piece piece{.name = name, .owner = 0};
    piece.add(Part::kit, static_cast<std::int64_t>(mass_kg * 1e6));
    return piece;
}

Piece own_piece(const std::string& name, double mass_kg, std::size_t member) {
    Piece piece = kit_piece(name, mass_kg);
    piece.owner = member;
    piece.whose = member;
    return piece;
}

Piece whole_boat(const std::string& name, double mass_kg) {
    Piece piece{.name = name, .owner = 0};
    piece.add(Part::craft, static_cast<std::int64_t>(mass_kg * 1e6));
    piece.boat = true;
    return piece;
}

/// Numbers of the loads that hold a piece.
std::vector<std::size_t> loads_with(const CarryPlan& plan, std::size_t piece) {
    std::vector<std::size_t> found;
    for (std::size_t l = 0; l < plan.loads.size(); ++l)
        if (std::find(plan.loads[l].pieces.begin(), plan.loads[l].pieces.end(), piece) !=
            plan.loads[l].pieces.end())
            found.push_back(l);
    return found;
}

TEST(PortageLoads, WalkTwiceTheCarriesLessOneLengths) {
    EXPECT_EQ(lengths_of(1.0), 1.0);
    EXPECT_EQ(lengths_of(1.5), 2.0);
    EXPECT_EQ(lengths_of(2.0), 3.0);
    EXPECT_EQ(lengths_of(3.0), 5.0);
    EXPECT_FALSE(offers_carries(1.5, 1)) << "nobody to relay with";
    EXPECT_TRUE(offers_carries(1.5, 2));
}

TEST(PortageLoads, AreLevelBesideTheLimitsOfTheirBearers) {
    // 10 + 8 + 6 + 6 = 30 kg on limits of 20 and 10: two thirds, 20 kg, on the first, 10 on the
    // second is the best that could be; 18 or 20 and 10 or 12 can be: 10 + 10? no, 20 = 8 + 6 + 6.
    const std::vector<Piece> pieces{
        kit_piece("a", 10.0), kit_piece("b", 8.0), kit_piece("c", 6.0), kit_piece("d", 6.0)};
    const CarryPlan plan = make_loads(pieces, {20.0, 10.0}, 1.0);
    ASSERT_EQ(plan.loads.size(), 2U);
    EXPECT_EQ(plan.loads[0].mass_mg, 20'000'000);
    EXPECT_EQ(plan.loads[1].mass_mg, 10'000'000);
    EXPECT_DOUBLE_EQ(plan.heaviest_ratio, 1.0);
}

TEST(PortageLoads, HoldAtMostOneBoatEach) {
    const CarryPlan plan =
        make_loads({whole_boat("red", 4.0), whole_boat("blue", 4.0)}, {30.0, 10.0}, 1.0);
    EXPECT_EQ(plan.loads[0].mass_mg, 4'000'000);
    EXPECT_EQ(plan.loads[1].mass_mg, 4'000'000);
}

TEST(PortageLoads, KeepARelayedLoadWithinTheLowerOfTwoLimits) {
    // Limits 30 and 12, four pieces of 10 kg: two on the strong one, one on the other, and the load
    // that both relay is held against 12 kg, so that it takes one and not two.
    const std::vector<double> limits_kg{30.0, 12.0};
    const std::vector<Piece> pieces(4, kit_piece("sack", 10.0));
    const CarryPlan plan = make_loads(pieces, limits_kg, 1.5);
    ASSERT_EQ(plan.loads.size(), 3U);
    EXPECT_EQ(plan.loads[2].bearer, 0U);
    EXPECT_EQ(plan.loads[2].relay, 1U);
    EXPECT_EQ(load_limit_kg(plan.loads[2], limits_kg), 12.0);
    EXPECT_EQ(load_limit_kg(plan.loads[0], limits_kg), 30.0);
    EXPECT_EQ(plan.loads[0].mass_mg, 20'000'000);
    EXPECT_EQ(plan.loads[1].mass_mg, 10'000'000);
    EXPECT_EQ(plan.loads[2].mass_mg, 10'000'000);
}

TEST(PortageLoads, LeaveOwnThingsWithTheirOwnersWhereLimitsAreKept) {
    // Ada's 6 + 5 kg and the party's 3 kg: level would be 7 and 7, but her things are hers.
    const std::vector<Piece> pieces{own_piece("Ada's pack", 6.0, 0),
                                    own_piece("Ada's clothes", 5.0, 0),
                                    kit_piece("tent", 3.0)};
    const CarryPlan plan = make_loads(pieces, {15.0, 15.0}, 1.0);
    EXPECT_EQ(plan.loads[0].mass_mg, 11'000'000);
    EXPECT_EQ(plan.loads[1].mass_mg, 3'000'000);
}

TEST(PortageLoads, LetOwnThingsWanderOnlyAsFarAsALimitAsks) {
    // A boat of 10 kg for the strong one leaves Ada (limit 9) with 6 + 5 kg of her own: 2 kg too
    // many. Her clothes go to Bo, whose 10 + 5 keep his 16; her pack stays.
    const std::vector<Piece> pieces{own_piece("Ada's pack", 6.0, 0),
                                    own_piece("Ada's clothes", 5.0, 0),
                                    whole_boat("canoe", 10.0)};
    const CarryPlan plan = make_loads(pieces, {9.0, 16.0}, 1.0);
    EXPECT_EQ(loads_with(plan, 0), std::vector<std::size_t>{0});
    EXPECT_EQ(loads_with(plan, 1), std::vector<std::size_t>{1});
    EXPECT_LE(plan.heaviest_ratio, 1.0);
}

TEST(PortageLoads, KeepOwnThingsOutOfARelayedLoad) {
    const std::vector<Piece> pieces{
        own_piece("Ada's pack", 4.0, 0), own_piece("Bo's pack", 4.0, 1), kit_piece("barrel", 4.0)};
    const CarryPlan plan = make_loads(pieces, {20.0, 20.0}, 1.5);
    EXPECT_EQ(loads_with(plan, 0), std::vector<std::size_t>{0});
    EXPECT_EQ(loads_with(plan, 1), std::vector<std::size_t>{1});
    EXPECT_EQ(loads_with(plan, 2), std::vector<std::size_t>{2});
}

/// Packs of 15 and 6 kg on limits of 20 kg, boats of 4 and 5 kg: the lighter boat on the heavier
/// pack is 19 and 11 kg, the other way 20 and 10 kg. A boat goes with whoever has it in the pack
/// elsewhere where a third load is as heavy as that, and not where 20 kg would be the heaviest by a
/// kilogram.
TEST(PortageLoads, LeaveBoatsWithTheirBearersWhereNobodyFeelsIt) {
    using Loads = std::vector<std::size_t>;
    const auto made = [](std::size_t reds, double third_kg) {
        std::vector<Piece> pieces{own_piece("Ada's pack", 15.0, 0),
                                  own_piece("Bo's pack", 6.0, 1),
                                  own_piece("Cy's pack", third_kg, 2),
                                  whole_boat("red", 4.0),
                                  whole_boat("blue", 5.0)};
        pieces[3].owner = reds;
        pieces[4].owner = 1 - reds;
        return make_loads(pieces, {20.0, 20.0, 20.0}, 1.0);
    };
    const auto boats = [](const CarryPlan& plan) {
        return std::pair(loads_with(plan, 3), loads_with(plan, 4));
    };
    EXPECT_EQ(boats(made(0, 19.9)), std::pair(Loads{0}, Loads{1}));
    const CarryPlan changed = made(1, 19.9);
    EXPECT_EQ(boats(changed), std::pair(Loads{1}, Loads{0}));
    EXPECT_EQ(changed.loads[0].mass_mg, 20'000'000);
    EXPECT_EQ(changed.loads[1].mass_mg, 10'000'000);
    EXPECT_EQ(boats(made(1, 18.0)), std::pair(Loads{0}, Loads{1}));
}

TEST(PortageLoads, HoldEveryPieceOnce) {
    std::vector<Piece> pieces{whole_boat("red", 3.3), whole_boat("blue", 3.4)};
    for (int k = 0; k < 9; ++k)
        pieces.push_back(k % 3 == 0
                             ? kit_piece("tent", 1.0 + k)
                             : own_piece("clothes", 0.5 * k, static_cast<std::size_t>(k % 2)));
    for (const double carries : {1.0, 1.5, 2.0, 3.0}) {
        const CarryPlan plan = make_loads(pieces, {22.0, 25.0}, carries);
        std::int64_t sum_mg = 0;
        for (const PortageLoad& load : plan.loads)
            sum_mg += load.mass_mg;
        std::int64_t all_mg = 0;
        for (std::size_t p = 0; p < pieces.size(); ++p) {
            EXPECT_EQ(loads_with(plan, p).size(), 1U);
            all_mg += pieces[p].mass_mg;
        }
        EXPECT_EQ(sum_mg, all_mg);
    }
}

TEST(PortageLoads, PutTheTwoEndsOfAPieceOnTheStrongestTwoInOneTurn) {
    Piece canoe = whole_boat("canoe", 27.0);
    canoe.bearers = 2;
    canoe.add(Part::kit, 1); // an odd milligram is on one of the ends
    const std::vector<Piece> ends = as_two_ends({kit_piece("barrel", 12.0), canoe});
    ASSERT_EQ(ends.size(), 3U);
    EXPECT_EQ(ends[1].mass_mg + ends[2].mass_mg, canoe.mass_mg);
    EXPECT_EQ(ends[1].mass_mg, 13'500'000);
    const CarryPlan plan = make_loads(ends, {20.0, 30.0, 25.0}, 1.0, CarryBy::two);
    // Member 1 may carry most, member 2 next; the barrel levels: 12 kg on member 0.
    EXPECT_EQ(loads_with(plan, 1), std::vector<std::size_t>{1});
    EXPECT_EQ(loads_with(plan, 2), std::vector<std::size_t>{2});
    EXPECT_EQ(loads_with(plan, 0), std::vector<std::size_t>{0});
    EXPECT_EQ(plan.loads[1].turn, plan.loads[2].turn);
}

TEST(PortageLoads, OfferAPieceForTwoOnlyWhereAPairHasHandsFree) {
    Piece canoe = whole_boat("canoe", 27.0);
    canoe.bearers = 2;
    EXPECT_FALSE(offers(CarryBy::two, {canoe}, 1, 3.0));
    EXPECT_TRUE(offers(CarryBy::two, {canoe}, 2, 1.0));
    EXPECT_FALSE(offers(CarryBy::two, {canoe, canoe}, 3, 1.0)); // one pair, one turn
    EXPECT_TRUE(offers(CarryBy::two, {canoe, canoe}, 3, 2.0));
    EXPECT_FALSE(offers(CarryBy::two, {kit_piece("barrel", 12.0)}, 2, 1.0));
}

TEST(PortageLoads, RollOnACartWithinItsPayload) {
    Piece cart = kit_piece("cart", 5.0);
    cart.cart_payload_kg = 40.0;
    const std::vector<Piece> pieces{
        cart, whole_boat("canoe", 30.0), own_piece("a", 10.0, 0), own_piece("b", 10.0, 1)};
    EXPECT_TRUE(offers(CarryBy::cart, pieces, 2, 1.0));
    const CarryPlan plan = make_loads(pieces, {20.0, 25.0}, 1.0, CarryBy::cart);
    ASSERT_EQ(plan.loads.size(), 3U); // two backs and the cart
    const PortageLoad& rolling = plan.loads[2];
    EXPECT_TRUE(rolling.rolls());
    EXPECT_EQ(rolling.bearer, 1U); // the stronger pulls
    EXPECT_EQ(rolling.mass_mg, 35'000'000);
    EXPECT_DOUBLE_EQ(load_limit_kg(rolling, {20.0, 25.0}), 45.0); // its payload beside itself
    EXPECT_EQ(pulled_mg(plan, plan.loads[1]), 35'000'000);
    EXPECT_EQ(pulled_mg(plan, plan.loads[0]), 0);
    EXPECT_FALSE(plan.loads[plan.heaviest].rolls());
    EXPECT_DOUBLE_EQ(plan.heaviest_ratio, 0.5); // 10 of 20 kg
}

TEST(PortageLoads, HaveABoundByAllLimitsAndByTheHeaviestPiece) {
    // 12 + 9 + 6 = 27 kg over 20 + 10 kg: 0.9; the heaviest piece beside the higher limit: 0.6.
    const std::vector<Piece> pieces{kit_piece("a", 12.0), kit_piece("b", 9.0), kit_piece("c", 6.0)};
    const LeastCarry once = least_carry(pieces, {20.0, 10.0}, 1.0);
    EXPECT_NEAR(once.heaviest_ratio, 0.9, 1e-12);
    EXPECT_TRUE(once.may_keep_limits);
    // Twice: 27 of 60 kg are less than 12 of 20.
    EXPECT_NEAR(least_carry(pieces, {20.0, 10.0}, 2.0).heaviest_ratio, 0.6, 1e-12);
    // 27 kg over 13 + 10 are too much for one carry; one and a half has a load of both, of 10 kg.
    EXPECT_FALSE(least_carry(pieces, {13.0, 10.0}, 1.0).may_keep_limits);
    EXPECT_TRUE(least_carry(pieces, {13.0, 10.0}, 1.5).may_keep_limits);
    // 27 of 33 kg are 0.82, but 12 of 13 are 0.92.
    EXPECT_NEAR(least_carry(pieces, {13.0, 10.0}, 1.5).heaviest_ratio, 12.0 / 13.0, 1e-12);
    // A piece above everyone's limit keeps none, however often one walks; 50 g above is not over.
    EXPECT_FALSE(least_carry(pieces, {11.9, 11.9}, 3.0).may_keep_limits);
    EXPECT_TRUE(least_carry(pieces, {11.96, 11.96}, 3.0).may_keep_limits);
}

TEST(PortageLoads, HaveABoundByTheEndsOfAPieceAndByWhatACartTakes) {
    // A boat of 34 kg is over 20 and 30 kg; each of its ends, 17 kg, is not.
    Piece canoe = whole_boat("canoe", 34.0);
    canoe.bearers = 2;
    EXPECT_FALSE(least_carry({canoe}, {20.0, 30.0}, 1.0).may_keep_limits);
    const LeastCarry by_two = least_carry(as_two_ends({canoe}), {20.0, 30.0}, 1.0, CarryBy::two);
    EXPECT_TRUE(by_two.may_keep_limits);
    EXPECT_NEAR(by_two.heaviest_ratio, 34.0 / 50.0, 1e-12); // 17 of 30 are less
    // 34 + 4 kg are over 30, not over 30 on the back and 60 + 4 on the cart; a full cart is not
    // weighed beside a back, so no ratio is known.
    Piece cart = kit_piece("cart", 4.0);
    cart.cart_payload_kg = 60.0;
    EXPECT_FALSE(least_carry({canoe, cart}, {30.0}, 1.0).may_keep_limits);
    const LeastCarry rolled = least_carry({canoe, cart}, {30.0}, 1.0, CarryBy::cart);
    EXPECT_TRUE(rolled.may_keep_limits);
    EXPECT_EQ(rolled.heaviest_ratio, 0.0);
    // 95 kg are more than back and cart may take together, 94 kg and their 0.1 kg are not.
    EXPECT_FALSE(
        least_carry(
            {cart, kit_piece("stones", 64.0), kit_piece("sand", 27.0)}, {30.0}, 1.0, CarryBy::cart)
            .may_keep_limits);
    EXPECT_TRUE(
        least_carry(
            {cart, kit_piece("stones", 60.0), kit_piece("sand", 30.0)}, {30.0}, 1.0, CarryBy::cart)
            .may_keep_limits);
}

TEST(PortageLoads, AreNeverBetterThanTheirBound) {
    test::Draws draws(77);
    int kept = 0;
    std::array<int, 3> ways{};
    for (int round = 0; round < 300; ++round) {
        std::vector<double> limits_kg(static_cast<std::size_t>(draws.whole(1, 4)));
        for (double& limit_kg : limits_kg)
            limit_kg = draws.between(8.0, 30.0);
        std::vector<Piece> pieces;
        for (int k = draws.whole(1, 12); k > 0; --k)
            pieces.push_back(kit_piece("thing", draws.between(0.2, 14.0)));
        const double carries = draws.whole(1, 3);
        CarryBy by = CarryBy::hands;
        if (round % 3 == 1) { // two to the first thing
            pieces[0].bearers = 2;
            by = offers(CarryBy::two, pieces, limits_kg.size(), carries) ? CarryBy::two : by;
            pieces = by == CarryBy::two ? as_two_ends(pieces) : pieces;
        } else if (round % 3 == 2) { // the first is a cart
            pieces[0].cart_payload_kg = draws.between(5.0, 60.0);
            by = CarryBy::cart;
        }
        ++ways[static_cast<std::size_t>(by)];
        const LeastCarry least = least_carry(pieces, limits_kg, carries, by);
        const CarryPlan made = make_loads(pieces, limits_kg, carries, by);
        EXPECT_GE(made.heaviest_ratio, least.heaviest_ratio - 1e-9);
        const bool keeps =
            std::none_of(made.loads.begin(), made.loads.end(), [&](const PortageLoad& load) {
                return over_limit(mg_to_kg(load.mass_mg), load_limit_kg(load, limits_kg));
            });
        EXPECT_TRUE(least.may_keep_limits || !keeps);
        kept += keeps ? 1 : 0;
    }
    EXPECT_GT(kept, 50);
    EXPECT_LT(kept, 290);
    EXPECT_GT(*std::min_element(ways.begin(), ways.end()), 50);
}

TEST(PortageLoads, WeighedAgainStayWhoseTheyWere) {
    const std::vector<double> limits_kg{20.0, 10.0};
    std::vector<Piece> pieces{kit_piece("a", 9.0), kit_piece("b", 5.0)};
    const CarryPlan before = make_loads(pieces, limits_kg, 1.0);
    pieces[1].add(Part::kit, 2'000'000);
    const CarryPlan again = weigh_again(before, pieces, limits_kg);
    ASSERT_EQ(before.loads.size(), 2U);
    ASSERT_EQ(before.loads[0].pieces, (std::vector<std::size_t>{0}));
    EXPECT_EQ(again.loads[0].pieces, before.loads[0].pieces);
    EXPECT_EQ(again.loads[1].pieces, before.loads[1].pieces);
    EXPECT_EQ(again.loads[0].mass_mg, 9'000'000);
    EXPECT_EQ(again.loads[1].mass_mg, 7'000'000);
    EXPECT_EQ(again.heaviest, 1U); // 7 of 10 kg, against 9 of 20
    EXPECT_NEAR(again.heaviest_ratio, 0.7, 1e-12);
}

TEST(PortageLoads, WeighedAgainOnACartTellTheHeaviestBack) {
    Piece cart = kit_piece("cart", 5.0);
    cart.cart_payload_kg = 30.0;
    std::vector<Piece> pieces{cart, whole_boat("canoe", 27.0), own_piece("a", 10.0, 0)};
    const CarryPlan before = make_loads(pieces, {20.0}, 1.0, CarryBy::cart);
    ASSERT_EQ(before.loads[1].mass_mg, 32'000'000); // of 35, while 10 of 20 are on the back
    pieces[2].add(Part::kit, 1'000'000);
    CarryPlan again = weigh_again(before, pieces, {20.0});
    EXPECT_EQ(again.by, CarryBy::cart);
    EXPECT_EQ(again.heaviest, 0U);
    EXPECT_DOUBLE_EQ(again.heaviest_ratio, 0.55);
    pieces[1].add(Part::craft, 4'000'000); // 36 of 35 kg: now the cart is what is worst
    again = weigh_again(before, pieces, {20.0});
    EXPECT_EQ(again.heaviest, 1U);
    EXPECT_DOUBLE_EQ(again.heaviest_ratio, 36.0 / 35.0);
}

TEST(PortageLoads, BringOwnThingsHomeUpToTheLimitNotToALevel) {
    // Ada's 7, 4.5 and 2 kg are too much for her 10; level are 7 of 10 and 4.5 + 2 + 7.5 = 14
    // of 20. Her 2 kg come back, for 9 kg keep her limit; her 4.5 cannot.
    const std::vector<Piece> pieces{own_piece("Ada's pack", 7.0, 0),
                                    own_piece("Ada's clothes", 4.5, 0),
                                    own_piece("Ada's shoes", 2.0, 0),
                                    whole_boat("canoe", 7.5)};
    const CarryPlan plan = make_loads(pieces, {10.0, 20.0}, 1.0);
    EXPECT_EQ(plan.loads[0].mass_mg, 9'000'000);
    EXPECT_EQ(plan.loads[1].mass_mg, 12'000'000);
    EXPECT_EQ(loads_with(plan, 1), std::vector<std::size_t>{1});
    EXPECT_EQ(loads_with(plan, 2), std::vector<std::size_t>{0});
}

} // namespace
} // namespace tumpline::planner
