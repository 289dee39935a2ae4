#include "planner/make_plan.h"
#include "planner/plan.h"
#include "planner/solution/fixed_point.h"
#include "planner/trip/timetable.h"
#include "tests/support/random_trip.h"

#include <fmt/format.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <cstdlib>
#include <numeric>
#include <string>

namespace tumpline::planner {
namespace {

constexpr double a_milligram_kg = 1e-6;

/// Seeds of the random trips: TUMPLINE_SEED sets the first, so that a failure can be repeated.
std::uint64_t first_seed() {
    const char* text = std::getenv("TUMPLINE_SEED");
    return text ? std::strtoull(text, nullptr, 10) : 1;
}

class RandomPlans : public testing::TestWithParam<int> {
  protected:
    [[nodiscard]] std::uint64_t seed() const {
        return first_seed() + static_cast<std::uint64_t>(GetParam());
    }
};

INSTANTIATE_TEST_SUITE_P(Seeds, RandomPlans, testing::Range(0, 60));

/// Mass that came to a member's accounts on a day, less what left them, by ledger entries in which
/// the other side is not the party's.
std::int64_t net_mg(const Plan& plan, std::size_t member, int day) {
    const auto ours = [](Account account) {
        return account == Account::pack || account == Account::worn || account == Account::in_use;
    };
    std::int64_t sum = 0;
    for (const Entry& entry : plan.ledger.entries) {
        if (entry.member != member || entry.day != day || entry.why == "packed at home")
            continue;
        // Water on what is worn or in hand ashore is never in the pack.
        if (entry.part == Part::kit && plan.trip.kit[entry.item].ashore != ItemUse::packed)
            continue;
        // Out of another's pack to be worn afloat, and back: as packed ashore nothing moves.
        if (entry.why == "boots to boat" || entry.why == "boat to boots")
            continue;
        if (ours(entry.to) && !ours(entry.from))
            sum += entry.mass_mg;
        if (ours(entry.from) && !ours(entry.to))
            sum -= entry.mass_mg;
    }
    return sum;
}

TEST_P(RandomPlans, BooksBalanceForEveryMemberAndDay) {
    const test::RandomTrip random = test::random_trip(seed());
    const Plan plan = make_plan(random.trip, random.route);
    for (const PlanDay& day : plan.days) {
        for (std::size_t m = 0; m < day.members.size(); ++m) {
            const double moved_kg = static_cast<double>(net_mg(plan, m, day.day)) / 1e6;
            EXPECT_NEAR(
                day.members[m].pack_end_kg - day.members[m].pack_start_kg, moved_kg, a_milligram_kg)
                << "seed " << seed() << " day " << day.day << " member " << m;
        }
    }
}

/// Every trip waits for one night at least: for a bus at four in the morning.
TEST_P(RandomPlans, BooksBalanceOverDaysOfWaiting) {
    test::RandomTrip random = test::random_trip(seed());
    random.trip.connections = {{.what = "bus",
                                .place = "the end",
                                .to_start = false,
                                .times = {read_timetable_hour("daily 04:00").hour.value()},
                                .margin = {}}};
    const Plan plan = make_plan(random.trip, random.route);
    ASSERT_EQ(plan.days.back().waiting_for, "bus") << "seed " << seed();
    for (const PlanDay& day : plan.days)
        for (std::size_t m = 0; m < day.members.size(); ++m)
            EXPECT_NEAR(day.members[m].pack_end_kg - day.members[m].pack_start_kg,
                        static_cast<double>(net_mg(plan, m, day.day)) / 1e6,
                        a_milligram_kg)
                << "seed " << seed() << " day " << day.day << " member " << m;
}

TEST_P(RandomPlans, NothingChangesInTheNight) {
    const test::RandomTrip random = test::random_trip(seed());
    const Plan plan = make_plan(random.trip, random.route);
    for (std::size_t d = 1; d < plan.days.size(); ++d)
        for (std::size_t m = 0; m < plan.days[d].members.size(); ++m)
            EXPECT_NEAR(plan.days[d].members[m].pack_start_kg,
                        plan.days[d - 1].members[m].pack_end_kg,
                        a_milligram_kg)
                << "seed " << seed();
}

TEST_P(RandomPlans, AccountsAreNeverOverdrawnAndEverythingPlannedIsEaten) {
    const test::RandomTrip random = test::random_trip(seed());
    const Plan plan = make_plan(random.trip, random.route);
    const std::size_t steps = plan.ledger.entries.empty() ? 0 : plan.ledger.entries.back().step + 1;
    std::int64_t eaten_mg = 0;
    for (const Entry& entry : plan.ledger.entries)
        if (entry.to == Account::eaten)
            eaten_mg += entry.mass_mg;
    double planned_kg = 0.0;
    for (const PlanDay& day : plan.days)
        planned_kg += day.food_kg;
    EXPECT_NEAR(static_cast<double>(eaten_mg) / 1e6, planned_kg, 1e-4) << "seed " << seed();
    for (std::size_t m = 0; m < plan.trip.party.size(); ++m)
        for (const Part part :
             {Part::kit, Part::craft, Part::food, Part::fuel, Part::water, Part::waste})
            for (const Account account : {Account::pack, Account::worn, Account::in_use})
                EXPECT_GE(plan.ledger.balance_mg(m, account, part, steps), 0) << "seed " << seed();
}

TEST_P(RandomPlans, PartsSumToTheHeaviestPackAndCarriesHoldEverything) {
    const test::RandomTrip random = test::random_trip(seed());
    const Plan plan = make_plan(random.trip, random.route);
    for (const PlanLeg& leg : plan.legs) {
        for (const MemberLoad& load : leg.loads) {
            EXPECT_NEAR(load.parts.sum_kg(), load.pack_max_kg, a_milligram_kg) << "seed " << seed();
            EXPECT_GE(load.pack_max_kg, load.pack_start_kg - a_milligram_kg);
            EXPECT_TRUE(std::isfinite(load.energy_j));
        }
    }
}

TEST_P(RandomPlans, TheFixedPointDoesNotDependOnWhereItStarts) {
    const test::RandomTrip random = test::random_trip(seed());
    const Prepared prepared = prepare(random.trip, random.route);
    SolveOptions options;
    if (!random.trip.days.nights.empty())
        options.nights = listed_nights(prepared);
    const Solved light = solve(prepared, options);
    options.guess = FirstGuess::full_limits;
    const Solved heavy = solve(prepared, options);
    if (!light.converged.settled || !heavy.converged.settled)
        GTEST_SKIP() << "choices flip for seed " << seed() << "; the safer one is kept";
    ASSERT_EQ(light.nights, heavy.nights) << "seed " << seed();
    EXPECT_LT(light.converged.largest_change_kg, 1e-3) << "seed " << seed();
    for (std::size_t i = 0; i < light.loads.stretches.size(); ++i) {
        for (std::size_t m = 0; m < light.loads.stretches[i].start_kg.size(); ++m) {
            EXPECT_NEAR(
                light.loads.stretches[i].start_kg[m], heavy.loads.stretches[i].start_kg[m], 1e-3)
                << "seed " << seed() << " stretch " << i;
            EXPECT_NEAR(
                light.loads.stretches[i].end_kg[m], heavy.loads.stretches[i].end_kg[m], 1e-3)
                << "seed " << seed() << " stretch " << i;
        }
        EXPECT_NEAR(light.timeline.stretches[i].end_s, heavy.timeline.stretches[i].end_s, 1.0)
            << "seed " << seed() << " stretch " << i;
        EXPECT_EQ(light.timeline.stretches[i].day, heavy.timeline.stretches[i].day);
        ASSERT_EQ(light.loads.portages[i].has_value(), heavy.loads.portages[i].has_value());
        if (light.loads.portages[i]) {
            EXPECT_EQ(light.loads.portages[i]->relay.carries,
                      heavy.loads.portages[i]->relay.carries)
                << "seed " << seed() << " stretch " << i;
            EXPECT_EQ(light.loads.portages[i]->boats, heavy.loads.portages[i]->boats);
        }
    }
}

TEST_P(RandomPlans, MoreKitIsNeverFaster) {
    test::RandomTrip random = test::random_trip(seed());
    const auto walking_s = [&](const Plan& plan) {
        double sum_s = 0.0;
        for (const PlanLeg& leg : plan.legs)
            if (leg.travel == Travel::walk)
                sum_s += leg.moving_s;
        return sum_s;
    };
    const double before_s = walking_s(make_plan(random.trip, random.route));
    for (const Member& member : random.trip.party) {
        KitItem ballast;
        ballast.name = "ballast of " + member.name;
        ballast.mass_kg = 1.0;
        ballast.owner = member.name;
        random.trip.kit.push_back(ballast);
    }
    EXPECT_GE(walking_s(make_plan(random.trip, random.route)), before_s - 0.5) << "seed " << seed();
}

/// The route with its first long walk or paddle cut in two legs of the same kind.
Route cut_in_two(const Route& route) {
    Route cut = route;
    for (std::size_t i = 0; i < route.legs.size(); ++i) {
        const RouteLeg& whole = route.legs[i];
        const double length_m = whole.to_m - whole.from_m;
        if (whole.travel == Travel::portage || length_m < 3000.0 ||
            whole.spec.scouts.value_or(0) > 0 || whole.spec.river_class.value_or(0) > 1)
            continue;
        // Between two of its steps, so that both halves keep the slopes of the whole.
        const double step_m = whole.profile.step_m > 0.0 ? whole.profile.step_m : 0.5 * length_m;
        const double half_m = step_m * std::round(0.5 * length_m / step_m);
        RouteLeg first = whole;
        RouteLeg second = whole;
        first.line = whole.line.cut(0.0, half_m);
        first.profile = geo::cut(whole.profile, 0.0, half_m);
        first.to_m = whole.from_m + half_m;
        second.line = whole.line.cut(half_m, length_m);
        second.profile = geo::cut(whole.profile, half_m, length_m);
        second.from_m = first.to_m;
        cut.legs[i] = first;
        cut.legs.insert(cut.legs.begin() + static_cast<std::ptrdiff_t>(i) + 1, second);
        return cut;
    }
    return cut;
}

void add_place(test::RandomTrip& random, const RoutePlace& place) {
    TripPlace spec;
    spec.name = place.name;
    spec.kind = place.kind;
    spec.at = place.at;
    RoutePlace on_route = place;
    on_route.spec = random.trip.route.places.size();
    random.trip.route.places.push_back(spec);
    random.route.places.insert(std::upper_bound(random.route.places.begin(),
                                                random.route.places.end(),
                                                place,
                                                [](const RoutePlace& a, const RoutePlace& b) {
                                                    return a.along_m < b.along_m;
                                                }),
                               on_route);
}

/// Names what the end of a leg would stand for if nothing were named: a source of water at the end
/// of every leg, and a camp where each night falls. A leg cut in two then offers no new ones.
void name_ends_of_legs(test::RandomTrip& random) {
    const Plan plan = make_plan(random.trip, random.route);
    const auto named = [&](PlaceKind kind, const std::string& name, double along_m) {
        add_place(random,
                  {.name = name, .kind = kind, .at = random.route.at(along_m), .along_m = along_m});
    };
    for (std::size_t i = 0; i < random.route.legs.size(); ++i)
        named(PlaceKind::water, fmt::format("spring {}", i), random.route.legs[i].to_m);
    if (!random.trip.days.nights.empty() || random.trip.days.nights_auto)
        return;
    random.trip.days.hours = 24.0; // the last day may be as long as it is
    random.trip.days.hours_limit.reset();
    for (const PlanDay& day : plan.days)
        if (!day.rest_day && day.to_m < random.route.length_m) {
            const std::string camp = fmt::format("night {}", day.day);
            named(PlaceKind::camp, camp, day.to_m);
            random.trip.days.nights.push_back(camp);
        }
}

TEST_P(RandomPlans, ALegCutInTwoGivesTheSamePlan) {
    test::RandomTrip random = test::random_trip(seed());
    name_ends_of_legs(random);
    const Route cut = cut_in_two(random.route);
    if (cut.legs.size() == random.route.legs.size())
        GTEST_SKIP() << "no leg to cut";
    const Plan whole = make_plan(random.trip, random.route);
    const Plan parts = make_plan(random.trip, cut);
    ASSERT_EQ(whole.days.size(), parts.days.size());
    // What is eaten and drunk on the way leaves the packs evenly over a leg, but by the time of
    // each half where it is cut: a steeper half is walked a trifle lighter or heavier.
    EXPECT_NEAR(whole.totals.moving_s, parts.totals.moving_s, 5e-4 * whole.totals.moving_s)
        << "seed " << seed();
    EXPECT_NEAR(whole.totals.food_kg, parts.totals.food_kg, 1e-3) << "seed " << seed();
    EXPECT_NEAR(whole.totals.energy_j, parts.totals.energy_j, 2e-4 * whole.totals.energy_j)
        << "seed " << seed();
    EXPECT_NEAR(whole.totals.ascent_m, parts.totals.ascent_m, 1e-6) << "seed " << seed();
    for (std::size_t d = 0; d < whole.days.size(); ++d)
        EXPECT_LE(std::abs((whole.days[d].arrive - parts.days[d].arrive).count()), 15)
            << "seed " << seed() << " day " << d + 1;
    for (std::size_t d = 0; d < whole.days.size(); ++d)
        for (std::size_t m = 0; m < whole.days[d].members.size(); ++m)
            EXPECT_NEAR(whole.days[d].members[m].pack_start_kg,
                        parts.days[d].members[m].pack_start_kg,
                        1e-3)
                << "seed " << seed() << " day " << d + 1;
}

} // namespace
} // namespace tumpline::planner
