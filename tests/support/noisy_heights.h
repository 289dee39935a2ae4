#pragma once

#include "tests/support/random_draws.h"

#include <cmath>
#include <cstdint>
#include <vector>

namespace tumpline::test {

/// How heights are wrong: spread, and the distance over which errors resemble each other.
struct HeightNoise {
    double sigma_m;
    double correlation_m; ///< 0: each height errs for itself
};

/// Heights at even steps, each with an error of a seed's draws: a first-order process whose errors
/// have lost all but 1/e of their likeness after `correlation_m`.
inline std::vector<double>
noisy(std::vector<double> heights_m, double step_m, const HeightNoise& noise, std::uint64_t seed) {
    Draws draws(seed);
    const double kept = noise.correlation_m > 0.0 ? std::exp(-step_m / noise.correlation_m) : 0.0;
    double error_m = noise.sigma_m * draws.normal();
    for (double& height_m : heights_m) {
        height_m += error_m;
        error_m = kept * error_m + noise.sigma_m * std::sqrt(1.0 - kept * kept) * draws.normal();
    }
    return heights_m;
}

} // namespace tumpline::test
