#include "sample-routes/make/files.h"
#include "sample-routes/make/land.h"
#include "sample-routes/make/samples.h"

#include <fmt/format.h>

#include <array>

namespace tumpline::samples {
namespace {

/// One day on the water: so much lake, in equal pieces between its portages.
struct Paddled {
    double lake_m;
    std::vector<double> carries_rods;
    const char* camp; ///< where it ends
};

} // namespace

void make_fourteen_portages(const std::filesystem::path& into) {
    const std::array<Paddled, 7> days{{
        {13'500.0, {24.0, 65.0}, "First camp"},
        {14'000.0, {140.0, 18.0}, "Second camp"},
        {12'500.0, {90.0, 210.0}, "Third camp"},
        {13'000.0, {12.0, 45.0, 160.0}, "Fifth camp"},
        {15'500.0, {75.0, 30.0}, "Sixth camp"},
        {16'500.0, {118.0}, "Seventh camp"},
        {11'000.0, {55.0, 80.0}, "Far landing"},
    }};
    RoutePlan plan{.lat_deg = 47.0110, .lon_deg = -42.3060, .legs = {}, .places = {}};
    plan.seed = 14;
    plan.places.push_back({"Near landing", "start", 0, 0.0, 0.0});
    double lake_m = 0.0; // of the lake that is being laid; a camp may stand in its middle
    double bearing_deg = 20.0;
    double level_m = 360.0;
    const auto end_lake = [&] {
        plan.legs.push_back({.name = fmt::format("lake {}", plan.legs.size() / 2 + 1),
                             .type = "paddle",
                             .length_m = lake_m,
                             .bearing_deg = bearing_deg,
                             .bend_deg = 12.0,
                             .wiggle_deg = 25.0,
                             .step_m = 300.0,
                             .heights = {{0.0, level_m}, {lake_m, level_m}}});
        bearing_deg += 14.0;
        lake_m = 0.0;
    };
    for (const Paddled& day : days) {
        const double piece_m = day.lake_m / static_cast<double>(day.carries_rods.size() + 1);
        for (const double rods : day.carries_rods) {
            lake_m += piece_m;
            end_lake();
            const double carry_m = rods * rod_m;
            const double hump_m = level_m + 2.0 + 0.01 * carry_m;
            const double next_m = level_m + (plan.legs.size() < 14 ? 2.0 : -2.0);
            plan.legs.push_back(
                {.name = fmt::format("carry {}", plan.legs.size() / 2 + 1),
                 .type = "portage",
                 .length_m = carry_m,
                 .bearing_deg = bearing_deg,
                 .bend_deg = 0.0,
                 .wiggle_deg = 20.0,
                 .step_m = 40.0,
                 .heights = {{0.0, level_m}, {0.5 * carry_m, hump_m}, {carry_m, next_m}}});
            level_m = next_m;
        }
        lake_m += piece_m;
        const bool last = &day == &days.back();
        plan.places.push_back(
            {day.camp, last ? "finish" : "camp", plan.legs.size(), lake_m, last ? 0.0 : 40.0});
    }
    end_lake();
    const Layout layout = lay_out(plan);
    write_gpx(into / "fourteen-portages.gpx", "Fourteen portages", layout);
    write_land(
        into / "fourteen-portages-ground.geojson", layout, {.points = {}, .seed = plan.seed});
}

} // namespace tumpline::samples
