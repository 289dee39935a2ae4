#include "planner/models/drinking.h"
#include "planner/models/food.h"
#include "planner/models/paddling.h"
#include "planner/models/river.h"
#include "planner/models/stove_fuel.h"
#include "planner/models/wind.h"
#include "tests/plots/chart.h"

#include <string>
#include <utility>

namespace tumpline::plots {

namespace {

using namespace planner;

constexpr std::pair<const char*, HullKind> hulls[] = {{"kayak", HullKind::kayak},
                                                      {"tandem canoe", HullKind::tandem_canoe},
                                                      {"solo canoe", HullKind::solo_canoe},
                                                      {"inflatable", HullKind::inflatable},
                                                      {"packraft", HullKind::packraft}};

Chart head_wind_chart() {
    Chart chart{.name = "paddling",
                .title = "Speed through the water against that in calm",
                .x = {.title = "head wind at 10 m, m/s (below 0: tail wind)",
                      .from = -10.0,
                      .to = 15.0,
                      .tick = 5.0},
                .y = {.title = "v(W) / v(0)", .from = 0.0, .to = 1.2, .tick = 0.2},
                .lines = {},
                .marks = {{.name = "wind chart, kayak", .at = {15.0 * 0.5144, 0.75}},
                          {.name = "observation, packraft", .at = {25.0 * 0.447, 0.2}}}};
    for (const auto& [name, kind] : hulls)
        chart.lines.push_back(curve(chart, name, [boat = hull(kind)](double wind_mps) {
            return wind_speed_ratio(boat, wind_mps);
        }));
    return chart;
}

Chart wind_bearing_chart() {
    Chart chart{.name = "paddling_bearing",
                .title = "Speed made good in a wind of 6 m/s by its bearing",
                .x = {.title = "wind against course, degrees (0: from ahead)",
                      .from = 0.0,
                      .to = 180.0,
                      .tick = 30.0},
                .y = {.title = "share of the calm speed", .from = 0.0, .to = 1.2, .tick = 0.2},
                .lines = {},
                .marks = {}};
    for (const auto& [name, kind] : hulls)
        chart.lines.push_back(curve(chart, name, [craft = kind](double off_deg) {
            const PaddledCourse course{.calm_speed_mps = default_calm_speed_mps(craft),
                                       .bearing_deg = 0.0};
            return under_wind(craft, course, {6.0, off_deg}).made_good_mps / course.calm_speed_mps;
        }));
    return chart;
}

Chart current_chart() {
    Chart chart{.name = "river",
                .title = "Estimated current of a bed winding-pools-shoals",
                .x = {.title = "fall, m/km", .from = 0.0, .to = 10.0, .tick = 2.0},
                .y = {.title = "m/s", .from = 0.0, .to = 3.0, .tick = 0.5},
                .lines = {},
                .marks = {}};
    for (const auto& [name, depth_m] :
         {std::pair{"0.3 m deep", 0.3}, std::pair{"0.6 m deep", 0.6}, std::pair{"1.2 m deep", 1.2}})
        chart.lines.push_back(curve(chart, name, [depth = depth_m](double fall) {
            const Roughness row = chow_roughness(default_bed).value_or(chow_rows().front());
            return estimated_current({fall / 1000.0, depth, row}).likely_mps;
        }));
    return chart;
}

Chart wind_chart() {
    Chart chart{.name = "wind",
                .title = "Force of a wind, and the wind at the height of a paddler",
                .x = {.title = "mean wind at 10 m, m/s", .from = 0.0, .to = 35.0, .tick = 5.0},
                .y = {.title = "force; m/s", .from = 0.0, .to = 28.0, .tick = 4.0},
                .lines = {},
                .marks = {}};
    chart.lines.push_back(
        curve(chart, "Beaufort force", [](double wind_mps) { return 1.0 * beaufort(wind_mps); }));
    chart.lines.push_back(curve(
        chart, "m/s at 0.7 m", [](double wind_mps) { return wind_mps * wind_height_factor(0.7); }));
    return chart;
}

Chart drinking_chart() {
    Chart chart{.name = "drinking",
                .title = "Water planned per hour on the move",
                .x = {.title = "air, C", .from = 0.0, .to = 40.0, .tick = 10.0},
                .y = {.title = "L/h", .from = 0.0, .to = 1.6, .tick = 0.2},
                .lines = {},
                .marks = {}};
    for (const auto& [name, effort] : {std::pair{"hard", Effort::hard},
                                       std::pair{"moderate", Effort::moderate},
                                       std::pair{"easy", Effort::easy}})
        chart.lines.push_back(curve(chart, name, [kind = effort](double air_c) {
            return 3600.0 * drinking_lps(kind, air_c);
        }));
    chart.lines.push_back(
        curve(chart, "never above", [](double) { return most_drunk_per_hour_l; }));
    return chart;
}

Chart fuel_chart() {
    Chart chart{.name = "stove_fuel",
                .title = "Fuel that brings a litre to 100 C",
                .x = {.title = "start, C (below 0: snow)", .from = -20.0, .to = 20.0, .tick = 5.0},
                .y = {.title = "g per litre", .from = 0.0, .to = 100.0, .tick = 20.0},
                .lines = {},
                .marks = {}};
    for (const Stove& burner : stoves())
        chart.lines.push_back(curve(chart, std::string(burner.name), [burner](double start_c) {
            return 1000.0 * fuel_kg_per_litre(burner, {start_c, sea_level_boil_c, start_c < 0.0});
        }));
    return chart;
}

Chart food_chart() {
    Chart chart{
        .name = "food",
        .title = "Food and packaging per person and day",
        .x = {.title = "energy of the day, kcal", .from = 2000.0, .to = 6000.0, .tick = 1000.0},
        .y = {.title = "kg", .from = 0.0, .to = 2.0, .tick = 0.5},
        .lines = {},
        .marks = {}};
    for (const auto& [name, density] :
         {std::pair{"3.5 kcal/g", 3.5}, std::pair{"4.0 kcal/g", 4.0}, std::pair{"4.5 kcal/g", 4.5}})
        chart.lines.push_back(curve(chart, name, [kcal_per_g = density](double kcal) {
            return ration_kg(
                {kcal * j_per_kcal, kcal_per_g * 1000.0 * j_per_kcal, default_packaging});
        }));
    for (const PrintedRation& ration : printed_rations())
        if (ration.energy_j && ration.mass_kg && *ration.energy_j > 2000.0 * j_per_kcal)
            chart.marks.push_back(
                {.name = {}, .at = {*ration.energy_j / j_per_kcal, *ration.mass_kg}});
    return chart;
}

} // namespace

std::vector<Chart> charts_on_water() {
    return {head_wind_chart(),
            wind_bearing_chart(),
            current_chart(),
            wind_chart(),
            drinking_chart(),
            fuel_chart(),
            food_chart()};
}

} // namespace tumpline::plots
