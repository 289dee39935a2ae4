#include "sample-routes/make/files.h"
#include "sample-routes/make/land.h"
#include "sample-routes/make/samples.h"

namespace tumpline::samples {

void make_saddle(const std::filesystem::path& into) {
    RoutePlan plan{.lat_deg = 63.4120, .lon_deg = 1.3050, .legs = {}, .places = {}};
    plan.noise_m = 2.5;
    plan.seed = 61;
    plan.legs = {
        {.name = "approach",
         .type = "walk",
         .length_m = 11'500.0,
         .bearing_deg = 20.0,
         .bend_deg = 35.0,
         .wiggle_deg = 38.0,
         .step_m = 100.0,
         .heights = {{0.0, 412.0}, {2600.0, 520.0}, {3500.0, 493.0}, {11'500.0, 905.0}}},
        {.name = "saddle",
         .type = "walk",
         .length_m = 8'200.0,
         .bearing_deg = 60.0,
         .bend_deg = 50.0,
         .wiggle_deg = 30.0,
         .step_m = 100.0,
         .heights = {{0.0, 905.0}, {3100.0, 1184.0}, {8200.0, 742.0}}},
        {.name = "tarn",
         .type = "paddle",
         .length_m = 6'400.0,
         .bearing_deg = 112.0,
         .bend_deg = 20.0,
         .wiggle_deg = 12.0,
         .step_m = 200.0,
         .heights = {{0.0, 742.0}, {6400.0, 742.0}},
         .half_width_m = 420.0},
        {.name = "carry",
         .type = "portage",
         .length_m = 740.0,
         .bearing_deg = 150.0,
         .bend_deg = 0.0,
         .wiggle_deg = 20.0,
         .step_m = 50.0,
         .heights = {{0.0, 742.0}, {120.0, 749.0}, {740.0, 668.0}}},
        {.name = "upper river",
         .type = "paddle",
         .length_m = 9'500.0,
         .bearing_deg = 165.0,
         .bend_deg = 60.0,
         .wiggle_deg = 45.0,
         .step_m = 100.0,
         .heights = {{0.0, 668.0}, {3800.0, 654.0}, {5300.0, 639.0}, {9500.0, 619.0}},
         .half_width_m = 14.0},
        {.name = "lower river",
         .type = "paddle",
         .length_m = 12'600.0,
         .bearing_deg = 215.0,
         .bend_deg = 30.0,
         .wiggle_deg = 50.0,
         .step_m = 100.0,
         .heights = {{0.0, 619.0}, {12'600.0, 596.0}},
         .half_width_m = 20.0},
        {.name = "walk out",
         .type = "walk",
         .length_m = 2'400.0,
         .bearing_deg = 285.0,
         .bend_deg = -20.0,
         .wiggle_deg = 25.0,
         .step_m = 100.0,
         .heights = {{0.0, 596.0}, {2400.0, 641.0}}},
    };
    plan.places = {
        {"Road end", "start", 0, 0.0, 0.0},
        {"Stone hut", "exit", 0, 3500.0, 60.0},
        {"Shelf camp", "camp", 0, 11'500.0, 30.0},
        {"Shelf spring", "water", 0, 11'300.0, -25.0},
        {"Tarn head", "put-in", 2, 0.0, 0.0},
        {"Birch spit", "camp", 2, 5000.0, -380.0},
        {"Fall pool", "put-in", 4, 0.0, 0.0},
        {"Ledge rapid", "hazard", 4, 4600.0, 0.0},
        {"Gravel bar", "camp", 4, 9500.0, 25.0},
        {"Low spit", "camp", 5, 5000.0, -30.0},
        {"Road bridge", "take-out", 5, 12'600.0, 0.0},
        {"Quarry stop", "finish", 6, 2400.0, 0.0},
    };
    const Layout layout = lay_out(plan);
    write_gpx(into / "saddle.gpx", "Over the saddle and down the river", layout);
    write_gpx(into / "tarn-shore.gpx",
              "Round Long Tarn",
              {.lines = {shore_path(
                   layout.lines[2],
                   {.name = "tarn shore", .aside_m = -470.0, .above_m = 35.0, .humps = 5})},
               .waypoints = {}});
    write_land(into / "saddle-ground.geojson",
               layout,
               {.points = {{"Ledge rapid", "rapids", 4, 4600.0},
                           {"", "rapids", 5, 6100.0},
                           {"Lower fall", "waterfall", 3, 700.0}},
                .seed = plan.seed});
    write_geotiff(into / "saddle-dem.tif", make_ground(layout, plan.seed));
}

} // namespace tumpline::samples
