#include "planner/plan.h"
#include "planner/rounds.h"
#include "tests/support/random_route.h"
#include "tests/support/random_trip.h"

#include <benchmark/benchmark.h>

namespace tumpline::planner {
namespace {

/// A fortnight of thirty legs for four, made from a seed by the tests' generator.
test::RandomTrip fortnight() {
    for (std::uint64_t seed = 1;; ++seed) {
        test::RandomTrip random = test::random_trip(seed);
        if (random.trip.party.size() == 4 && random.route.legs.size() >= 6)
            return random;
    }
}

void plan_again(benchmark::State& state) {
    const test::RandomTrip random = fortnight();
    std::size_t days = 0;
    for (auto _ : state) {
        const Plan plan = make_plan(random.trip, random.route);
        days = plan.days.size();
        if (plan.legs.empty())
            state.SkipWithError("a plan without legs");
    }
    state.counters["days"] = static_cast<double>(days);
    state.counters["legs"] = static_cast<double>(random.route.legs.size());
}

BENCHMARK(plan_again)->Unit(benchmark::kMillisecond);

void settle_once(benchmark::State& state) {
    const test::RandomTrip random = fortnight();
    const Prepared prepared = prepare(random.trip, random.route);
    SettleOptions options;
    if (!random.trip.days.nights.empty())
        options.nights = listed_nights(prepared);
    const Settled first = settle(prepared, options);
    options.record = false;
    options.warm_start = &first.loads;
    options.nights = first.nights;
    int rounds = 0;
    for (auto _ : state) {
        const Settled settled = settle(prepared, options);
        rounds = settled.converged.rounds;
    }
    state.counters["rounds"] = rounds;
    state.counters["stretches"] = static_cast<double>(prepared.stretches.stretches.size());
}

BENCHMARK(settle_once)->Unit(benchmark::kMicrosecond);

} // namespace
} // namespace tumpline::planner
