#include "planner/make_plan.h"
#include "planner/plan.h"
#include "tests/support/plain_trip.h"
#include "tests/support/random_trip.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <numeric>

/// Boats and things that got wet are heavier until a dry night.
namespace tumpline::planner {
namespace {

using test::lake;
using test::plain_trip;
using test::PlainTrip;
using test::thing;
using test::walk;

constexpr double a_milligram_kg = 1e-6;

/// A walk, a lake, a walk, each of the last two from a camp.
PlainTrip over_a_lake() {
    PlainTrip plain = plain_trip({walk(2000.0), lake(3000.0), walk(2000.0), walk(3000.0)});
    plain.trip.craft[0].wet_fraction = 0.0;
    KitItem line = thing("throw line", 0.5);
    line.gets_wet = true;
    plain.trip.kit = {line, thing("tent", 2.0)};
    TripPlace camp;
    camp.name = "Dry shore";
    camp.at = plain.route.at(7000.0);
    plain.trip.route.places = {camp};
    plain.route.places = {{.name = camp.name,
                           .kind = PlaceKind::camp,
                           .at = *camp.at,
                           .along_m = 7000.0,
                           .off_m = 0.0,
                           .leg = 3,
                           .spec = 0}};
    plain.trip.days.nights = {camp.name};
    return plain;
}

double kit_kg(const Plan& plan, std::size_t leg) {
    return plan.legs.at(leg).loads.at(0).parts.kit_kg;
}

double wet_kg(const Plan& plan, Account to) {
    double sum_kg = 0.0;
    for (const Entry& entry : plan.ledger.entries)
        if (entry.part == Part::kit &&
            (entry.why == "wet from the water" || to == Account::dried) && entry.to == to)
            sum_kg += static_cast<double>(entry.mass_mg) / 1e6;
    return sum_kg;
}

TEST(WetThings, CarryTheirWaterFromTheLakeToADryNight) {
    const PlainTrip plain = over_a_lake();
    const Plan plan = make_plan(plain.trip, plain.route);
    ASSERT_EQ(plan.days.size(), 2U);
    ASSERT_EQ(plan.legs.size(), 4U);
    EXPECT_NEAR(kit_kg(plan, 0), 2.5, a_milligram_kg);
    EXPECT_NEAR(kit_kg(plan, 2), 2.75, a_milligram_kg) << "half of the line's mass is water";
    EXPECT_NEAR(kit_kg(plan, 3), 2.5, a_milligram_kg) << "dried in the night";
    EXPECT_NEAR(wet_kg(plan, Account::pack), 0.25, a_milligram_kg);
    EXPECT_NEAR(wet_kg(plan, Account::dried), 0.25, a_milligram_kg);
}

TEST(WetThings, StayWetWhereItRains) {
    PlainTrip plain = over_a_lake();
    plain.trip.weather.rain = true;
    const Plan plan = make_plan(plain.trip, plain.route);
    EXPECT_NEAR(kit_kg(plan, 3), 2.75, a_milligram_kg);
    EXPECT_EQ(wet_kg(plan, Account::dried), 0.0);
}

TEST(WetThings, TakeUpTheShareThatTheTripFileGives) {
    PlainTrip plain = over_a_lake();
    plain.trip.kit[0].gets_wet = false;
    plain.trip.kit[0].wet_fraction = 0.1;
    EXPECT_NEAR(kit_kg(make_plan(plain.trip, plain.route), 2), 2.55, a_milligram_kg);
    plain.trip.kit[0].count = 4;
    EXPECT_NEAR(kit_kg(make_plan(plain.trip, plain.route), 2), 2.0 + 4 * 0.55, a_milligram_kg);
    plain.trip.kit[0].wet_fraction = 0.0;
    EXPECT_NEAR(kit_kg(make_plan(plain.trip, plain.route), 2), 4.0, a_milligram_kg);
}

TEST(WetThings, TheDefaultShareIsListed) {
    const PlainTrip plain = over_a_lake();
    const Plan plan = make_plan(plain.trip, plain.route);
    const auto used = std::find_if(plan.defaults.begin(),
                                   plan.defaults.end(),
                                   [](const DefaultUsed& one) { return one.key == "/kit/0/wet"; });
    ASSERT_NE(used, plan.defaults.end());
    EXPECT_EQ(used->source, "UIAA101");
}

TEST(WetThings, StayAtHomeWithoutWater) {
    PlainTrip plain = over_a_lake();
    plain.trip.kit[0].bring = false;
    const Plan plan = make_plan(plain.trip, plain.route);
    EXPECT_NEAR(kit_kg(plan, 2), 2.0, a_milligram_kg);
    EXPECT_EQ(wet_kg(plan, Account::pack), 0.0);
}

TEST(WetThings, WornAshoreWeighOnTheBodyAndNotInThePack) {
    PlainTrip plain = over_a_lake();
    plain.trip.kit[0].ashore = ItemUse::worn; // boots
    plain.trip.kit[0].afloat = ItemUse::worn;
    const Plan plan = make_plan(plain.trip, plain.route);
    EXPECT_NEAR(kit_kg(plan, 2), 2.0, a_milligram_kg);
    EXPECT_NEAR(plan.legs[0].loads[0].worn_kg, 0.5, a_milligram_kg);
    EXPECT_NEAR(plan.legs[2].loads[0].worn_kg, 0.75, a_milligram_kg);
    EXPECT_NEAR(plan.legs[3].loads[0].worn_kg, 0.5, a_milligram_kg);
}

TEST(WetThings, LieWithTheirWaterInTheBoat) {
    PlainTrip plain = over_a_lake();
    plain.trip.weather.rain = true;
    plain.trip.craft[0].bags_l = {70.0, 70.0};
    const PlainTrip dry = plain;
    plain = plain_trip({walk(2000.0), lake(3000.0), walk(2000.0), lake(2000.0)});
    plain.trip.kit = dry.trip.kit;
    plain.trip.craft = dry.trip.craft;
    plain.trip.weather.rain = true;
    const Plan plan = make_plan(plain.trip, plain.route);
    const auto line_kg = [&](std::size_t leg) {
        const CraftLoad& boat = plan.legs.at(leg).craft.at(0);
        for (const auto* const bag : {&boat.left, &boat.right})
            for (const Stowed& one : *bag)
                if (one.what == "throw line")
                    return one.mass_kg;
        return 0.0;
    };
    EXPECT_NEAR(line_kg(1), 0.5, a_milligram_kg);
    EXPECT_NEAR(line_kg(3), 0.75, a_milligram_kg);
}

/// Whatever gets wet on whatever trip: bags hold what the packs hold, carries what there is to
/// carry, and every figure of weight is a sum over the ledger.
TEST(WetThings, BalanceOnAnyTrip) {
    int trips = 0;
    for (std::uint64_t seed = 1; seed <= 40; ++seed) {
        test::RandomTrip random = test::random_trip(seed);
        if (random.trip.craft.empty())
            continue;
        for (KitItem& item : random.trip.kit)
            item.wet_fraction = 0.3;
        const Plan plan = make_plan(random.trip, random.route);
        SCOPED_TRACE(seed);
        ++trips;
        for (const PlanLeg& leg : plan.legs) {
            double start_kg = 0.0, most_kg = 0.0;
            for (const MemberLoad& load : leg.loads) {
                EXPECT_NEAR(load.parts.sum_kg(), load.pack_max_kg, a_milligram_kg);
                start_kg += load.pack_start_kg;
                most_kg += load.pack_max_kg;
            }
            if (leg.travel != Travel::paddle)
                continue;
            double stowed_kg = 0.0;
            std::size_t seats = 0;
            for (std::size_t c = 0; c < leg.craft.size(); ++c) {
                seats += random.trip.craft[c].crew.size();
                stowed_kg += leg.craft[c].left_kg + leg.craft[c].right_kg + leg.craft[c].at_hand_kg;
            }
            if (seats == random.trip.party.size()) {
                EXPECT_GE(stowed_kg, start_kg - 1e-5) << leg.name;
                EXPECT_LE(stowed_kg, most_kg + 1e-5) << leg.name;
            }
        }
        const std::size_t steps = plan.ledger.entries.back().step + 1;
        for (std::size_t m = 0; m < random.trip.party.size(); ++m)
            for (const Account account : {Account::pack, Account::worn, Account::in_use})
                for (const Part part : {Part::kit, Part::craft})
                    EXPECT_GE(plan.ledger.balance_mg(m, account, part, steps), 0);
        // What the water gave is on the things still, or dried off them.
        std::int64_t came_mg = 0;
        for (const Entry& entry : plan.ledger.entries) {
            if (entry.part != Part::kit)
                continue;
            came_mg += entry.why == "wet from the water" ? entry.mass_mg : 0;
            came_mg -= entry.to == Account::dried ? entry.mass_mg : 0;
        }
        EXPECT_GE(came_mg, 0);
    }
    EXPECT_GT(trips, 10);
}

} // namespace
} // namespace tumpline::planner
