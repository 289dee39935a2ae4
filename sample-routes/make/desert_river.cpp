#include "sample-routes/make/files.h"
#include "sample-routes/make/land.h"
#include "sample-routes/make/samples.h"

namespace tumpline::samples {

void make_desert_river(const std::filesystem::path& into) {
    RoutePlan plan{.lat_deg = 29.1040, .lon_deg = -124.6120, .legs = {}, .places = {}};
    plan.noise_m = 1.0;
    plan.seed = 29;
    plan.legs = {
        {.name = "wash trail",
         .type = "walk",
         .length_m = 9600.0,
         .bearing_deg = 140.0,
         .bend_deg = -40.0,
         .wiggle_deg = 35.0,
         .step_m = 120.0,
         .heights = {{0.0, 1310.0}, {1200.0, 1352.0}, {9600.0, 968.0}}},
        {.name = "Ochre canyon",
         .type = "paddle",
         .length_m = 58'000.0,
         .bearing_deg = 190.0,
         .bend_deg = 30.0,
         .wiggle_deg = 75.0,
         .step_m = 250.0,
         .heights = {{0.0, 968.0}, {58'000.0, 934.0}},
         .half_width_m = 40.0},
        {.name = "weir carry",
         .type = "portage",
         .length_m = 420.0,
         .bearing_deg = 215.0,
         .bend_deg = 0.0,
         .wiggle_deg = 15.0,
         .step_m = 40.0,
         .heights = {{0.0, 934.0}, {80.0, 939.0}, {420.0, 929.0}}},
        {.name = "Ochre below the weir",
         .type = "paddle",
         .length_m = 52'000.0,
         .bearing_deg = 225.0,
         .bend_deg = -60.0,
         .wiggle_deg = 60.0,
         .step_m = 250.0,
         .heights = {{0.0, 929.0}, {52'000.0, 898.0}},
         .half_width_m = 40.0},
        {.name = "rim trail",
         .type = "walk",
         .length_m = 6400.0,
         .bearing_deg = 95.0,
         .bend_deg = 30.0,
         .wiggle_deg = 40.0,
         .step_m = 120.0,
         .heights = {{0.0, 898.0}, {1100.0, 932.0}, {4900.0, 1275.0}, {6400.0, 1268.0}}},
    };
    plan.places = {
        {"Tank crossing", "start", 0, 0.0, 0.0},
        {"Wash mouth", "put-in", 1, 0.0, 0.0},
        {"Cottonwood bench", "camp", 1, 6000.0, -45.0},
        {"Hanging spring", "water", 1, 20'000.0, 90.0},
        {"Red alcove", "camp", 1, 31'000.0, 60.0},
        {"Weir flat", "camp", 2, 420.0, 40.0},
        {"Ferry store", "resupply", 3, 17'000.0, 70.0},
        {"Ferry tap", "water", 3, 17'000.0, 75.0},
        {"Willow bar", "camp", 3, 26'000.0, -50.0},
        {"Seep alcove", "water", 3, 44'000.0, 110.0},
        {"Trail camp", "camp", 3, 52'000.0, 30.0},
        {"Rim road", "finish", 4, 6400.0, 0.0},
    };
    const Layout layout = lay_out(plan);
    write_geojson(into / "desert-river.geojson", layout);
    write_land(into / "desert-river-ground.geojson",
               layout,
               {.points = {{"Weir", "weir", 2, 80.0}}, .seed = plan.seed});
}

} // namespace tumpline::samples
