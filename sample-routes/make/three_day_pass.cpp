#include "sample-routes/make/files.h"
#include "sample-routes/make/land.h"
#include "sample-routes/make/samples.h"

namespace tumpline::samples {

void make_three_day_pass(const std::filesystem::path& into) {
    RoutePlan plan{.lat_deg = 62.1310, .lon_deg = 0.4120, .legs = {}, .places = {}};
    plan.seed = 62;
    const auto leg = [&plan](const char* name, const char* type, double bearing_deg) -> LegPlan& {
        plan.legs.push_back({.name = name,
                             .type = type,
                             .length_m = 0.0,
                             .bearing_deg = bearing_deg,
                             .bend_deg = 10.0,
                             .wiggle_deg = 30.0,
                             .step_m = 100.0,
                             .heights = {}});
        return plan.legs.back();
    };
    const auto shape = [](LegPlan& made, std::vector<Height> heights) {
        made.length_m = heights.back().along_m;
        made.heights = std::move(heights);
    };
    shape(leg("up to the shelf", "walk", 30.0), {{0.0, 210.0}, {12'400.0, 1040.0}});
    shape(leg("pass", "walk", 50.0), {{0.0, 1040.0}, {2100.0, 1190.0}, {6200.0, 630.0}});
    shape(leg("lake west", "paddle", 80.0), {{0.0, 630.0}, {4000.0, 630.0}});
    shape(leg("lake crossing", "paddle", 100.0), {{0.0, 630.0}, {1400.0, 630.0}});
    shape(leg("lake east", "paddle", 95.0), {{0.0, 630.0}, {3800.0, 630.0}});
    shape(leg("falls", "portage", 130.0), {{0.0, 630.0}, {620.0, 612.0}});
    shape(leg("river one", "paddle", 140.0), {{0.0, 612.0}, {8000.0, 598.5}});
    shape(leg("rapids", "paddle", 170.0), {{0.0, 598.5}, {3000.0, 580.5}});
    shape(leg("river two", "paddle", 175.0), {{0.0, 580.5}, {9800.0, 564.0}});
    shape(leg("to the stop", "walk", 230.0), {{0.0, 564.0}, {2300.0, 584.0}});
    plan.places = {
        {"Kvernlia stop", "start", 0, 0.0, 0.0},
        {"Shelf camp", "camp", 1, 0.0, 30.0},
        {"Lake head", "put-in", 2, 0.0, 0.0},
        {"Falls camp", "camp", 5, 620.0, 30.0},
        {"Rapids", "hazard", 7, 0.0, 0.0},
        {"Stone bridge", "take-out", 8, 9800.0, 0.0},
        {"Bridge stop", "finish", 9, 2300.0, 0.0},
    };
    const Layout layout = lay_out(plan);
    write_gpx(into / "three-day-pass.gpx", "Three days over the pass", layout);
    write_land(into / "three-day-pass-ground.geojson", layout, {.points = {}, .seed = plan.seed});
}

} // namespace tumpline::samples
