#pragma once

#include "geo/lines/geodesic.h"
#include "geo/tracks/track.h"

#include <chrono>
#include <cmath>
#include <numbers>
#include <random>
#include <utility>
#include <vector>

/// Recordings as a receiver makes them of somebody whose true way and speed are known.
namespace tumpline::test {

/// How somebody moves, and how a receiver sees it.
struct Walker {
    double seconds = 3600.0;
    double every_s = 1.0;                              ///< between fixes
    double noise_m = 0.0;                              ///< spread of each fix on each axis
    double drift_m = 0.0;                              ///< slow wandering besides
    std::vector<std::pair<double, double>> halts = {}; ///< at second, for seconds
};

inline double normal(std::mt19937_64& draws) { // the sum of twelve, the same on every machine
    double sum = -6.0;
    for (int i = 0; i < 12; ++i)
        sum += static_cast<double>(draws() >> 11) * 0x1.0p-53;
    return sum;
}

/// Walks north over ground of height(along) at speed(slope).
template <typename Height, typename Speed>
geo::Track recorded(const Walker& walker, Height height, Speed speed) {
    std::mt19937_64 draws(42);
    geo::Track track;
    track.type = "walk";
    track.parts.emplace_back();
    double along_m = 0.0;
    double next_s = 0.0;
    for (double clock_s = 0.0; clock_s <= walker.seconds; clock_s += 1.0) {
        bool stands = false;
        for (const auto& [at_s, lasts_s] : walker.halts)
            stands = stands || (clock_s >= at_s && clock_s < at_s + lasts_s);
        const double slope = (height(along_m + 5.0) - height(along_m - 5.0)) / 10.0;
        along_m += stands ? 0.0 : speed(slope);
        if (clock_s < next_s)
            continue;
        next_s += walker.every_s;
        geo::Position at = geo::destination({61.0, 1.0}, 0.0, along_m);
        const double phase = clock_s / 300.0 * 2.0 * std::numbers::pi;
        at = geo::destination(
            at, 90.0, walker.drift_m * std::sin(phase) + walker.noise_m * normal(draws));
        at = geo::destination(
            at, 0.0, walker.drift_m * std::cos(0.7 * phase) + walker.noise_m * normal(draws));
        track.parts.back().push_back(
            {.at = at,
             .height_m = height(along_m) + walker.noise_m * normal(draws),
             .time = geo::Instant(std::chrono::milliseconds(std::llround(clock_s * 1000.0)))});
    }
    return track;
}

inline constexpr auto level = [](double /*along_m*/) { return 300.0; };
inline constexpr auto hills = [](double along_m) {
    return 400.0 + 150.0 * std::sin(along_m / 600.0);
};

/// At one speed, whatever the slope.
inline auto steadily(double speed_mps) {
    return [speed_mps](double /*slope*/) { return speed_mps; };
}

} // namespace tumpline::test
