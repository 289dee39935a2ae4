#include "planner/results/volumes.h"

#include "planner/make_plan.h"
#include "tests/support/plain_trip.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <string>
#include <vector>

namespace tumpline::planner {
namespace {

using Names = std::vector<std::string>;

/// Ada alone, two days' walk with a night between; no boat, no fuel.
test::PlainTrip two_days() {
    test::PlainTrip plain = test::plain_trip({test::walk(10'000.0), test::walk(10'000.0)});
    test::add_place(plain, PlaceKind::camp, "Shelf", 10'000.0);
    plain.trip.days.nights = {"Shelf"};
    plain.trip.kit.clear();
    plain.trip.craft.clear();
    return plain;
}

KitItem of_litres(const std::string& name, double volume_l) {
    KitItem item = test::party_thing(name, 1.0);
    item.volume_l = volume_l;
    return item;
}

PackVolume pack_in(const test::PlainTrip& plain) {
    return make_plan(plain.trip, plain.route).volumes.packs.at(0);
}

/// Litres of food and water in the pack where most must go in.
double goods_l(const test::PlainTrip& plain) {
    const Plan plan = make_plan(plain.trip, plain.route);
    const Parts& parts = plan.legs.at(plan.volumes.packs.at(0).plan_leg.index()).loads[0].parts;
    return parts.food_kg * plain.trip.food.volume_l_per_kg.value_or(0.0) + parts.water_kg;
}

TEST(Volumes, AreLookedAtWhereTheyAreGivenOnly) {
    const test::PlainTrip plain = two_days();
    const Plan plan = make_plan(plain.trip, plain.route);
    EXPECT_TRUE(plan.volumes.packs.empty());
    EXPECT_FALSE(plan.volumes.container);
}

TEST(Volumes, OfAPackAreThoseOfTheThingsInItFoodAndWater) {
    test::PlainTrip plain = two_days();
    plain.trip.kit = {of_litres("tent", 8.0), of_litres("pots", 3.0)};
    plain.trip.kit[1].count = 2;
    plain.trip.food.volume_l_per_kg = 2.0;
    plain.trip.party[0].pack_volume_l = 60.0;
    const PackVolume pack = pack_in(plain);
    // 8 L and twice 3 L beside two litres for each kilogram of food and one for each of water.
    EXPECT_NEAR(pack.needs_l, 14.0 + goods_l(plain), 1e-9);
    EXPECT_EQ(pack.day, 1);
    EXPECT_TRUE(pack.fits());
    EXPECT_TRUE(pack.left_out.empty());
    EXPECT_TRUE(test::cautions_of(plain, "pack-too-small").empty());
}

TEST(Volumes, NameTheSmallestThingThatIsEnough) {
    test::PlainTrip plain = two_days();
    plain.trip.kit = {of_litres("sack", 20.0), of_litres("tent", 8.0), of_litres("pot", 2.0)};
    plain.trip.party[0].pack_volume_l = 29.0 + goods_l([&] {
                                            test::PlainTrip like = plain;
                                            like.trip.party[0].pack_volume_l = 60.0;
                                            return like;
                                        }());
    // 30 L of things into 29 L: the pot's 2 L are enough.
    PackVolume pack = pack_in(plain);
    EXPECT_EQ(pack.left_out, Names{"pot"});
    EXPECT_EQ(test::cautions_of(plain, "pack-too-small").size(), 1U);
    // 7 L too much: the tent. 21 L too much: the sack is not enough, the pot makes it so.
    *plain.trip.party[0].pack_volume_l -= 6.0;
    EXPECT_EQ(pack_in(plain).left_out, Names{"tent"});
    *plain.trip.party[0].pack_volume_l -= 14.0;
    EXPECT_EQ(pack_in(plain).left_out, (Names{"sack", "pot"}));
}

TEST(Volumes, ThatNobodyGaveAreNamed) {
    test::PlainTrip plain = two_days();
    plain.trip.kit = {test::party_thing("tent", 1.9)};
    plain.trip.party[0].pack_volume_l = 60.0;
    const PackVolume pack = pack_in(plain);
    EXPECT_NE(std::find(pack.unknown.begin(), pack.unknown.end(), "tent"), pack.unknown.end());
    EXPECT_NE(std::find(pack.unknown.begin(), pack.unknown.end(), "food"), pack.unknown.end());
    const Plan plan = make_plan(plain.trip, plain.route);
    EXPECT_TRUE(std::any_of(plan.verdict.unknown.begin(),
                            plan.verdict.unknown.end(),
                            [](const auto& one) { return one.code == "volume"; }));
}

TEST(Volumes, OfFoodShrinkNightByNight) {
    test::PlainTrip plain = two_days();
    plain.trip.food.ration_kg = 1.0;
    plain.trip.food.packaging = 0.0;
    plain.trip.food.reserve_days = 0.0;
    plain.trip.food.volume_l_per_kg = 2.0;
    plain.trip.food.container_l = 1e3;
    const auto container = [&] {
        return make_plan(plain.trip, plain.route).volumes.container.value();
    };
    const ContainerVolume wide = container();
    ASSERT_EQ(wide.nights.size(), 2U);
    EXPECT_EQ(wide.nights[0].day, 0);
    EXPECT_EQ(wide.nights[1].place, "Shelf");
    EXPECT_LT(wide.nights[1].food_kg, wide.nights[0].food_kg);
    EXPECT_NEAR(wide.nights[0].needs_l, 2.0 * wide.nights[0].food_kg, 1e-9);
    EXPECT_EQ(wide.fits_from_day, 0);
    // What is left after a day goes in, what one sets off with does not.
    plain.trip.food.container_l = 0.5 * (wide.nights[0].needs_l + wide.nights[1].needs_l);
    EXPECT_EQ(container().fits_from_day, 1);
    EXPECT_EQ(test::cautions_of(plain, "container-too-small").size(), 1U);
    plain.trip.food.container_l = 0.5 * wide.nights[1].needs_l;
    EXPECT_FALSE(container().fits_from_day);
}

TEST(Volumes, TheThingsInTheContainerTakeTheirPart) {
    test::PlainTrip plain = two_days();
    plain.trip.food.piece = "barrel";
    plain.trip.food.volume_l_per_kg = 2.0;
    plain.trip.food.container_l = 30.0;
    plain.trip.kit = {of_litres("barrel", 30.0), of_litres("pot", 3.0)};
    for (KitItem& item : plain.trip.kit)
        item.piece = "barrel";
    const ContainerVolume container = make_plan(plain.trip, plain.route).volumes.container.value();
    // The pot's 3 L and the food; the barrel does not lie in itself.
    EXPECT_NEAR(container.nights[0].needs_l, 3.0 + 2.0 * container.nights[0].food_kg, 1e-9);
}

} // namespace
} // namespace tumpline::planner
