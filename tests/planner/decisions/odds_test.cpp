#include "planner/decisions/odds.h"

#include "planner/make_plan.h"
#include "planner/trip/river_flow.h"
#include "planner/trip/timetable.h"
#include "tests/support/level_trip.h"
#include "tests/support/plain_trip.h"
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

/// 10 km of river that carries the middle one of three levels.
test::PlainTrip on_a_river_with_levels() {
    test::PlainTrip plain = test::plain_trip({test::river(10'000.0, 5.0)});
    TripLeg& leg = plain.route.legs[0].spec;
    leg.flow.emplace();
    const auto column = [](double mps, double m3s, RiverClass river_class) {
        return FlowColumn{
            .current_mps = mps, .reading = GaugeReading{.value = m3s}, .river_class = river_class};
    };
    leg.flow->columns = {column(0.6, 10.0, 1), column(1.0, 40.0, 1), column(1.6, 90.0, 2)};
    leg.flow->runnable = {GaugeReading{.value = 5.0}, GaugeReading{.value = 60.0}};
    set_flow(leg);
    plain.trip.route.legs = {leg};
    plain.trip.spread = nothing_spreads;
    return plain;
}

// With the usual spread of currents one draw in ten lies beyond either column: at 1.28155 of the
// standard normal. 60 m3/s is half way from 40 to 90 by doublings, at 0.64078, beyond which lie
// 26.1 % of the draws; every level above 40 m3/s may have class II.
TEST(Odds, DrawTheLevelOfARiverBetweenItsColumns) {
    test::PlainTrip plain = on_a_river_with_levels();
    plain.trip.spread.current = 0.25;
    const Odds odds = odds_of(plain.trip, plain.route, {.draws = 2000, .seed = 3, .threads = 2});
    ASSERT_EQ(odds.rivers.size(), 1U);
    const OddsRiver& river = odds.rivers[0];
    EXPECT_EQ(river.plan_mps, 1.0);
    EXPECT_NEAR(river.current_mps.q50, 1.0, 0.02);
    EXPECT_NEAR(river.current_mps.q05, 0.6, 1e-9); // no lower than the lowest column
    EXPECT_NEAR(river.current_mps.q95, 1.6, 1e-9);
    EXPECT_NEAR(river.not_runnable.value(), 0.261, 0.03);
    EXPECT_NEAR(river.harder.value(), 0.5, 0.03);
    EXPECT_LT(odds.under_way_s.q05, odds.under_way_s.q50 - 600.0);
}

TEST(Odds, HoldARiverWhoseCurrentDoesNotSpread) {
    const test::PlainTrip plain = on_a_river_with_levels();
    const Odds odds = odds_of(plain.trip, plain.route, {.draws = 10, .seed = 3, .threads = 1});
    EXPECT_EQ(odds.rivers.at(0).current_mps.q05, 1.0);
    EXPECT_EQ(odds.rivers.at(0).current_mps.q95, 1.0);
    EXPECT_EQ(odds.rivers.at(0).not_runnable, 0.0);
    EXPECT_EQ(odds.rivers.at(0).harder, 0.0);
}

// 20 km at 1 m/s from 06:00 on the second day, a Tuesday: there at 11:33:20. The bus at 12:06 is
// gone if that takes more than 21960 s, 1.098 times as long: ln 1.098 / 0.12 = 0.779 of the
// normal, 21.8 %.
TEST(Odds, CountHowOftenThePlansOwnConnectionIsGone) {
    test::RandomTrip made = test::level_trip({{.length_m = 20e3}, {.length_m = 20e3}},
                                             {{"Start", PlaceKind::start, 0.0},
                                              {"Camp", PlaceKind::camp, 20e3},
                                              {"Road", PlaceKind::finish, 40e3}});
    made.trip.days.nights = {"Camp"};
    made.trip.connections = {{.what = "bus",
                              .place = "Road",
                              .to_start = false,
                              .times = {read_timetable_hour("Tu,We 12:06").hour.value()},
                              .margin = {}}};
    made.trip.spread = nothing_spreads;
    made.trip.spread.pace = 0.12;
    const Odds odds = odds_with(made, {.draws = 2000, .seed = 4, .threads = 2});
    ASSERT_TRUE(odds.connection_missed);
    EXPECT_NEAR(*odds.connection_missed, 0.218, 0.03);
    ASSERT_EQ(odds.departures.size(), 2U); // Tuesday's and Wednesday's
    EXPECT_NEAR(odds.departures[0].chance, 1.0 - *odds.connection_missed, 1e-9);
    EXPECT_TRUE(odds.departures[0].planned);
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
