#include "planner/models/paddling.h"

#include <benchmark/benchmark.h>

#include <array>
#include <cstddef>

namespace {

using namespace tumpline::planner;

/// Winds as the odds draw them: from a stiff tail wind to one that stops the boat.
constexpr std::array winds_mps{-12.0, -6.5, -3.0, -0.4, 0.7, 2.2, 3.9, 5.1, 6.6, 8.3, 10.2, 14.0};

void wind_speed_ratio_of(benchmark::State& state, HullKind kind) {
    const Hull& boat = hull(kind);
    std::size_t next = 0;
    for (auto _ : state) {
        const double ratio = wind_speed_ratio(boat, winds_mps[next]);
        if (!(ratio >= 0.0 && ratio <= 1.1))
            state.SkipWithError("no speed ratio");
        benchmark::DoNotOptimize(ratio);
        next = (next + 1) % winds_mps.size();
    }
    state.SetItemsProcessed(state.iterations());
}

BENCHMARK_CAPTURE(wind_speed_ratio_of, packraft, HullKind::packraft);
BENCHMARK_CAPTURE(wind_speed_ratio_of, tandem_canoe, HullKind::tandem_canoe);
BENCHMARK_CAPTURE(wind_speed_ratio_of, kayak, HullKind::kayak);

void under_wind_of_a_packraft(benchmark::State& state) {
    const PaddledCourse course{.calm_speed_mps = 0.85, .bearing_deg = 40.0};
    double from_deg = 0.0;
    for (auto _ : state) {
        const UnderWind boat = under_wind(HullKind::packraft, course, {5.0, from_deg});
        if (!(boat.made_good_mps > 0.0 && boat.made_good_mps < 1.0))
            state.SkipWithError("no way in 5 m/s");
        benchmark::DoNotOptimize(boat);
        from_deg = from_deg < 350.0 ? from_deg + 10.0 : 0.0;
    }
    state.SetItemsProcessed(state.iterations());
}

BENCHMARK(under_wind_of_a_packraft);

} // namespace
