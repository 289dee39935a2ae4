#include "geo/ground/elevation.h"
#include "geo/light/sun.h"
#include "geo/lines/geodesic.h"
#include "geo/profiles/profile.h"
#include "tests/support/raster_file.h"
#include "tests/support/temp_folder.h"

#include <benchmark/benchmark.h>

#include <cmath>
#include <cstddef>
#include <cstdint>
#include <utility>
#include <vector>

namespace tumpline::geo {
namespace {

constexpr Position south{.lat_deg = 61.02, .lon_deg = 12.5};

/// A track with a point every 10 m over hills of 1 km from summit to summit, to and fro so that it
/// stays within one degree.
std::pair<Polyline, PointHeights> track_of(std::int64_t points) {
    std::vector<Position> line;
    PointHeights heights;
    constexpr std::int64_t one_way = 10'000; // 100 km
    for (std::int64_t i = 0; i < points; ++i) {
        const std::int64_t rest = i % (2 * one_way);
        const auto out = static_cast<double>(rest < one_way ? rest : 2 * one_way - rest);
        line.push_back({.lat_deg = south.lat_deg + 9e-5 * out,
                        .lon_deg = south.lon_deg + 1e-4 * static_cast<double>(i / one_way)});
        heights.emplace_back(400.0 + 30.0 * std::sin(static_cast<double>(i) / 16.0));
    }
    return {Polyline(std::move(line)), std::move(heights)};
}

void profile_of_a_track(benchmark::State& state) {
    const auto [line, heights] = track_of(state.range(0));
    double ascent_m = 0.0;
    for (auto _ : state) {
        const Profile profile = make_profile(line, heights, nullptr, Surface::land, {});
        ascent_m = profile.ascent_m;
        benchmark::DoNotOptimize(std::as_const(ascent_m));
    }
    const double hills = static_cast<double>(state.range(0)) / (16.0 * 2.0 * M_PI);
    if (std::abs(ascent_m - 60.0 * hills) > 0.05 * 60.0 * hills)
        state.SkipWithError("the ascent is wrong");
    state.SetComplexityN(state.range(0));
    state.SetItemsProcessed(state.iterations() * state.range(0));
}

BENCHMARK(profile_of_a_track)
    ->RangeMultiplier(10)
    ->Range(10'000, 1'000'000)
    ->Unit(benchmark::kMillisecond)
    ->Complexity(benchmark::oN);

/// Places along a line of 100 km, in steps of 25 m, over a tile of 3601 by 3601 cells.
void heights_along_a_line(benchmark::State& state) {
    const test::TempFolder folder;
    test::write_hgt(folder.path() / "N61E012.hgt", 3601, [](int, int row) { return row / 4; });
    Elevation elevation({folder.path() / "N61E012.hgt"});
    std::vector<Position> places;
    for (int i = 0; i < 4000; ++i)
        places.push_back({.lat_deg = 61.05 + 2.25e-4 * i, .lon_deg = 12.1 + 2e-4 * i});
    double sum_m = 0.0;
    for (auto _ : state) {
        sum_m = 0.0;
        for (const Position& place : places)
            sum_m += elevation.at(place).value_or(0.0);
        benchmark::DoNotOptimize(std::as_const(sum_m));
    }
    const double mean_m = (62.0 - (61.05 + 2.25e-4 * 1999.5)) * 3600.0 / 4.0;
    if (std::abs(sum_m / 4000.0 - mean_m) > 1.0)
        state.SkipWithError("the heights are wrong");
    state.SetItemsProcessed(state.iterations() * static_cast<std::int64_t>(places.size()));
}

BENCHMARK(heights_along_a_line)->Unit(benchmark::kMicrosecond);

void heights_in_another_crs(benchmark::State& state) {
    const test::TempFolder folder;
    test::write_raster(folder.path() / "utm.tif",
                       {.columns = 2000,
                        .rows = 2000,
                        .corner_and_cell = {300'000.0, 25.0, 0.0, 6'800'000.0, 0.0, -25.0},
                        .crs = "EPSG:32633",
                        .no_data = std::nullopt,
                        .unit = ""},
                       [](int, int) { return 250.0; });
    Elevation elevation({folder.path() / "utm.tif"});
    std::vector<Position> places;
    for (int i = 0; i < 1000; ++i)
        places.push_back({.lat_deg = 61.0 + 2e-4 * i, .lon_deg = 11.6 + 2e-4 * i});
    std::size_t found = 0;
    for (auto _ : state) {
        found = 0;
        for (const Position& place : places)
            found += std::abs(elevation.at(place).value_or(0.0) - 250.0) < 1e-6 ? 1U : 0U;
        benchmark::DoNotOptimize(std::as_const(found));
    }
    if (found != places.size())
        state.SkipWithError("the heights are wrong");
    state.SetItemsProcessed(state.iterations() * static_cast<std::int64_t>(places.size()));
}

BENCHMARK(heights_in_another_crs)->Unit(benchmark::kMicrosecond);

void daylight_of_a_day(benchmark::State& state) {
    Daylight light;
    for (auto _ : state) {
        light = daylight(std::chrono::year(2027) / 6 / 18, south, "Europe/Oslo");
        benchmark::DoNotOptimize(std::as_const(light));
    }
    if (!light.sun.rise || !light.sun.set)
        state.SkipWithError("the sun is wrong");
}

BENCHMARK(daylight_of_a_day)->Unit(benchmark::kMicrosecond);

} // namespace
} // namespace tumpline::geo
