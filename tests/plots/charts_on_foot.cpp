#include "planner/models/compendium.h"
#include "planner/models/load_carriage.h"
#include "planner/models/load_effect.h"
#include "planner/models/resting_energy.h"
#include "planner/models/terrain.h"
#include "planner/models/walking_curves.h"
#include "planner/models/walking_speed.h"
#include "tests/plots/chart.h"
#include "tests/plots/standard_route.h"

#include <string>
#include <utility>

namespace tumpline::plots {

namespace {

using namespace planner;

Chart walking_speed_chart() {
    Chart chart{.name = "walking_speed",
                .title = "Speed on the map of a walker on a path",
                .x = {.title = "slope, percent", .from = -60.0, .to = 60.0, .tick = 20.0},
                .y = {.title = "km/h", .from = 0.0, .to = 8.0, .tick = 1.0},
                .lines = {},
                .marks = {}};
    for (const WalkingModel model : {WalkingModel::swiss_signpost,
                                     WalkingModel::naismith_langmuir,
                                     WalkingModel::langmuir_party,
                                     WalkingModel::tobler,
                                     WalkingModel::irmischer_clarke,
                                     WalkingModel::campbell_2019,
                                     WalkingModel::sullivan_2020,
                                     WalkingModel::din_33466})
        chart.lines.push_back(
            curve(chart, std::string(walking_model_name(model)), [model](double percent) {
                return 3.6 * walking_speed_mps(model, percent / 100.0);
            }));
    return chart;
}

Chart percentiles_chart() {
    Chart chart{.name = "walking_percentiles",
                .title = "People apart: percentiles, paces of crews under packs, off the path",
                .x = {.title = "slope, percent", .from = -60.0, .to = 60.0, .tick = 20.0},
                .y = {.title = "km/h", .from = 0.0, .to = 10.0, .tick = 1.0},
                .lines = {},
                .marks = {}};
    for (const WalkingModel model : {WalkingModel::campbell_2019,
                                     WalkingModel::campbell_2019_p10,
                                     WalkingModel::campbell_2019_p20,
                                     WalkingModel::campbell_2019_p50,
                                     WalkingModel::sullivan_2020,
                                     WalkingModel::sullivan_2020_moderate,
                                     WalkingModel::sullivan_2020_high})
        chart.lines.push_back(
            curve(chart, std::string(walking_model_name(model)), [model](double percent) {
                return 3.6 * walking_speed_mps(model, percent / 100.0);
            }));
    chart.lines.push_back(curve(chart, "irmischer-clarke, off the path", [](double percent) {
        return 3.6 * walking_speed_mps(
                         WalkingModel::irmischer_clarke, percent / 100.0, Footing::off_path);
    }));
    return chart;
}

Chart langmuir_chart() {
    Chart chart{.name = "langmuir",
                .title = "Naismith and Langmuir as printed, and smoothed at the edges",
                .x = {.title = "slope, percent", .from = -40.0, .to = 10.0, .tick = 10.0},
                .y = {.title = "km/h", .from = 0.0, .to = 13.0, .tick = 1.0},
                .lines = {},
                .marks = {}};
    chart.lines.push_back(curve(chart, "smoothed", [](double percent) {
        return 3.6 * naismith_langmuir_smoothed_mps(percent / 100.0);
    }));
    chart.lines.push_back(curve(chart, "as printed", [](double percent) {
        return 3.6 * naismith_langmuir_mps(percent / 100.0);
    }));
    return chart;
}

Chart load_effect_chart() {
    Chart chart{.name = "load_effect",
                .title = "Speed under a load at equal effort",
                .x = {.title = "load over body mass", .from = 0.0, .to = 0.8, .tick = 0.1},
                .y = {.title = "factor on speed", .from = 0.0, .to = 1.0, .tick = 0.2},
                .lines = {},
                .marks = {{"20 kg by [Tranter1970]", {.x = 0.27, .y = 0.805}},
                          // top speeds of 1.87 and 1.69 m/s against 1.95
                          {"[Looney2021], 1.95 m/s", {.x = 0.22, .y = 1.87 / 1.95}},
                          {"[Looney2021]", {.x = 0.44, .y = 1.69 / 1.95}}}};
    chart.lines.push_back(curve(chart, "from 1.39 m/s (ours)", equal_effort_factor));
    chart.lines.push_back(curve(chart, "from 1.95 m/s", [](double load_ratio) {
        return equal_effort_speed_mps({.eta = 1.0,
                                       .load_ratio = load_ratio,
                                       .reference_mps = 1.95,
                                       .reference_eta = 1.0}) /
               1.95;
    }));
    return chart;
}

Chart terrain_chart() {
    Chart chart{.name = "terrain",
                .title = "Time on each ground, and the time of equal effort",
                .x = {.title = "terrain coefficient", .from = 1.0, .to = 3.0, .tick = 0.5},
                .y = {.title = "factor on time", .from = 0.8, .to = 3.2, .tick = 0.4},
                .lines = {},
                .marks = {}};
    chart.lines.push_back(curve(chart, "equal effort", equal_effort_time_factor));
    for (const Ground& ground : grounds())
        chart.marks.push_back(
            {std::string(ground.name), {.x = ground.eta, .y = ground.time_factor}});
    return chart;
}

constexpr Carrying standard_walker{.body_kg = 75.0,
                                   .load_kg = 25.0,
                                   .speed_mps = 0.9,
                                   .slope = 0.0,
                                   .terrain = 1.1,
                                   .resting_w = 82.0};

Chart carriage_slope_chart() {
    Chart chart{.name = "load_carriage_slope",
                .title = "75 kg carry 25 kg at 0.9 m/s on a path",
                .x = {.title = "slope, percent", .from = -30.0, .to = 30.0, .tick = 10.0},
                .y = {.title = "watts", .from = 0.0, .to = 1600.0, .tick = 200.0},
                .lines = {},
                .marks = {}};
    for (const CarriageModel model : carriage_models)
        chart.lines.push_back(
            curve(chart, std::string(carriage_model_name(model)), [model](double percent) {
                Carrying walk = standard_walker;
                walk.slope = percent / 100.0;
                return carriage_w(model, walk);
            }));
    return chart;
}

Chart carriage_load_chart() {
    Chart chart{.name = "load_carriage_load",
                .title = "75 kg on a level path at 0.9 m/s",
                .x = {.title = "load, kg", .from = 0.0, .to = 50.0, .tick = 10.0},
                .y = {.title = "watts", .from = 0.0, .to = 800.0, .tick = 100.0},
                .lines = {},
                .marks = {}};
    for (const CarriageModel model : carriage_models)
        chart.lines.push_back(
            curve(chart, std::string(carriage_model_name(model)), [model](double load_kg) {
                Carrying walk = standard_walker;
                walk.load_kg = load_kg;
                return carriage_w(model, walk);
            }));
    return chart;
}

Chart resting_chart() {
    Chart chart{.name = "resting_energy",
                .title = "Resting rate at 40 years: a man of 1.78 m, a woman of 1.66 m",
                .x = {.title = "body mass, kg", .from = 45.0, .to = 115.0, .tick = 10.0},
                .y = {.title = "watts", .from = 50.0, .to = 110.0, .tick = 10.0},
                .lines = {},
                .marks = {}};
    for (const bool male : {true, false})
        for (const RestingModel model :
             {RestingModel::mifflin_st_jeor_1990, RestingModel::schofield_1985})
            chart.lines.push_back(
                curve(chart,
                      std::string(male ? "man, " : "woman, ") +
                          (model == RestingModel::schofield_1985 ? "Schofield" : "Mifflin"),
                      [model, male](double mass_kg) {
                          return resting_w(model,
                                           {.mass_kg = mass_kg,
                                            .height_m = male ? 1.78 : 1.66,
                                            .age_years = 40.0,
                                            .male = male});
                      }));
    return chart;
}

Chart compendium_chart() {
    Chart chart{.name = "compendium",
                .title = "An hour by the table, rest included",
                .x = {.title = "body mass, kg", .from = 40.0, .to = 120.0, .tick = 10.0},
                .y = {.title = "kcal", .from = 0.0, .to = 900.0, .tick = 100.0},
                .lines = {},
                .marks = {}};
    for (const auto& [name, activity_met] :
         {std::pair{"backpacking, portage", met_backpacking},
          std::pair{"hiking without a pack", met_hiking},
          std::pair{"paddling, hard", met_paddling_hard},
          std::pair{"paddling, steady", met_paddling_steady},
          std::pair{"paddling for pleasure", met_paddling_pleasure},
          std::pair{"camp, transition", met_camp},
          std::pair{"standing", met_standing},
          std::pair{"asleep, sitting", met_sleep}})
        chart.lines.push_back(curve(chart, name, [met = activity_met](double mass_kg) {
            return met_energy_j({.met = met, .body_kg = mass_kg, .duration_s = 3600.0}) / 4184.0;
        }));
    return chart;
}

} // namespace

std::vector<Chart> charts_on_foot() {
    return {walking_speed_chart(),
            percentiles_chart(),
            langmuir_chart(),
            load_effect_chart(),
            terrain_chart(),
            carriage_slope_chart(),
            carriage_load_chart(),
            resting_chart(),
            compendium_chart()};
}

} // namespace tumpline::plots
