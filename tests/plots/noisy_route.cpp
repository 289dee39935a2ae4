#include "tests/plots/noisy_route.h"

#include "geo/lines/geodesic.h"
#include "geo/lines/polyline.h"
#include "geo/profiles/profile.h"
#include "planner/models/elevation.h"
#include "tests/plots/chart.h"
#include "tests/support/noisy_heights.h"

#include <fmt/format.h>

#include <array>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <iterator>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace tumpline::plots {

namespace {

using test::HeightNoise;

constexpr double step_m = 25.0;
constexpr double length_m = 10'000.0;
constexpr std::size_t points = 401;

/// The standard route: 500 m up at 10 %, and down again.
std::vector<double> one_summit_m() {
    std::vector<double> heights_m(points);
    for (std::size_t i = 0; i < points; ++i) {
        const double along_m = step_m * static_cast<double>(i);
        heights_m[i] = 400.0 + 0.1 * (along_m < length_m / 2 ? along_m : length_m - along_m);
    }
    return heights_m;
}

/// The profile that a plan makes of a line with these heights recorded every 25 m.
geo::Profile profile_of(const std::vector<double>& heights_m, const geo::ProfileOptions& options) {
    std::vector<geo::Position> line;
    geo::PointHeights recorded;
    for (std::size_t i = 0; i < heights_m.size(); ++i) {
        line.push_back(geo::destination(
            {.lat_deg = 61.5, .lon_deg = 12.25}, 0.0, step_m * static_cast<double>(i)));
        recorded.emplace_back(heights_m[i]);
    }
    return geo::make_profile(
        geo::Polyline(std::move(line)), recorded, nullptr, geo::Surface::land, options);
}

/// Rasters are cleaned as a barometer's heights are, with the same threshold and length.
geo::ProfileOptions options_of(std::string_view method) {
    const geo::ProfileOptions receiver;
    return method == planner::receiver_swings ? receiver : geo::of_barometer(receiver);
}

struct Case {
    std::string_view method;
    HeightNoise noise;
};

constexpr std::array cases = {Case{planner::raster_swings, {0.0, 0.0}},
                              Case{planner::raster_swings, {1.5, 50.0}},
                              Case{planner::raster_swings, {2.0, 100.0}},
                              Case{planner::receiver_swings, {0.0, 0.0}},
                              Case{planner::receiver_swings, {3.0, 0.0}},
                              Case{planner::receiver_swings, {3.0, 100.0}},
                              Case{planner::receiver_swings, {5.0, 100.0}},
                              Case{planner::barometer_swings, {0.0, 0.0}},
                              Case{planner::barometer_swings, {1.0, 300.0}},
                              Case{planner::barometer_swings, {1.5, 300.0}}};

/// Ascent by the plain sum of rises and by the method, means of a hundred draws.
std::pair<double, double> mean_ascent_m(const Case& wrong) {
    const int draws = wrong.noise.sigma_m > 0.0 ? 100 : 1;
    double plain_m = 0.0;
    double counted_m = 0.0;
    for (int seed = 1; seed <= draws; ++seed) {
        const std::vector<double> heights_m =
            test::noisy(one_summit_m(), step_m, wrong.noise, static_cast<std::uint64_t>(seed));
        plain_m += geo::climb(heights_m, 0.0).ascent_m / draws;
        counted_m += profile_of(heights_m, options_of(wrong.method)).ascent_m / draws;
    }
    return {plain_m, counted_m};
}

Line drawn(std::string name, const std::vector<double>& heights_m, double spacing_m) {
    Line line{.name = std::move(name), .points = {}};
    for (std::size_t i = 0; i < heights_m.size(); ++i)
        line.points.push_back(
            {.x = spacing_m * static_cast<double>(i) / 1000.0, .y = heights_m[i]});
    return line;
}

/// Level ground with two hills, and a receiver's errors.
Chart heights_chart() {
    Chart chart{.name = "elevation",
                .title = "A hill of 30 m, one of 7 m, and a receiver that errs by 3 m",
                .x = {.title = "km", .from = 0.0, .to = 4.0, .tick = 0.5},
                .y = {.title = "height, m", .from = 390.0, .to = 440.0, .tick = 10.0},
                .lines = {},
                .marks = {}};
    constexpr std::size_t shown = 161;
    std::vector<double> ground_m(shown, 400.0);
    const auto hill = [&](double middle_m, double height_m) {
        for (std::size_t i = 0; i < shown; ++i) {
            const double off_m = (step_m * static_cast<double>(i) - middle_m) / 250.0;
            ground_m[i] += height_m * std::exp(-off_m * off_m);
        }
    };
    hill(1200.0, 30.0);
    hill(2800.0, 7.0);
    const std::vector<double> recorded_m = test::noisy(ground_m, step_m, {3.0, 50.0}, 7);
    chart.lines.push_back(drawn("ground", ground_m, step_m));
    chart.lines.push_back(drawn("recorded", recorded_m, step_m));
    for (const std::string_view method : {planner::receiver_swings, planner::barometer_swings}) {
        const geo::Profile profile = profile_of(recorded_m, options_of(method));
        chart.lines.push_back(drawn(std::string(method), profile.heights_m, profile.step_m));
    }
    return chart;
}

} // namespace

std::vector<Chart> charts_of_heights() {
    return {heights_chart()};
}

std::string noisy_climb_table() {
    std::string table =
        "| model | spread of the errors | together over | plain sum of rises | by the "
        "model |\n|---|---|---|---|---|\n";
    for (const Case& wrong : cases) {
        const auto [plain_m, counted_m] = mean_ascent_m(wrong);
        const bool errs = wrong.noise.sigma_m > 0.0;
        const std::string over = wrong.noise.correlation_m > 0.0
                                     ? fmt::format(" {:.0f} m", wrong.noise.correlation_m)
                                     : " each for itself";
        fmt::format_to(std::back_inserter(table),
                       "| `{}` | {} |{} | {:.0f} m | {:.0f} m |\n",
                       wrong.method,
                       errs ? fmt::format("{:.1f} m", wrong.noise.sigma_m) : "none",
                       errs ? over : "",
                       plain_m,
                       counted_m);
    }
    return table;
}

} // namespace tumpline::plots
