#include "planner/models/waves.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace tumpline::planner {

namespace {

constexpr double g = 9.81;

} // namespace

Waves waves_of(const WindOverFetch& over) {
    const double U = over.wind_mps;
    if (U <= 0.0 || over.fetch_m <= 0.0)
        return {0.0, 0.0};
    const double CD = 0.001 * (1.1 + 0.035 * U);
    const double u = std::sqrt(CD) * U;
    const double X = g * over.fetch_m / (u * u);
    return {.height_m = u * u / g * std::min(0.0413 * std::sqrt(X), 211.5),
            .period_s = u / g * std::min(0.651 * std::cbrt(X), 239.8)};
}

double waves_grow_s(const WindOverFetch& over) {
    if (over.wind_mps <= 0.0 || over.fetch_m <= 0.0)
        return 0.0;
    return 77.23 * std::pow(over.fetch_m, 0.67) /
           (std::pow(over.wind_mps, 0.34) * std::pow(g, 0.33));
}

std::span<const ModelEntry> waves_entries() {
    static constexpr std::array<ModelEntry, 1> entries{{
        {.family = "waves",
         .name = "fetch-limited",
         .answers = "How high do waves grow under a wind over so much open water?",
         .source = "CEM2015",
         .covers = "mean winds of 3 to 25 m/s over deep water, straight-line fetch; 15 to 25 % off "
                   "either way",
         .is_default = true,
         .why = "the manual's own advice: the straight fetch, no effective one"},
    }};
    return entries;
}

} // namespace tumpline::planner
