#include "planner/models/cold.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace tumpline::planner {

namespace {

constexpr double least_wind_kmh = 4.8;

struct FrostbiteBand {
    double below; ///< half way to the printed band above
    Frostbite minutes;
};

/// The coldest first.
constexpr std::array<FrostbiteBand, 4> bands{{
    {-54.5, {0.0, 2.0}},
    {-47.5, {2.0, 5.0}},
    {-39.5, {5.0, 10.0}},
    {-27.5, {10.0, 30.0}},
}};

struct WaterStage {
    double below_c;
    std::string_view says;
};

/// The coldest first.
constexpr std::array<WaterStage, 4> stages{{
    {5.0, "very dangerous and painful: no control of the breath"},
    {15.0, "very dangerous: cold shock at its strongest, no control of the breath"},
    {21.0, "dangerous: the breath is harder and harder to control"},
    {25.0, "breathing begins to be affected"},
}};

} // namespace

double wind_chill(const ColdWind& cold) {
    const double T = cold.air_c;
    const double kmh = cold.wind_mps * 3.6;
    if (kmh < least_wind_kmh - 1e-9)
        return T;
    const double V = std::pow(kmh, 0.16);
    return std::min(T, 13.12 + 0.6215 * T - 11.37 * V + 0.3965 * T * V);
}

std::optional<Frostbite> frostbite_in(double chill) {
    const auto* const band = std::find_if(
        bands.begin(), bands.end(), [&](const FrostbiteBand& one) { return chill < one.below; });
    return band == bands.end() ? std::nullopt : std::optional(band->minutes);
}

std::optional<std::string_view> cold_water_stage(double water_c) {
    const auto* const stage = std::find_if(
        stages.begin(), stages.end(), [&](const WaterStage& one) { return water_c < one.below_c; });
    return stage == stages.end() ? std::nullopt : std::optional(stage->says);
}

std::span<const ModelEntry> cold_entries() {
    static constexpr std::array<ModelEntry, 2> entries{{
        {.family = "cold",
         .name = "wind-chill-2001",
         .answers = "How cold is it for a face in this wind, and when does bare skin freeze?",
         .source = "WindChill2001",
         .covers = "air of 10 C and colder, winds from 4.8 km/h at 10 m",
         .is_default = true,
         .why = "the index that forecasts of two countries print"},
        {.family = "cold",
         .name = "cold-water-stages",
         .answers = "What does water of this temperature do to whoever falls in?",
         .source = "CWSafety",
         .covers = "water below 25 C; says nothing of how long one lives",
         .is_default = true,
         .why = "it speaks of the first minutes, in which people drown"},
    }};
    return entries;
}

} // namespace tumpline::planner
