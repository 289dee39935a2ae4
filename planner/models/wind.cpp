#include "planner/models/wind.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>

namespace tumpline::planner {

namespace {

constexpr std::array<BeaufortForce, 13> forces{{
    {0, 0.0, 0.2, 0, 0, "calm", "like a mirror"},
    {1, 0.3, 1.5, 1, 3, "light air", "ripples like scales"},
    {2, 1.6, 3.3, 4, 6, "light breeze", "small short wavelets"},
    {3, 3.4, 5.4, 7, 10, "gentle breeze", "large wavelets, the first scattered whitecaps"},
    {4, 5.5, 7.9, 11, 16, "moderate breeze", "small waves, fairly frequent whitecaps"},
    {5, 8.0, 10.7, 17, 21, "fresh breeze", "moderate waves, many whitecaps, some spray"},
    {6, 10.8, 13.8, 22, 27, "strong breeze", "large waves, foam crests everywhere, spray"},
    {7, 13.9, 17.1, 28, 33, "near gale", "sea heaps up, foam blown in streaks"},
    {8, 17.2, 20.7, 34, 40, "gale", "moderately high and long waves, crests break into spindrift"},
    {9, 20.8, 24.4, 41, 47, "strong gale", "high waves, dense streaks of foam"},
    {10, 24.5, 28.4, 48, 55, "storm", "very high waves, the surface white"},
    {11, 28.5, 32.6, 56, 63, "violent storm", "exceptionally high waves"},
    {12, 32.7, std::nullopt, 64, std::nullopt, "hurricane force", "air filled with foam and spray"},
}};

} // namespace

std::span<const BeaufortForce> beaufort_scale() {
    return forces;
}

int beaufort(double wind_mps) {
    int force = 0;
    for (const BeaufortForce& row : forces)
        if (wind_mps >= row.from_mps - 0.05) // printed to 0.1: 5.46 reads as 5.5
            force = row.force;
    return force;
}

std::string_view beaufort_name(int force) {
    return forces[static_cast<std::size_t>(std::clamp(force, 0, 12))].name;
}

double beaufort_middle_mps(int force) {
    return 0.836 * std::pow(std::max(force, 0), 1.5);
}

double wind_height_factor(double height_m) {
    constexpr double roughness_m = 0.0002;
    if (height_m <= roughness_m)
        return 0.0;
    return std::log(height_m / roughness_m) / std::log(10.0 / roughness_m);
}

CrossingWind crossing_wind(double wind_mps, double ceiling_mps) {
    if (wind_mps > ceiling_mps)
        return CrossingWind::above;
    return wind_mps > 0.75 * ceiling_mps ? CrossingWind::nearly : CrossingWind::below;
}

std::span<const ModelEntry> wind_entries() {
    static constexpr std::array<ModelEntry, 2> entries{{
        {.family = "wind",
         .name = "beaufort",
         .answers = "What does a wind look like on the water, and what is its force?",
         .source = "WMOBeaufort",
         .covers = "mean wind at 10 m over open water, forces 0 to 12; gusts are half as much more",
         .is_default = true,
         .why = "the scale that forecasts and paddlers share"},
        {.family = "wind",
         .name = "crossing-ceiling",
         .answers = "Above which wind is no open crossing planned?",
         .source = "CommonPractice",
         .covers = "7.9 m/s for open and inflatable boats, 10.7 m/s for a kayak; a party's own "
                   "limit is often lower",
         .is_default = true,
         .why = "waves are not in the power balance, so that a limit must stand in for them"},
    }};
    return entries;
}

} // namespace tumpline::planner
