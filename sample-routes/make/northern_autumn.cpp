#include "sample-routes/make/files.h"
#include "sample-routes/make/land.h"
#include "sample-routes/make/samples.h"

namespace tumpline::samples {

void make_northern_autumn(const std::filesystem::path& into) {
    RoutePlan plan{.lat_deg = 70.6120, .lon_deg = 9.2040, .legs = {}, .places = {}};
    plan.seed = 70;
    const auto leg = [&plan](const char* name,
                             const char* type,
                             double bearing_deg,
                             std::vector<Height> heights) {
        plan.legs.push_back({.name = name,
                             .type = type,
                             .length_m = heights.back().along_m,
                             .bearing_deg = bearing_deg,
                             .bend_deg = 12.0,
                             .wiggle_deg = 25.0,
                             .step_m = 100.0,
                             .heights = std::move(heights)});
    };
    leg("to the lake", "walk", 40.0, {{0.0, 118.0}, {1900.0, 146.0}});
    leg("long lake", "paddle", 60.0, {{0.0, 146.0}, {6200.0, 146.0}});
    leg("isthmus", "portage", 70.0, {{0.0, 146.0}, {200.0, 155.0}, {380.0, 152.0}});
    leg("round lake", "paddle", 95.0, {{0.0, 152.0}, {5400.0, 152.0}});
    leg("over the heath", "walk", 120.0, {{0.0, 152.0}, {1800.0, 246.0}, {3900.0, 171.0}});
    leg("river", "paddle", 150.0, {{0.0, 171.0}, {7200.0, 157.0}});
    leg("to the road", "walk", 190.0, {{0.0, 157.0}, {900.0, 168.0}});
    plan.places = {
        {"Heath road", "start", 0, 0.0, 0.0},
        {"Alder point", "camp", 1, 6200.0, 20.0},
        {"Cairn bay", "camp", 3, 5400.0, 25.0},
        {"Bog bridge", "take-out", 5, 7200.0, 0.0},
        {"Post road", "finish", 6, 900.0, 0.0},
    };
    const Layout layout = lay_out(plan);
    write_gpx(into / "northern-autumn.gpx", "Before the freeze", layout);
    write_land(into / "northern-autumn-ground.geojson", layout, {.points = {}, .seed = plan.seed});
}

} // namespace tumpline::samples
