#include "sample-routes/make/files.h"
#include "sample-routes/make/land.h"
#include "sample-routes/make/samples.h"

namespace tumpline::samples {

void make_five_over_two_passes(const std::filesystem::path& into) {
    RoutePlan plan{.lat_deg = 61.5020, .lon_deg = 0.8040, .legs = {}, .places = {}};
    plan.seed = 5;
    double bearing_deg = 350.0;
    const auto leg = [&](const char* name, const char* type, std::vector<Height> heights) {
        const double length_m = heights.back().along_m;
        plan.legs.push_back({.name = name,
                             .type = type,
                             .length_m = length_m,
                             .bearing_deg = bearing_deg,
                             .bend_deg = 10.0,
                             .wiggle_deg = 30.0,
                             .step_m = length_m < 2000.0 ? 60.0 : 150.0,
                             .heights = std::move(heights)});
        bearing_deg += 15.0;
    };
    leg("hut to the corrie", "walk", {{0.0, 380.0}, {11'000.0, 1280.0}});
    leg("first pass", "walk", {{0.0, 1280.0}, {2200.0, 1430.0}, {7500.0, 870.0}});
    leg("upper lake", "paddle", {{0.0, 870.0}, {3200.0, 870.0}});
    leg("long carry", "portage", {{0.0, 870.0}, {900.0, 886.0}, {1900.0, 852.0}});
    leg("twin lake", "paddle", {{0.0, 852.0}, {5400.0, 852.0}});
    leg("second pass", "walk", {{0.0, 852.0}, {4100.0, 1310.0}, {9000.0, 760.0}});
    leg("steep lake", "paddle", {{0.0, 760.0}, {2800.0, 760.0}});
    leg("short carry", "portage", {{0.0, 760.0}, {600.0, 741.0}});
    leg("lower lake", "paddle", {{0.0, 741.0}, {6100.0, 741.0}});
    leg("village track", "walk", {{0.0, 741.0}, {3000.0, 688.0}});
    leg("to the river", "walk", {{0.0, 688.0}, {2000.0, 640.0}});
    leg("upper reach", "paddle", {{0.0, 640.0}, {12'000.0, 592.0}});
    leg("gorge", "paddle", {{0.0, 592.0}, {3000.0, 568.0}});
    leg("middle reach", "paddle", {{0.0, 568.0}, {14'000.0, 522.0}});
    leg("lower reach", "paddle", {{0.0, 522.0}, {16'000.0, 494.0}});
    leg("to the road", "walk", {{0.0, 494.0}, {1500.0, 512.0}});
    plan.places = {
        {"Corrie hut", "start", 0, 0.0, 0.0},
        {"Corrie camp", "camp", 0, 11'000.0, 40.0},
        {"Upper lake foot", "camp", 2, 3200.0, 40.0},
        {"Twin lake beach", "camp", 4, 5400.0, -40.0},
        {"Steep lake camp", "camp", 6, 2800.0, 40.0},
        {"Ternby village", "resupply", 9, 3000.0, 0.0},
        {"Ternby camp", "camp", 9, 3000.0, 40.0},
        {"River camp", "camp", 11, 12'000.0, 30.0},
        {"Gorge", "hazard", 12, 0.0, 0.0},
        {"Island camp", "camp", 13, 14'000.0, 30.0},
        {"Ash bridge", "take-out", 14, 16'000.0, 0.0},
        {"Ash road", "finish", 15, 1500.0, 0.0},
    };
    const Layout layout = lay_out(plan);
    write_gpx(into / "five-over-two-passes.gpx", "Five over two passes", layout);
    write_land(into / "five-over-two-passes-ground.geojson",
               layout,
               {.points = {{"Gorge", "rapids", 12, 400.0}}, .seed = plan.seed});
}

} // namespace tumpline::samples
