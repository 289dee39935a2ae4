#include "planner/decisions/odds.h"
#include "planner/make_plan.h"
#include "tests/support/random_trip.h"

#include <benchmark/benchmark.h>

namespace tumpline::planner {
namespace {

/// A made-up week for four, on foot, over portages and afloat.
test::RandomTrip week_for_four() {
    for (std::uint64_t seed = 1;; ++seed) {
        test::RandomTrip random = test::random_trip(seed);
        const Plan plan = make_plan(random.trip, random.route);
        if (random.trip.party.size() == 4 && plan.days.size() == 7 && plan.totals.walk_m > 0.0 &&
            plan.totals.paddle_m > 0.0)
            return random;
    }
}

void draw(benchmark::State& state, const Trip& trip, const Route& route) {
    const auto threads = static_cast<std::size_t>(state.range(0));
    double half_s = 0.0;
    for (auto _ : state) {
        const Odds odds = odds_of(trip, route, {.draws = 10'000, .seed = 1, .threads = threads});
        if (odds.days.empty() || (half_s != 0.0 && half_s != odds.under_way_s.q50))
            state.SkipWithError("the same seed gave other odds");
        half_s = odds.under_way_s.q50;
        state.counters["days"] = static_cast<double>(odds.plan.days.size());
        state.counters["legs"] = static_cast<double>(odds.plan.legs.size());
        state.counters["party"] = static_cast<double>(trip.party.size());
    }
}

void ten_thousand_weeks_for_four(benchmark::State& state) {
    const test::RandomTrip random = week_for_four();
    draw(state, random.trip, random.route);
}

BENCHMARK(ten_thousand_weeks_for_four)
    ->Arg(1)
    ->Arg(2)
    ->Unit(benchmark::kMillisecond)
    ->MeasureProcessCPUTime()
    ->UseRealTime();

} // namespace
} // namespace tumpline::planner
