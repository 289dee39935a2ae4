#include "cli/book/book.h"
#include "cli/drawing/load_band.h"
#include "tests/support/hand_built_plan.h"
#include "tests/support/hand_built_route.h"
#include "tests/support/hand_built_variants.h"

#include <benchmark/benchmark.h>

#include <string>
#include <utility>
#include <vector>

namespace {

using namespace tumpline;

/// The book of `days` days after a plan that is finished: what the book itself costs.
void book_of_days(benchmark::State& state) {
    const planner::Plan once = test::hand_built_plan();
    const planner::Plan plan = test::repeated(once, static_cast<int>(state.range(0)) / 3);
    const planner::Route route = test::hand_built_route(plan);
    std::size_t bytes = 0;
    for (auto _ : state)
        bytes = cli::book(plan, route, planner::UnitSystem::metric).size();
    if (bytes > 1'500'000)
        state.SkipWithError("the book is larger than 1.5 MB");
    state.counters["days"] = static_cast<double>(plan.days.size());
    state.counters["bytes"] = static_cast<double>(bytes);
}

BENCHMARK(book_of_days)->Arg(3)->Arg(15)->Arg(60)->Unit(benchmark::kMillisecond);

/// A route of a million points: the drawing must not grow with what was recorded.
void map_of_a_million_points(benchmark::State& state) {
    const planner::Plan plan = test::hand_built_plan();
    planner::Route route = test::hand_built_route(plan);
    for (planner::RouteLeg& leg : route.legs) {
        std::vector<geo::Position> dense;
        const int points = static_cast<int>(1e6 * (leg.to_m - leg.from_m) / route.length_m);
        for (int i = 0; i <= points; ++i)
            dense.push_back(leg.line.at((leg.to_m - leg.from_m) * i / points));
        leg.line = geo::Polyline(std::move(dense));
    }
    const cli::Figures shown(planner::UnitSystem::metric, plan.trip.time_zone, cli::Blank::kept);
    const cli::Drawing drawing{
        .width = cli::wide_drawing, .text = 12.0, .names = true, .id = "map"};
    std::size_t bytes = 0;
    for (auto _ : state)
        bytes = cli::map_drawing(plan, route, drawing, shown).size();
    if (bytes == 0 || bytes > 200'000)
        state.SkipWithError("the map is empty or larger than 200 kB");
    state.counters["bytes"] = static_cast<double>(bytes);
}

BENCHMARK(map_of_a_million_points)->Unit(benchmark::kMillisecond);

} // namespace
