/// Bags levelled against trying every way, and what lies where as food goes.

#include "planner/results/bag_trim.h"

#include "planner/make_plan.h"
#include "planner/plan.h"
#include "tests/support/plain_trip.h"
#include "tests/support/random_draws.h"
#include "tests/support/random_trip.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <numeric>
#include <optional>
#include <string>
#include <vector>

namespace tumpline::planner {
namespace {

struct Sides {
    double left = 0.0, right = 0.0;

    [[nodiscard]] double apart() const { return std::abs(left - right); }
};

Sides masses(const std::vector<BagItem>& items, const std::vector<bool>& right) {
    Sides sides;
    for (std::size_t k = 0; k < items.size(); ++k)
        (right[k] ? sides.right : sides.left) += items[k].mass_kg;
    return sides;
}

Sides volumes_of(const std::vector<BagItem>& items, const std::vector<bool>& right) {
    Sides sides;
    for (std::size_t k = 0; k < items.size(); ++k)
        (right[k] ? sides.right : sides.left) += items[k].volume_l;
    return sides;
}

/// The most level of all ways that fit; HUGE_VAL if none does.
double least_apart(const std::vector<BagItem>& items, const BagVolumes& volumes) {
    double least = HUGE_VAL;
    for (std::uint32_t set = 0; set < (std::uint32_t{1} << items.size()); ++set) {
        std::vector<bool> right;
        for (std::size_t k = 0; k < items.size(); ++k)
            right.push_back((set >> k & 1U) != 0);
        const Sides litres = volumes_of(items, right);
        if ((volumes.left_l > 0.0 && litres.left > volumes.left_l + 1e-9) ||
            (volumes.right_l > 0.0 && litres.right > volumes.right_l + 1e-9))
            continue;
        least = std::min(least, masses(items, right).apart());
    }
    return least;
}

/// Free, 5 + 1 lie against 3 + 2, or 5 against 3 + 2 + 1. With 5 and 3 both in the left bag the
/// best is 8 against 3.
TEST(LevelBags, KeepAThingInTheBagThatIsGiven) {
    std::vector<BagItem> items{{5.0, 0.0}, {3.0, 0.0}, {2.0, 0.0}, {1.0, 0.0}};
    EXPECT_NEAR(masses(items, level_bags(items, {0.0, 0.0}).right).apart(), 1.0, 1e-9);
    items[0].bag = BagSide::left;
    items[1].bag = BagSide::left;
    const Levelled level = level_bags(items, {0.0, 0.0});
    ASSERT_EQ(level.right.size(), 4U);
    EXPECT_FALSE(level.right[0]);
    EXPECT_FALSE(level.right[1]);
    EXPECT_NEAR(masses(items, level.right).left, 8.0, 1e-9);
    EXPECT_NEAR(masses(items, level.right).right, 3.0, 1e-9);
    items[0].bag = BagSide::right;
    const Levelled apart = level_bags(items, {0.0, 0.0});
    EXPECT_TRUE(apart.right[0]);
    EXPECT_FALSE(apart.right[1]);
}

TEST(LevelBags, AreAsLevelAsTheBestOfAllWays) {
    test::Draws draws(7);
    int tight = 0, none = 0;
    for (int round = 0; round < 400; ++round) {
        SCOPED_TRACE(testing::Message() << "round " << round);
        std::vector<BagItem> items(static_cast<std::size_t>(draws.whole(0, 12)));
        double litres = 0.0;
        for (BagItem& item : items) {
            item = {.mass_kg = draws.in_steps(0.05, 4.0), .volume_l = draws.in_steps(0.0, 12.0)};
            litres += item.volume_l;
        }
        BagVolumes volumes{0.0, 0.0};
        if (draws.chance(0.6)) // from ample to too small
            volumes = {.left_l = 1.0 + litres * draws.between(0.3, 0.8),
                       .right_l = 1.0 + litres * draws.between(0.3, 0.8)};
        const Levelled levelled = level_bags(items, volumes);
        ASSERT_EQ(levelled.right.size(), items.size());
        const double least = least_apart(items, volumes);
        EXPECT_EQ(levelled.fits_volume, std::isfinite(least));
        EXPECT_TRUE(levelled.proven);
        if (!std::isfinite(least)) {
            ++none;
            continue;
        }
        // Ten grams more than the least are level.
        EXPECT_LE(masses(items, levelled.right).apart(), least + 10e-3 + 1e-9);
        const Sides used = volumes_of(items, levelled.right);
        if (volumes.left_l > 0.0) {
            EXPECT_LE(used.left, volumes.left_l + 1e-9);
            EXPECT_LE(used.right, volumes.right_l + 1e-9);
            ++tight;
        }
    }
    EXPECT_GT(tight, 50);
    EXPECT_GT(none, 10);
}

TEST(LevelBags, OfFortyThingsAreMoreLevelThanAnybodyPacks) {
    test::Draws draws(11);
    for (int round = 0; round < 20; ++round) {
        std::vector<BagItem> items(40);
        for (BagItem& item : items)
            item = {.mass_kg = draws.between(0.05, 2.0), .volume_l = 0.0};
        const Levelled levelled = level_bags(items, {0.0, 0.0});
        EXPECT_TRUE(levelled.proven);
        EXPECT_LE(masses(items, levelled.right).apart(), 10e-3 + 1e-9);
    }
}

TEST(LevelBags, OfFortyThingsThatCannotBeLevelledSayHowNearTheyCome) {
    // One thing outweighs all others together: nothing can be done, and the search sees it.
    std::vector<BagItem> items(39, {.mass_kg = 0.1, .volume_l = 0.0});
    items.push_back({.mass_kg = 10.0, .volume_l = 0.0});
    const Levelled levelled = level_bags(items, {0.0, 0.0});
    EXPECT_TRUE(levelled.proven);
    EXPECT_NEAR(masses(items, levelled.right).apart(), 10.0 - 3.9, 1e-9);
}

TEST(LevelBags, OfThingsInHectogramsKnowThatAHectogramIsTheLeast) {
    // The sum is odd, so no way is nearer than 100 g; the search alone would look for one for ever.
    test::Draws draws(5);
    for (int round = 0; round < 10; ++round) {
        std::vector<BagItem> items(40);
        int hectograms = 0;
        for (BagItem& item : items) {
            const int mass_hg = draws.whole(1, 30);
            hectograms += mass_hg;
            item = {.mass_kg = 0.1 * mass_hg, .volume_l = 2.5};
        }
        if (hectograms % 2 == 0)
            items.front().mass_kg += 0.1;
        const Levelled levelled = level_bags(items, {.left_l = 52.0, .right_l = 52.0});
        EXPECT_TRUE(levelled.proven);
        EXPECT_TRUE(levelled.fits_volume);
        EXPECT_NEAR(masses(items, levelled.right).apart(), 0.1, 1e-9);
        const Sides used = volumes_of(items, levelled.right);
        EXPECT_LE(std::max(used.left, used.right), 52.0);
    }
}

TEST(LevelBags, OfVeryManyThingsAreLevelWithoutSearchingForEver) {
    // 5 000 things in each of which the search goes one step deeper.
    std::vector<BagItem> items;
    for (int k = 0; k < 5'000; ++k)
        items.push_back({.mass_kg = 0.001 * (1 + k % 7), .volume_l = 0.01});
    // 714 times 1 to 7 g and once 1 and 2 g: 714 * 28 + 3 = 19 995 g, so a gram apart is the least,
    // and every difference is odd.
    const Levelled levelled = level_bags(items, {.left_l = 26.0, .right_l = 26.0});
    EXPECT_TRUE(levelled.proven);
    EXPECT_TRUE(levelled.fits_volume);
    EXPECT_LE(masses(items, levelled.right).apart(), 0.011 + 1e-6);
}

TEST(LevelBags, ThatTheVolumesBarAreLevelByMassAndSaySo) {
    // Three sacks of 30 l and two bags of 40 l: no bag takes two. By mass alone 5 kg against
    // 3 + 2 kg.
    const std::vector<BagItem> items{{5.0, 30.0}, {3.0, 30.0}, {2.0, 30.0}};
    const Levelled levelled = level_bags(items, {.left_l = 40.0, .right_l = 40.0});
    EXPECT_FALSE(levelled.fits_volume);
    EXPECT_TRUE(levelled.proven) << "that nothing fits";
    EXPECT_EQ(levelled.right, (std::vector<bool>{false, true, true}));
}

double sum_kg(const std::vector<Stowed>& things, const std::string& what = {}) {
    double sum = 0.0;
    for (const Stowed& thing : things)
        sum += what.empty() || thing.what == what ? thing.mass_kg : 0.0;
    return sum;
}

TEST(Trim, HoldsTheGoodsOfTheCrewAndKeepsAtHandWhatMustBe) {
    int craft_legs = 0, at_hand = 0, lighter = 0;
    for (std::uint64_t seed = 1; seed <= 120; ++seed) {
        SCOPED_TRACE(testing::Message() << "seed " << seed);
        const test::RandomTrip random = test::random_trip(seed);
        const Plan plan = make_plan(random.trip, random.route);
        for (const Craft& craft : random.trip.craft) {
            double food_before_kg = HUGE_VAL;
            bool supplied = false;
            for (const PlanLeg& leg : plan.legs) {
                supplied =
                    supplied ||
                    std::any_of(plan.events.begin(), plan.events.end(), [&](const Event& event) {
                        return event.kind == EventKind::resupply || event.kind == EventKind::cache;
                    });
                const auto load =
                    std::find_if(leg.craft.begin(), leg.craft.end(), [&](const CraftLoad& one) {
                        return one.craft == craft.name;
                    });
                if (load == leg.craft.end())
                    continue;
                ++craft_legs;
                double start_kg = 0.0, most_kg = 0.0;
                for (const MemberLoad& member : leg.loads)
                    if (std::find(craft.crew.begin(), craft.crew.end(), member.member) !=
                        craft.crew.end()) {
                        start_kg += member.pack_start_kg;
                        most_kg += member.pack_max_kg;
                    }
                // At the leg's heaviest moment, which is the start's or one further on.
                const double goods_kg = load->left_kg + load->right_kg + load->at_hand_kg;
                EXPECT_GE(goods_kg, start_kg - 1e-4);
                EXPECT_LE(goods_kg, most_kg + 1e-4);
                for (const KitItem& item : random.trip.kit) {
                    if (!item.at_hand || !item.piece.empty())
                        continue;
                    EXPECT_EQ(sum_kg(load->left, item.name) + sum_kg(load->right, item.name), 0.0);
                    at_hand += sum_kg(load->at_hand, item.name) > 0.0 ? 1 : 0;
                }
                const double bottles_kg = 1.0 * static_cast<double>(craft.crew.size());
                EXPECT_LE(sum_kg(load->at_hand, "water"), bottles_kg + 1e-6);
                // Redone as food goes: what the bags hold of it shrinks from leg to leg.
                const double food_kg = sum_kg(load->left, "food") + sum_kg(load->right, "food");
                if (!supplied) {
                    EXPECT_LE(food_kg, food_before_kg + 1e-6);
                    lighter += food_kg < food_before_kg - 0.1 && food_before_kg < 1e6 ? 1 : 0;
                }
                food_before_kg = food_kg;
            }
        }
    }
    EXPECT_GT(craft_legs, 100);
    EXPECT_GT(at_hand, 10);
    EXPECT_GT(lighter, 10);
}

TEST(Trim, LaysACraftDeeperByItsGoodsOverItsWaterplane) {
    for (std::uint64_t seed = 1;; ++seed) {
        test::RandomTrip random = test::random_trip(seed);
        if (random.trip.craft.empty())
            continue;
        random.trip.craft[0].waterplane_m2 = 2.0;
        const Plan plan = make_plan(random.trip, random.route);
        const auto afloat = std::find_if(plan.legs.begin(),
                                         plan.legs.end(),
                                         [](const PlanLeg& leg) { return !leg.craft.empty(); });
        ASSERT_NE(afloat, plan.legs.end());
        const CraftLoad& load = afloat->craft[0];
        ASSERT_TRUE(load.draft_change_m);
        // Archimedes: a kilogram displaces a litre, a litre over 2 m2 is half a millimetre.
        EXPECT_NEAR(
            *load.draft_change_m, (load.left_kg + load.right_kg + load.at_hand_kg) * 0.0005, 1e-6);
        EXPECT_FALSE(load.freeboard_m) << "nobody said what it is without goods";
        return;
    }
}

TEST(Trim, TakesWhatALoadSinksFromTheFreeboardAndSaysWhereItIsLow) {
    test::PlainTrip plain = test::plain_trip({test::lake(3000.0)});
    plain.trip.craft[0].waterplane_m2 = 1.0;
    plain.trip.craft[0].freeboard_m = 0.20;
    const auto said = [](const Plan& plan) {
        for (const Caution& caution : plan.cautions)
            if (caution.code == "low-freeboard")
                return std::optional(caution.level);
        return std::optional<Level>();
    };
    const auto with_kg = [&](double mass_kg) {
        plain.trip.kit = {test::thing("sack", mass_kg)};
        return make_plan(plain.trip, plain.route);
    };
    const Plan light = with_kg(20.0);
    const CraftLoad& load = light.legs.at(0).craft.at(0);
    ASSERT_TRUE(load.freeboard_m);
    // A kilogram over a square metre is a millimetre.
    EXPECT_NEAR(
        *load.freeboard_m, 0.20 - 0.001 * (load.left_kg + load.right_kg + load.at_hand_kg), 1e-6);
    EXPECT_FALSE(said(light));
    EXPECT_EQ(said(with_kg(60.0)), Level::caution);
    EXPECT_EQ(said(with_kg(230.0)), Level::stop);
}

TEST(Trim, SumsWhatIsSaidToLieAtTheEnds) {
    test::PlainTrip plain = test::plain_trip({test::lake(3000.0)});
    plain.trip.kit = {
        test::thing("barrel", 6.0), test::thing("sack", 4.0), test::thing("mat", 1.0)};
    EXPECT_FALSE(make_plan(plain.trip, plain.route).legs.at(0).craft.at(0).ends);
    plain.trip.kit[0].lies = BoatEnd::stern;
    plain.trip.kit[1].lies = BoatEnd::bow;
    plain.trip.kit[1].at_hand = true;
    plain.trip.kit[2].piece = "barrel"; // lies with it
    plain.trip.kit[0].piece = "barrel";
    const Plan plan = make_plan(plain.trip, plain.route);
    const std::optional<EndsLoad>& ends = plan.legs.at(0).craft.at(0).ends;
    ASSERT_TRUE(ends);
    EXPECT_NEAR(ends->stern_kg, 7.0, 1e-9);
    EXPECT_NEAR(ends->bow_kg, 4.0, 1e-9);
    ASSERT_EQ(ends->stern.size(), 1U);
    EXPECT_EQ(ends->stern[0].what, "barrel");
}

} // namespace
} // namespace tumpline::planner
