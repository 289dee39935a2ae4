/// Remedies for packs over their limits, each tried by writing it into the trip.

#include "planner/decisions/remedies.h"

#include "planner/decisions/choices.h"
#include "planner/make_plan.h"
#include "planner/plan.h"
#include "planner/trip/kit_names.h"
#include "tests/support/plain_trip.h"
#include "tests/support/random_trip.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <string>

namespace tumpline::planner {
namespace {

using testing::ElementsAre;

bool overloaded(const Plan& plan) {
    return std::any_of(plan.cautions.begin(), plan.cautions.end(), [&](const Caution& caution) {
        return caution.code == "pack-over-limit" && caution.leg &&
               std::any_of(plan.legs.begin(), plan.legs.end(), [&](const PlanLeg& leg) {
                   return leg.leg == *caution.leg && leg.travel == Travel::walk;
               });
    });
}

/// Level ground, a limit of 10 kg, things of 4, 3 and 3.2 kg and little else.
test::PlainTrip too_heavy() {
    test::PlainTrip plain = test::plain_trip({test::walk(9000.0), test::walk(9000.0)});
    plain.trip.party[0].carry_limit_kg = 10.0;
    plain.trip.kit = {test::thing("tent", 4.0), test::thing("bag", 3.0), test::thing("pot", 3.2)};
    plain.trip.days.hours = 3.0;
    return plain;
}

TEST(Remedies, AreNoneWherePacksAreWithinTheirLimits) {
    test::PlainTrip plain = too_heavy();
    plain.trip.party[0].carry_limit_kg = 30.0;
    const Plan plan = make_plan_with_choices(plain.trip, plain.route);
    EXPECT_TRUE(plan.remedies.overloaded.empty());
    EXPECT_FALSE(plan.remedies.raise || plan.remedies.leave || plan.remedies.supply ||
                 plan.remedies.relay);
}

TEST(Remedies, SayWhoIsOverOnWhichDaysAndByHowMuch) {
    test::PlainTrip plain = too_heavy();
    const Plan plan = make_plan_with_choices(plain.trip, plain.route);
    ASSERT_EQ(plan.remedies.overloaded.size(), 1U);
    const Overloaded& ada = plan.remedies.overloaded.front();
    EXPECT_EQ(ada.member, "Ada");
    EXPECT_EQ(ada.limit_kg, 10.0);
    EXPECT_NEAR(ada.over_kg, ada.worst_kg - 10.0, 1e-12);
    EXPECT_EQ(ada.plan_leg, PlanLegNumber{1}) << "food and water are at their most at the start";
    ASSERT_TRUE(plan.remedies.raise);
    EXPECT_THAT(plan.remedies.raise->limits_kg,
                ElementsAre(testing::DoubleNear(ada.worst_kg, 1e-9)));
}

TEST(Remedies, NameThingsEachOfWhichAloneIsEnough) {
    test::PlainTrip plain = too_heavy();
    const Plan plan = make_plan_with_choices(plain.trip, plain.route);
    ASSERT_TRUE(plan.remedies.leave);
    EXPECT_FALSE(plan.remedies.leave->together);
    EXPECT_NEAR(plan.remedies.leave->mass_kg, plan.remedies.overloaded[0].over_kg, 1e-9);
    ASSERT_FALSE(plan.remedies.leave->things.empty());
    for (const std::string& name : plan.remedies.leave->things) {
        test::PlainTrip without = too_heavy();
        std::erase_if(without.trip.kit,
                      [&](const KitItem& item) { return name_with_owner(item) == name; });
        EXPECT_FALSE(overloaded(make_plan(without.trip, without.route))) << name;
    }
}

TEST(Remedies, NameThingsTogetherWhereNoneAloneIsEnough) {
    test::PlainTrip plain = too_heavy();
    plain.trip.party[0].carry_limit_kg = 7.0;
    const Plan plan = make_plan_with_choices(plain.trip, plain.route);
    ASSERT_TRUE(plan.remedies.leave);
    EXPECT_TRUE(plan.remedies.leave->together);
    EXPECT_GE(plan.remedies.leave->things.size(), 2U);
    std::erase_if(plain.trip.kit, [&](const KitItem& item) {
        return std::count(plan.remedies.leave->things.begin(),
                          plan.remedies.leave->things.end(),
                          name_with_owner(item)) > 0;
    });
    EXPECT_FALSE(overloaded(make_plan(plain.trip, plain.route)));
}

TEST(Remedies, NameTheOwnerAndLeaveNothingThatIsNeeded) {
    test::PlainTrip plain = too_heavy();
    const auto things = [&] {
        const Plan plan = make_plan_with_choices(plain.trip, plain.route);
        return plan.remedies.leave ? plan.remedies.leave->things : std::vector<std::string>();
    };
    EXPECT_THAT(things(), testing::Contains("Ada's pot"));
    plain.trip.kit[2].must = true;
    EXPECT_THAT(things(), testing::Not(testing::Contains("Ada's pot")));
    plain.trip.kit[2].must = false;
    plain.trip.kit[2].is = SafetyGear::first_aid;
    EXPECT_THAT(things(), testing::Not(testing::Contains("Ada's pot")));
    plain.trip.kit[2].is = {};
    plain.trip.weather.low_c = -5.0;
    plain.trip.kit[2].when.resize(1);
    plain.trip.kit[2].when[0].night_below_c = 0.0; // a cold night asks for it
    EXPECT_THAT(things(), testing::Not(testing::Contains("Ada's pot")));
}

TEST(Remedies, RelayIsThreeTimesTheWayAtTheTimesOfHalfAPack) {
    test::PlainTrip plain = test::plain_trip({test::walk(6000.0)});
    plain.trip.party[0].carry_limit_kg = 10.0;
    plain.trip.kit = {test::thing("tent", 6.0), test::thing("bag", 6.0)};
    plain.trip.food.ration_kg = 0.0;
    plain.trip.food.reserve_days = 0.0;
    plain.trip.fuel.boiled_l = 0.0;
    plain.trip.fuel.container_kg = 0.0;
    plain.trip.water = {.walking_lps = 0.0,
                        .paddling_lps = 0.0,
                        .camp_l = 0.0,
                        .capacity_l = 1.0,
                        .reserve_l = 0.0};
    const Plan plan = make_plan_with_choices(plain.trip, plain.route);
    ASSERT_TRUE(plan.remedies.relay);
    EXPECT_NEAR(plan.remedies.relay->more_on_foot_m, 12e3, 1e-6);
    EXPECT_TRUE(plan.remedies.relay->enough);
    EXPECT_NEAR(plan.remedies.relay->heaviest_of_limit, 0.6, 1e-9);
    // The same from plans of one walk with half the pack and of one with none.
    const auto moving_s = [&](double kg) {
        test::PlainTrip one = plain;
        one.trip.party[0].carry_limit_kg = 50.0;
        one.trip.kit = {test::thing("load", kg)};
        return make_plan(one.trip, one.route).totals.moving_s;
    };
    EXPECT_NEAR(plan.remedies.relay->more_s,
                2.0 * moving_s(6.0) + moving_s(0.0) - plan.totals.moving_s,
                0.5);
}

TEST(Remedies, OfRandomTripsDoWhatTheySay) {
    int raised = 0, left = 0, supplied = 0;
    for (std::uint64_t seed = 1; seed <= 100; ++seed) {
        SCOPED_TRACE(testing::Message() << "seed " << seed);
        test::RandomTrip random = test::random_trip(seed);
        for (KitItem& item : random.trip.kit) // what a condition asks for is never left
            item.when.clear();
        const Plan plan = make_plan_with_choices(random.trip, random.route);
        EXPECT_EQ(plan.remedies.overloaded.empty(), !overloaded(plan));
        if (plan.remedies.overloaded.empty())
            continue;
        Trip trip = random.trip;
        for (std::size_t m = 0; m < trip.party.size(); ++m)
            trip.party[m].carry_limit_kg = plan.remedies.raise->limits_kg[m];
        if (!trip.days.nights_auto) { // which may choose other nights under other limits
            EXPECT_FALSE(overloaded(make_plan(trip, random.route)));
            ++raised;
        }
        if (plan.remedies.leave && !plan.remedies.leave->things.empty() && !trip.days.nights_auto &&
            !trip.days.nights.empty()) {
            trip = random.trip;
            for (KitItem& item : trip.kit)
                if (plan.remedies.leave->together
                        ? std::count(plan.remedies.leave->things.begin(),
                                     plan.remedies.leave->things.end(),
                                     name_with_owner(item)) > 0
                        : name_with_owner(item) == plan.remedies.leave->things.front())
                    item.bring = false;
            EXPECT_FALSE(overloaded(make_plan(trip, random.route)));
            ++left;
        }
        if (plan.remedies.supply) {
            EXPECT_LT(plan.remedies.supply->heaviest_of_limit, plan.remedies.raise->factor);
            ++supplied;
        }
    }
    EXPECT_GT(raised, 5);
    EXPECT_GT(left, 0);
    EXPECT_GT(supplied, 0);
}

} // namespace
} // namespace tumpline::planner
