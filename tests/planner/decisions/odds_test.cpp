#include "planner/decisions/odds.h"

#include "planner/make_plan.h"
#include "tests/support/level_trip.h"
#include "tests/support/random_trip.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <string>
#include <vector>

namespace tumpline::planner {
namespace {

/// Of a trip of which all is known.
constexpr Spread nothing_spreads{.pace = 0.0,
                                 .day_form = 0.0,
                                 .wind = 0.0,
                                 .current = 0.0,
                                 .changeovers = 0.0,
                                 .drinking = 0.0,
                                 .eating = 0.0};

/// Everything as exact text, so that two answers can be compared.
std::string text_of(const Odds& odds) {
    std::string text;
    const auto add = [&](double figure) { text += std::to_string(figure) + " "; };
    const auto add_all = [&](const Quantiles& q) {
        for (const double figure : {q.q05, q.q10, q.q50, q.q90, q.q95})
            add(figure * 1e9);
    };
    add_all(odds.under_way_s);
    for (const OddsDay& day : odds.days) {
        text += std::to_string(day.arrive.q95.time_since_epoch().count()) + " ";
        add(day.after_dusk.value_or(-1.0));
        add(day.held_up);
        add(day.leading_correlation * 1e9);
    }
    for (const OddsAppointment& meet : odds.appointments)
        add(meet.missed);
    for (const OddsLeg& leg : odds.legs)
        for (const OddsPack& pack : leg.packs)
            add_all(pack.start_kg);
    for (const OddsStage& stage : odds.stages)
        for (const double chance : stage.runs_out)
            add(chance);
    for (const Influence& one : odds.influences)
        add(one.time * 1e9);
    return text;
}

Odds odds_with(const test::RandomTrip& random, const OddsOptions& options) {
    return odds_of(random.trip, random.route, options);
}

/// The first made-up trip of several days for several people that settles.
test::RandomTrip week() {
    for (std::uint64_t seed = 1;; ++seed) {
        test::RandomTrip random = test::random_trip(seed);
        const Plan plan = make_plan(random.trip, random.route);
        if (plan.days.size() >= 4 && random.trip.party.size() >= 3 && plan.converged.settled &&
            plan.totals.walk_m > 0.0 && plan.totals.paddle_m > 0.0)
            return random;
    }
}

TEST(Odds, AreTheSameOnAnyNumberOfThreads) {
    const test::RandomTrip random = week();
    const std::string alone = text_of(odds_with(random, {.draws = 60, .seed = 11, .threads = 1}));
    EXPECT_EQ(alone, text_of(odds_with(random, {.draws = 60, .seed = 11, .threads = 2})));
    EXPECT_EQ(alone, text_of(odds_with(random, {.draws = 60, .seed = 11, .threads = 7})));
    EXPECT_NE(alone, text_of(odds_with(random, {.draws = 60, .seed = 12, .threads = 1})));
}

TEST(Odds, WithoutSpreadAreThePlan) {
    test::RandomTrip random = week();
    random.trip.spread = nothing_spreads;
    const Odds odds = odds_with(random, {.draws = 3, .seed = 1, .threads = 1});
    for (const OddsDay& day : odds.days) {
        const PlanDay& planned = odds.plan.days[static_cast<std::size_t>(day.day - 1)];
        EXPECT_EQ(day.arrive.q05, day.arrive.q95);
        EXPECT_LE(std::abs((day.arrive.q50 - planned.arrive).count()), 5);
        EXPECT_FALSE(day.leading);
    }
    for (const OddsLeg& leg : odds.legs)
        for (const OddsPack& pack : leg.packs)
            EXPECT_NEAR(pack.start_kg.q50, pack.plan_kg, 0.05);
    for (const OddsStage& stage : odds.stages)
        EXPECT_EQ(stage.runs_out.front(), 0.0);
}

TEST(Odds, QuantilesAreInOrderAndChancesAreShares) {
    for (std::uint64_t seed = 1; seed <= 12; ++seed) {
        const test::RandomTrip random = test::random_trip(seed);
        const Odds odds = odds_with(random, {.draws = 25, .seed = seed, .threads = 2});
        for (const OddsDay& day : odds.days) {
            EXPECT_LE(day.arrive.q05, day.arrive.q10);
            EXPECT_LE(day.arrive.q10, day.arrive.q50);
            EXPECT_LE(day.arrive.q50, day.arrive.q90);
            EXPECT_LE(day.arrive.q90, day.arrive.q95);
            EXPECT_GE(day.after_dusk.value_or(0.0), 0.0);
            EXPECT_LE(day.after_dusk.value_or(0.0), 1.0);
        }
        double shares = 0.0;
        for (const Influence& one : odds.influences)
            shares += one.time_share;
        EXPECT_NEAR(shares, 1.0, 1e-9) << "seed " << seed;
        for (const OddsStage& stage : odds.stages)
            EXPECT_TRUE(std::is_sorted(stage.runs_out.begin(), stage.runs_out.end()))
                << "a lost day never spares food; seed " << seed;
    }
}

TEST(Odds, OneUnknownAloneExplainsEverything) {
    test::RandomTrip random = week();
    random.trip.spread = {.pace = 0.0,
                          .day_form = 0.0,
                          .wind = 0.0,
                          .current = 0.0,
                          .changeovers = 0.0,
                          .drinking = 0.0,
                          .eating = 0.3};
    const Odds odds = odds_with(random, {.draws = 60, .seed = 5, .threads = 2});
    const auto eating =
        std::find_if(odds.influences.begin(), odds.influences.end(), [](const Influence& one) {
            return one.assumption == Assumption::eating;
        });
    EXPECT_GT(eating->food, 0.99);
    EXPECT_NEAR(eating->food_share, 1.0, 1e-9);
}

// A limit a kilogram below the pack is passed in every draw, one a kilogram above it in none.
TEST(Odds, AreOverALimitWhereThePackIs) {
    test::RandomTrip made = test::level_trip({{.length_m = 10e3}}, {});
    KitItem stones;
    stones.name = "stones";
    stones.mass_kg = 10.0;
    stones.owner = made.trip.party[0].name;
    made.trip.kit.push_back(stones);
    made.trip.spread = nothing_spreads;
    const double pack_kg =
        make_plan(made.trip, made.route).legs.front().loads.front().pack_start_kg;
    ASSERT_GT(pack_kg, 10.0);
    for (const double more_kg : {-1.0, 1.0}) {
        made.trip.party[0].carry_limit_kg = pack_kg + more_kg;
        const Odds odds = odds_with(made, {.draws = 5, .seed = 1, .threads = 1});
        ASSERT_EQ(odds.legs.size(), 1U);
        EXPECT_EQ(odds.legs[0].packs.at(0).over_limit, more_kg < 0.0 ? 1.0 : 0.0) << more_kg;
    }
}

// Eating varies by a factor exp(s z); with a fixed ration and a reserve of r days in n the food
// runs out when the factor is above 1 + r/n, of which the normal distribution knows the chance.
TEST(Odds, FoodRunsOutAsOftenAsTheDistributionSays) {
    test::RandomTrip random = week();
    random.trip.food.ration_kg = 0.7;
    random.trip.food.reserve_days = 0.5;
    random.trip.spread.eating = 0.2;
    constexpr std::size_t draws = 400;
    const Odds odds = odds_with(random, {.draws = draws, .seed = 2, .threads = 2});
    const Stage& stage = odds.plan.stages.front();
    const double packaging = random.trip.food.packaging.value_or(0.08);
    const double whole_kg = stage.food_kg / (1.0 + packaging);
    const double reserve_kg = stage.reserve_kg / (1.0 + packaging);
    const double z = std::log(whole_kg / (whole_kg - reserve_kg)) / 0.2;
    const double chance = 0.5 * std::erfc(z / std::sqrt(2.0));
    EXPECT_NEAR(odds.stages.front().runs_out.front(),
                chance,
                4.0 * std::sqrt(chance * (1.0 - chance) / draws));
}

} // namespace
} // namespace tumpline::planner
