#include "geo/lines/geodesic.h"
#include "geo/lines/polyline.h"
#include "geo/tracks/read_tracks.h"
#include "geo/tracks/track.h"
#include "tests/support/temp_folder.h"

#include <benchmark/benchmark.h>
#include <fmt/format.h>

#include <cstddef>
#include <iterator>
#include <string>
#include <vector>

namespace {

using namespace tumpline;

/// A recorded track of `count` points some metres apart with heights and times; every thousandth
/// point stands twice.
std::string recorded_track(std::size_t count) {
    std::string text =
        "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n"
        "<gpx version=\"1.1\" creator=\"bench\" "
        "xmlns=\"http://www.topografix.com/GPX/1/1\">\n<trk><name>Long</name><trkseg>\n";
    text.reserve(text.size() + 120 * count);
    double lat_deg = 60.0;
    double lon_deg = 8.0;
    for (std::size_t point = 0; point < count; ++point) {
        if (point % 1000 != 1) {
            lat_deg += 0.00002 + 0.000005 * static_cast<double>(point % 7);
            lon_deg += point % 200'000 < 100'000 ? 0.00003 : -0.00003;
            if (lat_deg > 70.0)
                lat_deg = 60.0;
        }
        fmt::format_to(std::back_inserter(text),
                       "<trkpt lat=\"{:.7f}\" lon=\"{:.7f}\"><ele>{:.1f}</ele>"
                       "<time>2027-06-{:02}T{:02}:{:02}:{:02}Z</time></trkpt>\n",
                       lat_deg,
                       lon_deg,
                       800.0 + 0.1 * static_cast<double>(point % 4000),
                       1 + point / 86'400,
                       point / 3600 % 24,
                       point / 60 % 60,
                       point % 60);
    }
    return text + "</trkseg></trk></gpx>\n";
}

std::vector<geo::Position> positions(const geo::Track& track) {
    std::vector<geo::Position> places;
    for (const geo::TrackPoint& point : geo::joined(track))
        places.push_back(point.at);
    return places;
}

void read_gpx(benchmark::State& state) {
    const auto count = static_cast<std::size_t>(state.range(0));
    const test::TempFolder folder;
    const std::string text = recorded_track(count);
    const auto file = folder.write("long.gpx", text);
    for (auto _ : state) {
        const geo::TrackFile tracks = geo::read_tracks(file);
        const geo::Repairs& repairs = tracks.tracks.front().repairs;
        if (tracks.tracks.front().parts.front().size() + repairs.duplicates != count ||
            repairs.duplicates != count / 1000)
            state.SkipWithError("points were lost");
    }
    state.SetBytesProcessed(static_cast<int64_t>(text.size()) *
                            static_cast<int64_t>(state.iterations()));
    state.SetComplexityN(state.range(0));
}

BENCHMARK(read_gpx)
    ->RangeMultiplier(10)
    ->Range(10'000, 1'000'000)
    ->Unit(benchmark::kMillisecond)
    ->Complexity(benchmark::oN);

/// The line itself: a geodesic for each step.
void measure_line(benchmark::State& state) {
    const test::TempFolder folder;
    const auto count = static_cast<std::size_t>(state.range(0));
    const auto file = folder.write("long.gpx", recorded_track(count));
    const std::vector<geo::Position> places = positions(geo::read_tracks(file).tracks.front());
    for (auto _ : state) {
        const geo::Polyline line(places);
        if (line.length_m() < 2.0 * static_cast<double>(count))
            state.SkipWithError("the line is too short");
    }
    state.SetComplexityN(state.range(0));
}

BENCHMARK(measure_line)
    ->RangeMultiplier(10)
    ->Range(10'000, 1'000'000)
    ->Unit(benchmark::kMillisecond)
    ->Complexity(benchmark::oN);

/// A camp a hundred metres from the line, found again.
void snap_to_line(benchmark::State& state) {
    const test::TempFolder folder;
    const auto count = static_cast<std::size_t>(state.range(0));
    const auto file = folder.write("long.gpx", recorded_track(count));
    const geo::Polyline line(positions(geo::read_tracks(file).tracks.front()));
    const double along_m = 0.4 * line.length_m();
    const geo::Position camp =
        geo::destination(line.at(along_m), line.bearing_deg(along_m) + 90.0, 100.0);
    for (auto _ : state) {
        const geo::Snap snap = line.nearest(camp);
        if (snap.off_m > 100.001)
            state.SkipWithError("a nearer point was missed");
        benchmark::DoNotOptimize(line.passes(camp, 500.0));
    }
}

BENCHMARK(snap_to_line)
    ->RangeMultiplier(10)
    ->Range(10'000, 1'000'000)
    ->Unit(benchmark::kMicrosecond);

} // namespace
