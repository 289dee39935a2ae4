#pragma once

#include <cmath>
#include <cstddef>
#include <cstdint>
#include <numbers>
#include <random>
#include <vector>

namespace tumpline::test {

/// Draws that are the same on every machine: the engine's bits are fixed by the standard, the
/// library's distributions are not.
class Draws {
  public:
    explicit Draws(std::uint64_t seed) : bits_(seed) {}

    /// Even in [0, 1).
    double part() { return static_cast<double>(bits_() >> 11U) * 0x1p-53; }

    /// Even between two numbers.
    double between(double low, double high) { return low + (high - low) * part(); }

    /// The same, rounded to a step, as people write figures.
    double in_steps(double low, double high) { return low + (high - low) * rounded(part()); }

    /// A whole number from `low` to `high`.
    int whole(int low, int high) {
        return low + static_cast<int>(part() * static_cast<double>(high - low + 1));
    }

    /// Of mean 0 and spread 1. [BoxMuller1958]
    double normal() {
        const double u = part() + 0x1p-53;
        const double v = part();
        return std::sqrt(-2.0 * std::log(u)) * std::cos(2.0 * std::numbers::pi * v);
    }

    bool chance(double share) { return part() < share; }

    template <class Thing> const Thing& one_of(const std::vector<Thing>& things) {
        return things[static_cast<std::size_t>(whole(0, static_cast<int>(things.size()) - 1))];
    }

  private:
    static double rounded(double share) {
        return static_cast<double>(static_cast<int>(share * 20.0 + 0.5)) / 20.0;
    }

    std::mt19937_64 bits_;
};

} // namespace tumpline::test
