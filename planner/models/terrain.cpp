#include "planner/models/terrain.h"

#include "planner/models/load_effect.h"

#include <algorithm>
#include <array>
#include <cassert>
#include <cmath>
#include <stdexcept>
#include <string>

namespace tumpline::planner {

namespace {

// Times of bog, sand and snow are `equal_effort_time_factor` of their eta, rounded; a test holds
// them to it.
constexpr std::array<Ground, 8> ground_rows = {{
    {.name = "path", .time_factor = 1.0, .eta = 1.1, .source = "Pandolf1977"},
    {.name = "rough-path", .time_factor = 1.15, .eta = 1.2, .source = "Pandolf1977"},
    {.name = "forest", .time_factor = 1.3, .eta = 1.2, .source = "Alexander2005"},
    {.name = "off-path", .time_factor = 1.67, .eta = 1.3, .source = "Tobler1993"},
    {.name = "brush", .time_factor = 2.5, .eta = 1.5, .source = "CampbellFire2024"},
    {.name = "bog", .time_factor = 1.5, .eta = 1.8, .source = "Pandolf1977"},
    {.name = "sand", .time_factor = 1.8, .eta = 2.1, .source = "Pandolf1977"},
    {.name = "snow", .time_factor = 2.2, .eta = 2.5, .source = "Pandolf1977"},
}};

} // namespace

std::span<const Ground> grounds() {
    return ground_rows;
}

const Ground& ground(std::string_view name) {
    const auto* const found = std::find_if(ground_rows.begin(),
                                           ground_rows.end(),
                                           [name](const Ground& row) { return row.name == name; });
    if (found == ground_rows.end())
        throw std::out_of_range("no ground of the name " + std::string(name));
    return *found;
}

double snow_eta(double footprint_m) {
    const double h = 100.0 * std::clamp(footprint_m, 0.0, deepest_footprint_m); // cm
    return 1.30 + 0.082 * h;
}

double sinking_m(const SnowCover& snow) {
    const double rho = snow.density_kg_m3 / 1000.0; // g/cm3
    return snow.depth_m * std::clamp(1.0 - rho / 1.186, 0.0, 1.0);
}

double erdc_snow_eta(const SnowCover& snow) {
    const double h = 100.0 * snow.depth_m;
    const double rho = snow.density_kg_m3 / 1000.0;
    const double z = h * (1.0 - rho / 1.186);
    return 0.0005 * z * z * z + 0.0001 * z * z + 0.1072 * z + 1.2604;
}

double equal_effort_time_factor(double eta) {
    assert(std::isfinite(eta));
    constexpr double path_eta = 1.1;
    constexpr double path_mps = 1.39;
    const double speed_mps = equal_effort_speed_mps({.eta = std::clamp(eta, path_eta, 5.0),
                                                     .load_ratio = 0.0,
                                                     .reference_mps = path_mps,
                                                     .reference_eta = path_eta});
    return path_mps / speed_mps;
}

double night_time_factor(const Ground& ground) {
    const bool on_path = ground.name == "path" || ground.name == "rough-path";
    return on_path ? 4.0 / 3.2 : 2.5 / 1.6; // km/h by day over km/h by night [FM2118]
}

std::span<const ModelEntry> terrain_entries() {
    static constexpr std::array<ModelEntry, 2> entries = {{
        {.family = "terrain",
         .name = "ground-factors",
         .answers = "What does the ground do to time and to effort?",
         .source = "Pandolf1977",
         .covers =
             "path, rough-path, forest, off-path, brush, bog, sand, snow to 0.45 m of footprint",
         .is_default = true,
         .why = "the terrain coefficients of the energy models are the common measure; times from "
                "separate studies where there are any"},
        {.family = "terrain",
         .name = "night-factors",
         .answers = "How much slower is one in the dark?",
         .source = "FM2118",
         .covers = "roads and paths, and open country, with a lamp",
         .is_default = true,
         .why = "the only planning rates found that give day and night side by side"},
    }};
    return entries;
}

} // namespace tumpline::planner
