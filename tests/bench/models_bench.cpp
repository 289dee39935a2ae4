#include "planner/models/load_carriage.h"
#include "planner/models/load_effect.h"
#include "planner/models/walking_speed.h"
#include "tests/bench/allocations.h"

#include <benchmark/benchmark.h>

#include <cmath>
#include <cstddef>
#include <vector>

// A million steps of a profile, 25 m each: 25 000 km. What must stay below a tenth of a second, so
// that a plan of 120 days answers at once, is named in docs/performance.md.

namespace {

using namespace tumpline::planner;

constexpr std::size_t step_count = 1'000'000;
constexpr double step_m = 25.0;

/// Slopes of rolling ground between -25 and +25 %, the same on every machine.
const std::vector<double>& slopes() {
    static const std::vector<double> ground = [] {
        std::vector<double> all(step_count);
        for (std::size_t i = 0; i < all.size(); ++i)
            all[i] = 0.25 * std::sin(0.01 * static_cast<double>(i % 62832));
        return all;
    }();
    return ground;
}

/// A plan must not pay for memory at every step of its profile: whatever the loop of a benchmark
/// takes from the heap is a fault.
class NoAllocations {
  public:
    explicit NoAllocations(benchmark::State& state) : state_(state) {}

    void check() {
        if (tumpline::bench::allocations() != before_)
            state_.SkipWithError("the steps allocate");
    }

  private:
    benchmark::State& state_;
    std::size_t before_ = tumpline::bench::allocations();
};

void walking_time(benchmark::State& state) {
    const auto model = static_cast<WalkingModel>(state.range(0));
    const std::vector<double>& ground = slopes();
    double time_s = 0.0;
    for (auto _ : state) {
        NoAllocations steps(state);
        time_s = 0.0;
        for (const double slope : ground)
            time_s += step_m / walking_speed_mps(model, slope);
        benchmark::DoNotOptimize(time_s);
        steps.check();
    }
    const double mean_kmh = 3.6 * step_m * step_count / time_s;
    if (!(mean_kmh > 1.0 && mean_kmh < 12.0)) // the 90th percentile runs
        state.SkipWithError("a mean speed that nobody walks or runs");
    state.SetLabel(std::string(walking_model_name(model)));
}

BENCHMARK(walking_time)->DenseRange(0, 19)->Unit(benchmark::kMillisecond);

void energy(benchmark::State& state) {
    const auto model = static_cast<CarriageModel>(state.range(0));
    const std::vector<double>& ground = slopes();
    Carrying walk{.body_kg = 75.0,
                  .load_kg = 25.0,
                  .speed_mps = 0.9,
                  .slope = 0.0,
                  .terrain = 1.1,
                  .resting_w = 80.0};
    double energy_j = 0.0;
    for (auto _ : state) {
        NoAllocations steps(state);
        energy_j = 0.0;
        for (const double slope : ground) {
            walk.slope = slope;
            energy_j += carriage_w(model, walk) * step_m / walk.speed_mps;
        }
        benchmark::DoNotOptimize(energy_j);
        steps.check();
    }
    const double mean_w = energy_j / (step_m * step_count / walk.speed_mps);
    if (!(mean_w > 150.0 && mean_w < 1000.0))
        state.SkipWithError("a mean power that nobody spends");
    state.SetLabel(std::string(carriage_model_name(model)));
}

BENCHMARK(energy)->DenseRange(0, 3)->Unit(benchmark::kMillisecond);

void lcda_sums(benchmark::State& state) {
    const std::vector<double>& ground = slopes();
    LcdaSums sums;
    for (auto _ : state) {
        NoAllocations steps(state);
        sums = {};
        for (const double slope : ground)
            sums.add(step_m, slope, 1.0);
        benchmark::DoNotOptimize(sums);
        steps.check();
    }
    if (std::abs(sums.time_s - step_m * step_count) > 1.0)
        state.SkipWithError("the steps are not all there");
}

BENCHMARK(lcda_sums)->Unit(benchmark::kMillisecond);

void load_effect_of_a_million_loads(benchmark::State& state) {
    double sum = 0.0;
    for (auto _ : state) {
        NoAllocations steps(state);
        sum = 0.0;
        for (std::size_t i = 0; i < step_count; ++i)
            sum += equal_effort_factor(0.6 * static_cast<double>(i) / step_count);
        benchmark::DoNotOptimize(sum);
        steps.check();
    }
    if (!(sum > 0.4 * step_count && sum < step_count))
        state.SkipWithError("a factor that is none");
}

BENCHMARK(load_effect_of_a_million_loads)->Unit(benchmark::kMillisecond);

} // namespace
