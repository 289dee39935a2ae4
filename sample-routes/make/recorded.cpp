#include "sample-routes/make/files.h"
#include "sample-routes/make/samples.h"

#include <chrono>
#include <cmath>

namespace tumpline::samples {
namespace {

using std::chrono::seconds;
using std::chrono::sys_days;
using std::chrono::sys_seconds;

/// A halt of the recording person: the receiver goes on while the position stays.
struct Halt {
    std::size_t point; ///< after which it begins
    seconds lasts;
};

/// Gives the points of `line` times. The pace of each step is `mps(slope)`, 6 % up or down by draw.
template <class Speed>
void walk_with_a_clock(Line& line,
                       sys_seconds start,
                       double step_m,
                       const std::vector<Halt>& halts,
                       Draws& draws,
                       Speed mps) {
    double elapsed_s = 0.0;
    for (std::size_t i = 0; i < line.points.size(); ++i) {
        if (i > 0) {
            const double slope = (line.points[i].ground_m - line.points[i - 1].ground_m) / step_m;
            elapsed_s += step_m / (mps(slope) * (1.0 + 0.06 * draws.normal()));
        }
        for (const Halt& halt : halts)
            if (halt.point + 1 == i)
                elapsed_s += static_cast<double>(halt.lasts.count());
        line.points[i].time = start + seconds(std::lround(elapsed_s));
    }
}

} // namespace

void make_recorded(const std::filesystem::path& into) {
    using namespace std::chrono_literals;
    RoutePlan plan{.lat_deg = 63.5310, .lon_deg = 1.2050, .legs = {}, .places = {}};
    plan.noise_m = 2.0;
    plan.seed = 7;
    plan.legs = {
        {.name = "recorded walk",
         .type = "walk",
         .length_m = 9000.0,
         .bearing_deg = 70.0,
         .bend_deg = 60.0,
         .wiggle_deg = 35.0,
         .step_m = 60.0,
         .heights = {{0.0, 210.0}, {2500.0, 230.0}, {6000.0, 610.0}, {9000.0, 330.0}}},
        {.name = "recorded paddle",
         .type = "paddle",
         .length_m = 5400.0,
         .bearing_deg = 140.0,
         .bend_deg = 10.0,
         .wiggle_deg = 15.0,
         .step_m = 60.0,
         .heights = {{0.0, 330.0}, {5400.0, 330.0}}},
    };
    Layout layout = lay_out(plan);
    Draws draws(plan.seed);
    const sys_days day = std::chrono::year(2026) / std::chrono::September / 12;
    // On foot 0.86 of Tobler's hiking function (6 km/h times exp(-3.5 |slope + 0.05|)), afloat
    // 4.3 km/h: what `tumpline pace` has to find again.
    walk_with_a_clock(
        layout.lines[0], day + 7h, 60.0, {{40, 6min}, {101, 22min}}, draws, [](double slope) {
            return 0.86 * 6.0 / 3.6 * std::exp(-3.5 * std::abs(slope + 0.05));
        });
    walk_with_a_clock(
        layout.lines[1], day + 11h, 60.0, {{52, 8min}}, draws, [](double) { return 4.3 / 3.6; });
    write_gpx(into / "recorded.gpx", "A walk and a paddle, recorded", layout);
}

} // namespace tumpline::samples
