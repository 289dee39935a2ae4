#include "planner/models/drinking.h"
#include "planner/models/food.h"
#include "planner/models/paddling.h"
#include "planner/models/river.h"
#include "planner/models/stove_fuel.h"
#include "planner/models/wind.h"
#include "tests/support/line_plot.h"

#include <gtest/gtest.h>

#include <functional>
#include <string>
#include <utility>

namespace tumpline::planner {

namespace {

using test::LinePlot;
using test::Series;

/// A function over an axis, in a hundred steps.
Series line(std::string name, const test::Axis& x, const std::function<double(double)>& y) {
    Series series{.name = std::move(name), .points = {}};
    for (int i = 0; i <= 100; ++i) {
        const double at = x.from + (x.to - x.from) * i / 100.0;
        series.points.emplace_back(at, y(at));
    }
    return series;
}

TEST(WaterPlots, SpeedUnderWindIsDrawn) {
    const test::Axis x{.label = "head wind at 10 m, m/s (left: tail wind)",
                       .from = -10.0,
                       .to = 15.0,
                       .tick = 5.0};
    LinePlot plot{.title = "Speed through the water, share of that in calm",
                  .x = x,
                  .y = {.label = "v(W) / v(0)", .from = 0.0, .to = 1.2, .tick = 0.2},
                  .series = {}};
    for (const auto& [name, kind] : {std::pair{"kayak", HullKind::kayak},
                                     std::pair{"tandem canoe", HullKind::tandem_canoe},
                                     std::pair{"solo canoe", HullKind::solo_canoe},
                                     std::pair{"inflatable", HullKind::inflatable},
                                     std::pair{"packraft", HullKind::packraft}})
        plot.series.push_back(line(name, x, [boat = hull(kind)](double wind_mps) {
            return wind_speed_ratio(boat, wind_mps);
        }));
    test::expect_drawn("paddling.svg", plot);
}

TEST(WaterPlots, CurrentBySlopeIsDrawn) {
    const test::Axis x{.label = "fall, m/km", .from = 0.0, .to = 10.0, .tick = 1.0};
    LinePlot plot{.title = "Estimated current, bed winding-pools-shoals",
                  .x = x,
                  .y = {.label = "m/s", .from = 0.0, .to = 3.5, .tick = 0.5},
                  .series = {}};
    for (const auto& [name, depth_m] : {std::pair{"mean depth 0.3 m", 0.3},
                                        std::pair{"mean depth 0.6 m", 0.6},
                                        std::pair{"mean depth 1.2 m", 1.2}})
        plot.series.push_back(line(name, x, [depth = depth_m](double fall) {
            const Roughness row = chow_roughness(default_bed).value();
            return estimated_current({fall / 1000.0, depth, row}).likely_mps;
        }));
    test::expect_drawn("river.svg", plot);
}

TEST(WaterPlots, BeaufortIsDrawn) {
    const test::Axis x{.label = "mean wind at 10 m, m/s", .from = 0.0, .to = 35.0, .tick = 5.0};
    const LinePlot plot{
        .title = "Force of a wind, and the wind at the height of a paddler",
        .x = x,
        .y = {.label = "force; m/s at 0.7 m", .from = 0.0, .to = 28.0, .tick = 4.0},
        .series = {line("Beaufort force", x, [](double wind_mps) { return beaufort(wind_mps); }),
                   line("wind at 0.7 m", x, [](double wind_mps) {
                       return wind_mps * wind_height_factor(0.7);
                   })}};
    test::expect_drawn("wind.svg", plot);
}

TEST(WaterPlots, DrinkingIsDrawn) {
    const test::Axis x{.label = "air, C", .from = 0.0, .to = 40.0, .tick = 5.0};
    LinePlot plot{.title = "Water planned per hour on the move",
                  .x = x,
                  .y = {.label = "L/h", .from = 0.0, .to = 1.6, .tick = 0.2},
                  .series = {}};
    for (const auto& [name, effort] : {std::pair{"hard", Effort::hard},
                                       std::pair{"moderate", Effort::moderate},
                                       std::pair{"easy", Effort::easy}})
        plot.series.push_back(line(
            name, x, [kind = effort](double air_c) { return 3600.0 * drinking_lps(kind, air_c); }));
    plot.series.push_back(line("never above", x, [](double) { return most_drunk_per_hour_l; }));
    test::expect_drawn("drinking.svg", plot);
}

TEST(WaterPlots, FuelIsDrawn) {
    const test::Axis x{
        .label = "start temperature, C (below 0: snow)", .from = -20.0, .to = 20.0, .tick = 5.0};
    LinePlot plot{.title = "Fuel that brings a litre to 100 C",
                  .x = x,
                  .y = {.label = "g per litre", .from = 0.0, .to = 100.0, .tick = 20.0},
                  .series = {}};
    for (const Stove& burner : stoves())
        plot.series.push_back(line(std::string(burner.name), x, [burner](double start_c) {
            return 1000.0 * fuel_kg_per_litre(burner, {start_c, sea_level_boil_c, start_c < 0.0});
        }));
    test::expect_drawn("stove_fuel.svg", plot);
}

TEST(WaterPlots, RationsAreDrawn) {
    const test::Axis x{
        .label = "energy of the day, kcal", .from = 2000.0, .to = 6000.0, .tick = 500.0};
    LinePlot plot{.title = "Food and packaging per person and day",
                  .x = x,
                  .y = {.label = "kg", .from = 0.0, .to = 2.0, .tick = 0.25},
                  .series = {}};
    for (const auto& [name, density] :
         {std::pair{"3.5 kcal/g", 3.5}, std::pair{"4.0 kcal/g", 4.0}, std::pair{"4.5 kcal/g", 4.5}})
        plot.series.push_back(line(name, x, [kcal_per_g = density](double kcal) {
            return ration_kg(
                {kcal * joule_per_kcal, kcal_per_g * 1000.0 * joule_per_kcal, default_packaging});
        }));
    test::expect_drawn("food.svg", plot);
}

} // namespace

} // namespace tumpline::planner
