/// Things shared out by hand, against trying every way, and where there are far too many to try.

#include "planner/loads/minimax_sharing.h"

#include "tests/support/random_draws.h"

#include <gtest/gtest.h>
#include <pthread.h>

#include <algorithm>
#include <cmath>
#include <functional>
#include <numeric>
#include <vector>

namespace tumpline::planner {
namespace {

constexpr double kg = 1e6; // milligrams

std::vector<SharedThing> things_of(const std::vector<double>& masses_kg) {
    std::vector<SharedThing> things;
    for (const double mass_kg : masses_kg)
        things.push_back({.mass_mg = mass_kg * kg});
    return things;
}

/// The heaviest load over its limit, the pool laid on the lightest up to one level.
double ratio_of(std::vector<Bearer> bearers,
                const std::vector<SharedThing>& things,
                const std::vector<std::size_t>& bearer,
                double pool_mg) {
    for (std::size_t t = 0; t < things.size(); ++t)
        bearers[bearer[t]].own_mg += things[t].mass_mg;
    const std::vector<double> shares = level_out(bearers, pool_mg);
    double worst = 0.0;
    for (std::size_t b = 0; b < bearers.size(); ++b)
        worst = std::max(worst, (bearers[b].own_mg + shares[b] * pool_mg) / bearers[b].limit_mg);
    return worst;
}

/// The least heaviest ratio of all ways that the rooms and `may_bear` allow; HUGE_VAL without one.
double least_ratio(const std::vector<Bearer>& bearers,
                   const std::vector<SharedThing>& things,
                   double pool_mg) {
    double least = HUGE_VAL;
    std::vector<std::size_t> bearer(things.size(), 0);
    const std::function<void(std::size_t, std::vector<double>)> go_on =
        [&](std::size_t t, const std::vector<double>& taken) {
            if (t == things.size()) {
                least = std::min(least, ratio_of(bearers, things, bearer, pool_mg));
                return;
            }
            for (std::size_t b = 0; b < bearers.size(); ++b) {
                const std::vector<std::size_t>& may = things[t].may_bear;
                std::vector<double> more = taken;
                more[b] += things[t].takes;
                if ((!may.empty() && std::find(may.begin(), may.end(), b) == may.end()) ||
                    more[b] > bearers[b].room + 1e-9)
                    continue;
                bearer[t] = b;
                go_on(t + 1, more);
            }
        };
    go_on(0, std::vector<double>(bearers.size(), 0.0));
    return least;
}

TEST(LevelOut, FillsTheLightestUpToOneLevel) {
    // 4 of 20 kg and 12 of 30 kg borne. 6 kg more: up to a common level x of the limits,
    // 20 x - 4 + 30 x - 12 = 6, x = 0.44: 4.8 kg and 1.2 kg.
    const std::vector<double> shares = level_out(
        {{.own_mg = 4 * kg, .limit_mg = 20 * kg}, {.own_mg = 12 * kg, .limit_mg = 30 * kg}},
        6 * kg);
    EXPECT_NEAR(shares[0], 4.8 / 6.0, 1e-12);
    EXPECT_NEAR(shares[1], 1.2 / 6.0, 1e-12);
}

TEST(LevelOut, LeavesOutWhoBearsMoreThanTheLevel) {
    // 2 kg to 4 of 20 kg and 29 of 30 kg: the first stays below the second with all of it.
    const std::vector<double> shares = level_out(
        {{.own_mg = 4 * kg, .limit_mg = 20 * kg}, {.own_mg = 29 * kg, .limit_mg = 30 * kg}},
        2 * kg);
    EXPECT_EQ(shares, (std::vector<double>{1.0, 0.0}));
}

TEST(LevelOut, OfNothingIsByTheLimits) {
    const std::vector<double> shares = level_out(
        {{.own_mg = 9 * kg, .limit_mg = 10 * kg}, {.own_mg = 0.0, .limit_mg = 30 * kg}}, 0.0);
    EXPECT_NEAR(shares[0], 0.25, 1e-15);
    EXPECT_NEAR(shares[1], 0.75, 1e-15);
}

TEST(ShareOut, DoesBetterThanHeaviestFirst) {
    // 3, 3, 2, 2, 2 over two equal limits of 10 kg: heaviest first gives 3+2+2 and 3+2, the best is
    // 3+3 and 2+2+2.
    const SharedOut shared =
        share_out({{.own_mg = 0.0, .limit_mg = 10 * kg}, {.own_mg = 0.0, .limit_mg = 10 * kg}},
                  things_of({3, 3, 2, 2, 2}),
                  0.0);
    EXPECT_EQ(shared.bearer, (std::vector<std::size_t>{0, 0, 1, 1, 1}));
    EXPECT_NEAR(shared.heaviest_ratio, 0.6, 1e-12);
    EXPECT_NEAR(shared.lower_bound, 0.6, 1e-12); // 12 of 20 kg
    EXPECT_TRUE(shared.proven);
}

TEST(ShareOut, KeepsThingsWithThoseWhoMayBearThem) {
    // A 9 kg boat that only the weaker may bear: 9 of 15 kg, and the 4 kg go to the stronger.
    std::vector<SharedThing> things = things_of({9, 4});
    things[0].may_bear = {1};
    const SharedOut shared = share_out(
        {{.own_mg = 0.0, .limit_mg = 25 * kg}, {.own_mg = 0.0, .limit_mg = 15 * kg}}, things, 0.0);
    EXPECT_EQ(shared.bearer, (std::vector<std::size_t>{1, 0}));
    EXPECT_NEAR(shared.heaviest_ratio, 9.0 / 15.0, 1e-12);
    EXPECT_TRUE(shared.proven);
}

TEST(ShareOut, IsTheBestOfAllWays) {
    test::Draws draws(31);
    int barred = 0, roomy = 0, pooled = 0;
    for (int round = 0; round < 400; ++round) {
        SCOPED_TRACE(testing::Message() << "round " << round);
        std::vector<Bearer> bearers(static_cast<std::size_t>(draws.whole(1, 4)));
        const bool rooms = draws.chance(0.5);
        const bool same = draws.chance(0.3);
        for (Bearer& bearer : bearers)
            bearer = {.own_mg = same ? 0.0 : draws.in_steps(0.0, 6.0) * kg,
                      .limit_mg = same ? 20 * kg : draws.in_steps(10.0, 30.0) * kg,
                      .room = rooms ? draws.in_steps(0.0, 4.0) : HUGE_VAL};
        std::vector<SharedThing> things(static_cast<std::size_t>(draws.whole(0, 6)));
        for (SharedThing& thing : things) {
            thing.mass_mg = draws.in_steps(0.1, 5.0) * kg;
            thing.takes = rooms ? draws.in_steps(0.0, 2.0) : 0.0;
            if (draws.chance(0.2))
                thing.may_bear = {
                    static_cast<std::size_t>(draws.whole(0, static_cast<int>(bearers.size()) - 1))};
        }
        const double pool_mg = draws.chance(0.5) ? draws.in_steps(0.0, 8.0) * kg : 0.0;
        const double least = least_ratio(bearers, things, pool_mg);
        const SharedOut shared = share_out(bearers, things, pool_mg);
        EXPECT_TRUE(shared.proven);
        if (!std::isfinite(least)) {
            EXPECT_TRUE(shared.bearer.empty() && !things.empty());
            ++barred;
            continue;
        }
        ASSERT_EQ(shared.bearer.size(), things.size());
        EXPECT_NEAR(shared.heaviest_ratio, least, 1e-9);
        EXPECT_NEAR(ratio_of(bearers, things, shared.bearer, pool_mg), least, 1e-9);
        EXPECT_LE(shared.lower_bound, least + 1e-9);
        roomy += rooms ? 1 : 0;
        pooled += pool_mg > 0.0 ? 1 : 0;
    }
    EXPECT_GT(barred, 10);
    EXPECT_GT(roomy, 50);
    EXPECT_GT(pooled, 100);
}

/// Runs on a thread with a stack of 256 KiB: a step of a search must not take a frame of it.
void on_a_small_stack(const std::function<void()>& run) {
    pthread_attr_t small;
    ASSERT_EQ(pthread_attr_init(&small), 0);
    ASSERT_EQ(pthread_attr_setstacksize(&small, std::size_t{256} * 1024), 0);
    pthread_t thread{};
    const auto call = [](void* what) -> void* {
        (*static_cast<const std::function<void()>*>(what))();
        return nullptr;
    };
    ASSERT_EQ(pthread_create(&thread, &small, call, const_cast<std::function<void()>*>(&run)), 0);
    ASSERT_EQ(pthread_join(thread, nullptr), 0);
    ASSERT_EQ(pthread_attr_destroy(&small), 0);
}

TEST(ShareOut, AnswersWithinItsBudgetHoweverManyThingsThereAre) {
    // 20 001 things of a gram on two: 10 001 g on one of them at least, and no bound says so, half
    // of everything being 10 000.5 g.
    const std::vector<double> masses_kg(20'001, 0.001);
    const std::vector<SharedThing> things = things_of(masses_kg);
    on_a_small_stack([&] {
        const SharedOut shared =
            share_out({{.own_mg = 0.0, .limit_mg = 1 * kg}, {.own_mg = 0.0, .limit_mg = 1 * kg}},
                      things,
                      0.0);
        ASSERT_EQ(shared.bearer.size(), things.size());
        EXPECT_NEAR(shared.heaviest_ratio, 10.001, 1e-9);
        EXPECT_NEAR(shared.lower_bound, 10.0005, 1e-9);
        EXPECT_FALSE(shared.proven) << "that no sharing of twenty thousand things is better";
    });
}

TEST(ShareOut, OfAThousandPeopleGivesEveryThingABearer) {
    const std::vector<Bearer> people(1'000, {.own_mg = 1 * kg, .limit_mg = 20 * kg});
    const SharedOut shared =
        share_out(people, things_of(std::vector<double>(3'000, 0.5)), 500 * kg);
    ASSERT_EQ(shared.bearer.size(), 3'000U);
    // 1 kg each, 1 500 kg of things and 500 kg of food over 20 000 kg of limits.
    EXPECT_NEAR(shared.heaviest_ratio, (1'000.0 + 1'500.0 + 500.0) / 20'000.0, 1e-12);
    EXPECT_TRUE(shared.proven);
}

TEST(ShareByExchanges, PutsBoatsFirstAndNeverTwoOfThemOnOneBack) {
    // Boats of 12 and 10 kg, a pack of 15 and one of 1 kg on two backs of 20 kg: the boats apart,
    // then 15 on the lighter (25) and 1 on the other (13). To change the boats would make 27, to
    // move the pack too: it stays.
    std::vector<SharedThing> things = things_of({15, 10, 12, 1});
    things[1].takes = things[2].takes = 1.0;
    const Bearer back{.own_mg = 0.0, .limit_mg = 20 * kg, .room = 1.0};
    EXPECT_EQ(share_by_exchanges({back, back}, things),
              (std::vector<std::vector<std::size_t>>{{2, 3}, {1, 0}}));
}

TEST(ShareByExchanges, ExchangesUntilNothingHelps) {
    // 3, 3, 2, 2, 2: heaviest first gives 3+2+2 and 3+2. A 3 for a 2 makes 6 and 6.
    const Bearer back{.own_mg = 0.0, .limit_mg = 10 * kg};
    const std::vector<std::vector<std::size_t>> shares =
        share_by_exchanges({back, back}, things_of({3, 3, 2, 2, 2}));
    for (const std::vector<std::size_t>& share : shares)
        EXPECT_EQ(std::accumulate(share.begin(),
                                  share.end(),
                                  0,
                                  [](int sum, std::size_t t) { return sum + (t < 2 ? 3 : 2); }),
                  6);
}

TEST(ShareByExchanges, PutsEverythingSomewhereIfThereAreMoreBoatsThanBacks) {
    std::vector<SharedThing> things = things_of({8, 9});
    things[0].takes = things[1].takes = 1.0;
    EXPECT_EQ(share_by_exchanges({{.own_mg = 0.0, .limit_mg = 20 * kg, .room = 1.0}}, things),
              (std::vector<std::vector<std::size_t>>{{1, 0}}));
}

TEST(ShareByExchanges, ComesNearTheBestOfAllWays) {
    test::Draws draws(8);
    double sum = 0.0;
    constexpr int rounds = 200;
    for (int round = 0; round < rounds; ++round) {
        SCOPED_TRACE(testing::Message() << "round " << round);
        std::vector<Bearer> bearers(static_cast<std::size_t>(draws.whole(2, 3)));
        for (Bearer& bearer : bearers)
            bearer = {.own_mg = 0.0, .limit_mg = draws.in_steps(15.0, 30.0) * kg};
        std::vector<SharedThing> things(8);
        for (SharedThing& thing : things)
            thing.mass_mg = draws.in_steps(0.2, 6.0) * kg;
        const std::vector<std::vector<std::size_t>> shares = share_by_exchanges(bearers, things);
        std::vector<std::size_t> bearer(things.size(), bearers.size());
        for (std::size_t b = 0; b < shares.size(); ++b)
            for (const std::size_t thing : shares[b])
                bearer[thing] = b;
        ASSERT_EQ(std::count(bearer.begin(), bearer.end(), bearers.size()), 0);
        const double least = least_ratio(bearers, things, 0.0);
        const double found = ratio_of(bearers, things, bearer, 0.0);
        EXPECT_GE(found, least - 1e-9);
        sum += found / least;
    }
    EXPECT_LT(sum / rounds, 1.03); // our own figure: it guards against drift only
}

} // namespace
} // namespace tumpline::planner
