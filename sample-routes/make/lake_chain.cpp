#include "sample-routes/make/files.h"
#include "sample-routes/make/land.h"
#include "sample-routes/make/samples.h"

#include <array>

namespace tumpline::samples {
namespace {

constexpr double mile_m = 1609.344;

struct Lake {
    const char* name;
    double miles;
    double level_m;
    double carry_rods; ///< of the portage at its end; 0 at the last lake
    double hump_m;     ///< how far the portage rises above the higher of its two lakes
    double bearing_deg;
};

constexpr std::array<Lake, 13> lakes{{
    {"Lake Ombery", 6.2, 402.0, 22.0, 4.0, 20.0},
    {"Lake Tassel", 2.1, 405.0, 70.0, 9.0, 45.0},
    {"Lake Quint", 4.8, 411.0, 130.0, 16.0, 30.0},
    {"Lake Furrow", 2.6, 418.0, 16.0, 3.0, 75.0},
    {"Lake Merrin", 3.9, 417.0, 85.0, 12.0, 60.0},
    {"Lake Sablon", 5.0, 425.0, 190.0, 27.0, 100.0},
    {"Lake Dunwick", 6.4, 433.0, 14.0, 2.0, 125.0},
    {"Lake Oriel", 3.6, 431.0, 48.0, 7.0, 160.0},
    {"Lake Pasque", 4.4, 426.0, 150.0, 21.0, 190.0},
    {"Lake Velt", 2.7, 419.0, 66.0, 8.0, 225.0},
    {"Lake Hobnail", 5.5, 414.0, 34.0, 5.0, 215.0},
    {"Lake Cress", 2.4, 410.0, 104.0, 11.0, 250.0},
    {"Lake Anvil", 3.5, 404.0, 0.0, 0.0, 265.0},
}};

} // namespace

void make_lake_chain(const std::filesystem::path& into) {
    RoutePlan plan{.lat_deg = 45.9310, .lon_deg = -45.2080, .legs = {}, .places = {}};
    plan.seed = 47;
    for (std::size_t i = 0; i < lakes.size(); ++i) {
        const Lake& lake = lakes.at(i);
        const double length_m = lake.miles * mile_m;
        plan.legs.push_back({.name = lake.name,
                             .type = "paddle",
                             .length_m = length_m,
                             .bearing_deg = lake.bearing_deg,
                             .bend_deg = 25.0,
                             .wiggle_deg = 25.0,
                             .step_m = 250.0,
                             .heights = {{0.0, lake.level_m}, {length_m, lake.level_m}}});
        if (i + 1 == lakes.size())
            break;
        const double carry_m = lake.carry_rods * rod_m;
        const double next_m = lakes.at(i + 1).level_m;
        plan.legs.push_back(
            {.name = std::string("out of ") + lake.name,
             .type = "portage",
             .length_m = carry_m,
             .bearing_deg = lake.bearing_deg + 10.0,
             .bend_deg = 0.0,
             .wiggle_deg = 20.0,
             .step_m = 40.0,
             .heights = {{0.0, lake.level_m},
                         {0.5 * carry_m, std::max(lake.level_m, next_m) + lake.hump_m},
                         {carry_m, next_m}}});
    }
    const auto camp = [&plan](const char* name, std::size_t lake, double miles, double aside_m) {
        plan.places.push_back({name, "camp", 2 * lake, miles * mile_m, aside_m});
    };
    plan.places.push_back({"Ombery landing", "start", 0, 0.0, 0.0});
    camp("Pine point", 1, 1.6, 60.0);
    camp("Two rocks", 3, 1.9, -70.0);
    camp("Sand beach", 5, 3.0, 80.0);
    camp("Dunwick narrows", 6, 5.2, -60.0);
    camp("Heron island", 8, 3.1, 120.0);
    camp("Cedar shelf", 10, 3.6, 50.0);
    plan.places.push_back({"Forest road", "exit", 10, 0.0, 40.0});
    plan.places.push_back({"Anvil landing", "finish", 24, 3.5 * mile_m, 0.0});
    const Layout layout = lay_out(plan);
    write_gpx(into / "lake-chain.gpx", "Thirteen lakes", layout);
    write_land(into / "lake-chain-ground.geojson", layout, {.points = {}, .seed = plan.seed});
}

} // namespace tumpline::samples
