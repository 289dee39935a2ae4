#include "planner/loads/assignment.h"

#include "planner/make_plan.h"
#include "planner/solution/fixed_point.h"
#include "tests/support/plain_trip.h"

#include <gtest/gtest.h>

namespace tumpline::planner {
namespace {

using test::party_thing;
using test::thing;

KitItem within(KitItem item, const std::string& container, const std::string& owner = {}) {
    item.piece = container;
    item.owner = owner;
    return item;
}

/// Ada and Bo, both with a limit of 20 kg, on a walk.
test::PlainTrip two_walk(std::vector<KitItem> kit) {
    test::PlainTrip plain = test::plain_trip({test::walk(4000.0)});
    plain.trip.party[0].carry_limit_kg = 20.0;
    test::add_member(plain, "Bo", 20.0);
    plain.trip.kit = std::move(kit);
    return plain;
}

Loads loads_of(const test::PlainTrip& plain) {
    const Prepared prepared = prepare(plain.trip, plain.route);
    return solve(prepared, {}).loads;
}

std::vector<TiedItems> tied_in(const test::PlainTrip& plain) {
    return tie_items(plain.trip, std::vector<bool>(plain.trip.kit.size(), true));
}

TEST(Assignment, TiesWhatIsInOneContainerWhoeverOwnsIt) {
    test::PlainTrip plain = two_walk({within(party_thing("tent", 3.0), "sack"),
                                      within(thing("clothes", 2.0), "sack", "Ada"),
                                      within(thing("clothes", 2.5), "sack", "Bo"),
                                      thing("mug", 0.1)});
    const std::vector<TiedItems> all = tied_in(plain);
    ASSERT_EQ(all.size(), 2U);
    EXPECT_EQ(all[0].name, "sack");
    EXPECT_EQ(all[0].mass_mg, 7'500'000); // 3.0 + 2.0 + 2.5 kg
    EXPECT_FALSE(all[0].holder) << "of several owners: anyone";
    EXPECT_EQ(all[1].holder, std::optional<std::size_t>(0)) << "Ada's mug";
    EXPECT_FALSE(all[1].may_wander);
}

TEST(Assignment, LeavesAnOwnContainerWithItsOwner) {
    test::PlainTrip plain = two_walk({within(thing("pack", 1.5), "pack", "Bo"),
                                      within(thing("clothes", 2.0), "pack", "Bo"),
                                      within(party_thing("stove", 0.6), "pack")});
    const std::vector<TiedItems> all = tied_in(plain);
    ASSERT_EQ(all.size(), 1U);
    EXPECT_EQ(all[0].holder, std::optional<std::size_t>(1));
    EXPECT_TRUE(all[0].may_wander) << "for the stove's sake";
    plain.trip.kit[2].bearer = "Ada";
    EXPECT_EQ(tied_in(plain)[0].holder, std::optional<std::size_t>(0)) << "stays with Ada";
}

TEST(Assignment, CountsOnlyWhatIsInPacksAshore) {
    test::PlainTrip plain = two_walk(
        {within(thing("boots", 1.2), "sack", "Ada"), within(party_thing("tarp", 0.8), "sack")});
    plain.trip.kit[0].ashore = ItemUse::worn;
    EXPECT_EQ(tied_in(plain)[0].mass_mg, 800'000);
}

TEST(Assignment, PutsTheContainerAndItsFoodOnOneBack) {
    test::PlainTrip plain = two_walk({within(party_thing("barrel", 2.0), "barrel"),
                                      within(thing("cup", 0.3), "barrel", "Ada"),
                                      within(thing("cup", 0.3), "barrel", "Bo"),
                                      within(thing("bedding", 6.0), "", "Ada")});
    plain.trip.food.piece = "barrel";
    plain.trip.food.ration_kg = 1.0;
    const Loads loads = loads_of(plain);
    // Ada has 6 kg of her own, so that the barrel goes to Bo.
    EXPECT_EQ(loads.item_bearer, (std::vector<std::size_t>{1, 1, 1, 0}));
    EXPECT_EQ(loads.stage_share[0], (std::vector<double>{0.0, 1.0}));
    const Plan plan = make_plan(plain.trip, plain.route);
    EXPECT_EQ(plan.legs[0].loads[0].parts.food_kg, 0.0);
    EXPECT_GT(plan.legs[0].loads[1].parts.food_kg, 1.0);
    EXPECT_NEAR(plan.legs[0].loads[1].parts.kit_kg, 2.6, 1e-9);
}

TEST(Assignment, LetsAnotherBearAnOwnContainerOnlyWhereALimitForcesIt) {
    test::PlainTrip plain = two_walk(
        {within(thing("pack", 1.5), "pack", "Ada"), within(party_thing("ropes", 10.0), "pack")});
    plain.trip.food.ration_kg = 0.1;
    EXPECT_EQ(loads_of(plain).item_bearer, (std::vector<std::size_t>{0, 0}));
    plain.trip.party[0].carry_limit_kg = 8.0; // 11.5 kg are too much for her, not for Bo
    EXPECT_EQ(loads_of(plain).item_bearer, (std::vector<std::size_t>{1, 1}));
    EXPECT_EQ(loads_of(plain).item_user, (std::vector<std::size_t>{0, 1}));
}

TEST(Assignment, NeverGivesAwayWhatIsOwnedAlone) {
    test::PlainTrip plain = two_walk({thing("armour", 18.0), party_thing("tent", 3.0)});
    plain.trip.party[0].carry_limit_kg = 8.0;
    EXPECT_EQ(loads_of(plain).item_bearer, (std::vector<std::size_t>{0, 1}));
}

/// Ada has 6 kg of her own and Bo 2: of F kg of food, its wrapping of a fifth in it, she takes 2 kg
/// less than half.
TEST(Assignment, SharesFoodByItsWeightInItsPackaging) {
    KitItem anvil = thing("anvil", 6.0);
    KitItem books = thing("books", 2.0);
    books.owner = "Bo";
    test::PlainTrip plain = two_walk({anvil, books});
    plain.trip.food.ration_kg = 3.0;
    plain.trip.food.packaging = 0.2;
    plain.trip.food.reserve_days = 0.0;
    plain.trip.fuel.boiled_l = 0.0;
    const Plan plan = make_plan(plain.trip, plain.route);
    const Stage& stage = plan.stages.at(0);
    ASSERT_GT(stage.food_kg, 4.5);
    EXPECT_NEAR(stage.bearer_share.at(0) * stage.food_kg, 0.5 * stage.food_kg - 2.0, 0.05);
    EXPECT_NEAR(stage.bearer_share.at(1) * stage.food_kg, 0.5 * stage.food_kg + 2.0, 0.05);
}

} // namespace
} // namespace tumpline::planner
