#include "cli/export/export_geojson.h"
#include "cli/export/export_gpx.h"
#include "geo/tracks/gpx.h"
#include "tests/support/hand_built_plan.h"
#include "tests/support/hand_built_route.h"
#include "tests/support/hand_built_variants.h"

#include <benchmark/benchmark.h>

#include <chrono>

namespace tumpline::cli {
namespace {

/// Writing a long leg as GPX and GeoJSON; `over_reading` is the time of both over that of reading
/// the GPX back, in the same run.
void export_long_leg(benchmark::State& state) {
    planner::Plan plan = test::one_leg(test::hand_built_plan());
    planner::Route route = test::hand_built_route(plan);
    std::vector<geo::Position> points;
    for (std::int64_t i = 0; i < state.range(0); ++i)
        points.push_back(
            {50.0 + 1e-5 * static_cast<double>(i), 13.0 + 1e-6 * static_cast<double>(i % 7)});
    route.legs[0].line = geo::Polyline(std::move(points));
    route.legs[0].to_m = route.legs[0].from_m + route.legs[0].line.length_m();
    plan.legs[0].to_m = route.legs[0].to_m;
    using Clock = std::chrono::steady_clock;
    double writing_s = 0.0;
    double reading_s = 0.0;
    for (auto _ : state) {
        const auto start = Clock::now();
        const std::string gpx = export_gpx(plan, route);
        const std::string json = export_geojson(plan, route);
        const auto written = Clock::now();
        const geo::TrackFile read = geo::read_gpx_text(gpx, "long.gpx");
        writing_s += std::chrono::duration<double>(written - start).count();
        reading_s += std::chrono::duration<double>(Clock::now() - written).count();
        if (read.tracks.empty() || json.empty())
            state.SkipWithError("nothing was written");
    }
    state.counters["over_reading"] = writing_s / reading_s;
}

BENCHMARK(export_long_leg)->Arg(100'000)->Unit(benchmark::kMillisecond);

} // namespace
} // namespace tumpline::cli
