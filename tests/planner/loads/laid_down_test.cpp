/// What lies somewhere until it is fetched: which pass, which things, and what it does to packs.

#include "planner/loads/laid_down.h"

#include "geo/input_error.h"
#include "planner/make_plan.h"
#include "tests/support/out_and_back.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>
#include <cstdlib>
#include <set>
#include <string>

namespace tumpline::planner {
namespace {

using testing::ElementsAre;
using testing::IsEmpty;

std::vector<LaidDown> laid_in(const test::RandomTrip& made, const std::vector<DaySpan>& days) {
    const Prepared prepared = prepare(made.trip, made.route);
    return laid_down({made.trip, made.route, prepared.stretches, days, prepared.kit.brought});
}

/// Stretches 0, 1 and 2 between boundaries at 0, 2, 8 and 10 km; one day.
const std::vector<DaySpan> in_one_day{{.day = 1, .rest_day = false, .first = 0, .last = 3}};

test::RandomTrip without_hours(Travel middle = Travel::walk) {
    test::RandomTrip made = test::out_and_back(middle);
    made.trip.days.nights_auto = true; // no further cuts
    return made;
}

TEST(LaidDown, LiesFromItsPassToTheNext) {
    test::RandomTrip made = without_hours();
    made.trip.leaves = {test::at_col({"tent", "boat"})};
    const std::vector<LaidDown> laid = laid_in(made, in_one_day);
    ASSERT_EQ(laid.size(), 1U);
    EXPECT_EQ(laid[0].left_at, 1U);
    EXPECT_EQ(laid[0].fetched_at, 2U);
    EXPECT_THAT(laid[0].kit, ElementsAre(0U));
    EXPECT_THAT(laid[0].craft, ElementsAre(0U));
    for (std::size_t i = 0; i < 3; ++i) {
        EXPECT_EQ(with_party(laid, {Part::kit, 0}, i), i != 1) << i;
        EXPECT_EQ(with_party(laid, {Part::craft, 0}, i), i != 1) << i;
        EXPECT_TRUE(with_party(laid, {Part::kit, 2}, i)) << "the lamp is never left";
    }
}

TEST(LaidDown, IsLeftOnItsDayAndFetchedOnItsDay) {
    test::RandomTrip made = without_hours();
    made.trip.leaves = {test::at_col({"tent"})};
    made.trip.leaves[0].day = 2;
    made.trip.leaves[0].fetch_day = 3;
    // A night at Col on the way out and another at it on the way back: three days.
    const std::vector<DaySpan> days{{.day = 1, .rest_day = false, .first = 0, .last = 1},
                                    {.day = 2, .rest_day = false, .first = 1, .last = 2},
                                    {.day = 3, .rest_day = false, .first = 2, .last = 3}};
    EXPECT_EQ(laid_in(made, days)[0].left_at, 1U) << "on the morning of day 2";
    EXPECT_EQ(laid_in(made, days)[0].fetched_at, 2U);
    made.trip.leaves[0].day = 3; // at the second pass, after which there is none
    EXPECT_EQ(laid_in(made, days)[0].left_at, 2U);
    EXPECT_EQ(laid_in(made, days)[0].fetched_at, std::nullopt);
    made.trip.leaves[0].day = 4;
    EXPECT_EQ(laid_in(made, days)[0].left_at, std::nullopt);
    EXPECT_THAT(laid_in(made, days)[0].kit, IsEmpty());
}

TEST(LaidDown, MissesTheNightsBetween) {
    const LaidDown laid{.left_at = 1, .fetched_at = 4, .kit = {0}, .craft = {}};
    EXPECT_FALSE(laid.misses_night(1)) << "left after the night there";
    EXPECT_TRUE(laid.misses_night(2));
    EXPECT_TRUE(laid.misses_night(3));
    EXPECT_FALSE(laid.misses_night(4)) << "fetched before the night there";
}

TEST(LaidDown, AllButKeepsWhatIsNamedWornOrUsed) {
    test::RandomTrip made = without_hours();
    made.trip.leaves = {test::at_col({"lamp"})};
    made.trip.leaves[0].all_but = true;
    // The tent and the boat lie there; the poles are in hand, the lamp is named.
    EXPECT_THAT(laid_in(made, in_one_day)[0].kit, ElementsAre(0U));
    EXPECT_THAT(laid_in(made, in_one_day)[0].craft, ElementsAre(0U));
    test::RandomTrip afloat = without_hours(Travel::paddle);
    afloat.trip.leaves = made.trip.leaves;
    // The boat is needed; poles are used ashore only.
    EXPECT_THAT(laid_in(afloat, in_one_day)[0].kit, ElementsAre(0U, 1U));
    EXPECT_THAT(laid_in(afloat, in_one_day)[0].craft, IsEmpty());
}

TEST(LaidDown, TheSameThingIsNotLeftTwice) {
    test::RandomTrip made = without_hours();
    made.trip.leaves = {test::at_col({"tent"}), test::at_col({"lamp", "tent"})};
    const Prepared prepared = prepare(made.trip, made.route);
    const std::vector<LeftTwice> twice =
        left_twice({made.trip, made.route, prepared.stretches, in_one_day, prepared.kit.brought});
    ASSERT_EQ(twice.size(), 1U);
    EXPECT_EQ(twice[0].leave, 1U);
    EXPECT_EQ(twice[0].earlier, 0U);
    EXPECT_EQ(twice[0].thing, "tent");
    try {
        (void)make_plan(made.trip, made.route);
        FAIL() << "nothing was thrown";
    } catch (const geo::InputError& error) {
        ASSERT_EQ(error.problems().size(), 1U);
        EXPECT_EQ(error.problems()[0].place, "/leave/1");
    }
}

TEST(LaidDown, LightensThePacksByItsMassAndOnThatLegOnly) {
    const test::RandomTrip all = test::out_and_back();
    test::RandomTrip light = all;
    light.trip.leaves = {test::at_col({"tent", "boat"})};
    const Plan with = make_plan(all.trip, all.route);
    const Plan without = make_plan(light.trip, light.route);
    ASSERT_EQ(with.legs.size(), 3U);
    ASSERT_EQ(without.legs.size(), 3U);
    const double left_kg[] = {0.0, 1.9 + 3.0, 0.0};
    for (std::size_t i = 0; i < 3; ++i) {
        const MemberLoad& heavy = with.legs[i].loads[0];
        const MemberLoad& lighter = without.legs[i].loads[0];
        EXPECT_NEAR(heavy.pack_start_kg - lighter.pack_start_kg, left_kg[i], 1e-9) << i;
        EXPECT_NEAR(heavy.pack_end_kg - lighter.pack_end_kg, left_kg[i], 1e-9) << i;
        EXPECT_NEAR(heavy.pack_max_kg - lighter.pack_max_kg, left_kg[i], 1e-9) << i;
        EXPECT_NEAR(lighter.parts.sum_kg(), lighter.pack_max_kg, 1e-9) << i;
        EXPECT_EQ(heavy.worn_kg, lighter.worn_kg) << i;
    }
    EXPECT_EQ(with.totals.food_kg, without.totals.food_kg);
    // The tent is carried over 4 of 10 km.
    EXPECT_NEAR(with.items[0].carry_kg_km, 1.9 * 10.0, 1e-3);
    EXPECT_NEAR(without.items[0].carry_kg_km, 1.9 * 4.0, 1e-3);
    EXPECT_NEAR(without.items[2].carry_kg_km, 0.1 * 10.0, 1e-3);
}

TEST(LaidDown, IsNoPieceOfACarry) {
    test::RandomTrip made = test::out_and_back(Travel::portage);
    made.trip.leaves = {test::at_col({"tent", "boat"})};
    const Plan plan = make_plan(made.trip, made.route);
    std::set<std::string> names;
    double carried_kg = 0.0;
    for (const Carry& carry : plan.legs.at(1).loads.at(0).carries) {
        carried_kg += carry.pack_kg;
        for (const CarriedThing& piece : carry.pieces)
            names.insert(piece.what);
    }
    EXPECT_EQ(names.count("lamp"), 1U);
    EXPECT_EQ(names.count("tent"), 0U);
    EXPECT_EQ(names.count("boat"), 0U);
    made.trip.leaves.clear();
    const Plan whole = make_plan(made.trip, made.route);
    double all_kg = 0.0;
    for (const Carry& carry : whole.legs.at(1).loads.at(0).carries)
        all_kg += carry.pack_kg;
    EXPECT_NEAR(all_kg - carried_kg, 4.9, 1e-6); // 1.9 kg of tent and 3 of boat
}

/// A random trip with a place that it passes twice, at leg ends, where half of the things lie.
test::RandomTrip random_with_leaves(std::uint64_t seed) {
    test::RandomTrip made = test::random_trip(seed);
    const double along_m[] = {made.route.legs.front().to_m, made.route.legs.back().from_m};
    for (const double at_m : along_m) {
        made.route.places.push_back({.name = "Cairn",
                                     .kind = PlaceKind::exit,
                                     .at = made.route.at(at_m),
                                     .along_m = at_m,
                                     .off_m = 0.0,
                                     .leg = 1,
                                     .spec = made.trip.route.places.size()});
    }
    std::stable_sort(made.route.places.begin(),
                     made.route.places.end(),
                     [](const auto& a, const auto& b) { return a.along_m < b.along_m; });
    TripPlace spec;
    spec.name = "Cairn";
    spec.kind = PlaceKind::exit;
    made.trip.route.places.push_back(spec);
    Leave leave;
    leave.at = "Cairn";
    for (std::size_t k = seed % 2; k < made.trip.kit.size(); k += 2)
        leave.things.push_back(made.trip.kit[k].name);
    for (const Craft& craft : made.trip.craft)
        leave.things.push_back(craft.name);
    made.trip.leaves = {leave};
    return made;
}

/// What all accounts that hold things hold of kit and boats, with what has dried off.
std::int64_t things_mg(const Ledger& ledger, std::size_t members, std::size_t step) {
    std::int64_t sum_mg = 0;
    for (std::size_t m = 0; m < members; ++m)
        for (const Part part : {Part::kit, Part::craft})
            for (const Account account :
                 {Account::pack, Account::worn, Account::in_use, Account::laid_down})
                sum_mg += ledger.balance_mg(m, account, part, step);
    return sum_mg;
}

TEST(LaidDown, BooksOfRandomTripsBalanceToTheMilligram) {
    int with_leaves = 0;
    for (std::uint64_t seed = 1; seed <= 80; ++seed) {
        const test::RandomTrip made = random_with_leaves(seed);
        if (made.route.legs.size() < 3)
            continue;
        const Plan plan = make_plan(made.trip, made.route);
        const Ledger& ledger = plan.ledger;
        const std::size_t members = made.trip.party.size();
        const std::size_t steps = ledger.entries.back().step + 1;
        std::int64_t home_mg = 0;
        std::int64_t wet_mg = 0;
        for (const Entry& entry : ledger.entries) {
            if (entry.part != Part::kit && entry.part != Part::craft)
                continue;
            home_mg += entry.why == "packed at home" ? entry.mass_mg : 0;
            wet_mg += entry.why == "wet from the water" ? entry.mass_mg : 0;
            wet_mg -= entry.to == Account::dried ? entry.mass_mg : 0;
        }
        EXPECT_EQ(things_mg(ledger, members, steps), home_mg + wet_mg) << "seed " << seed;
        EXPECT_EQ(ledger.laid_down_mg(0, steps), 0) << "seed " << seed;
        for (std::size_t m = 0; m < members; ++m)
            for (const Part part : {Part::kit, Part::craft})
                for (const Account account :
                     {Account::pack, Account::worn, Account::in_use, Account::laid_down})
                    EXPECT_GE(ledger.balance_mg(m, account, part, steps), 0) << "seed " << seed;
        for (const PlanLeg& leg : plan.legs)
            for (const MemberLoad& load : leg.loads)
                EXPECT_NEAR(load.parts.sum_kg(), load.pack_max_kg, 1e-6) << "seed " << seed;
        for (const LaidThings& left : plan.left)
            with_leaves += left.mass_kg > 0.0 ? 1 : 0;
    }
    EXPECT_GT(with_leaves, 30);
}

} // namespace
} // namespace tumpline::planner
