#pragma once

#include <cmath>
#include <cstdint>

/// Masses are booked in whole milligrams, so that sums are exact in any order.
namespace tumpline::planner {

inline constexpr double mg_per_kg = 1e6;

/// To the nearest milligram.
[[nodiscard]] inline std::int64_t whole_mg(double mass_mg) {
    return std::llround(mass_mg);
}

[[nodiscard]] inline std::int64_t kg_to_mg(double mass_kg) {
    return whole_mg(mass_kg * mg_per_kg);
}

[[nodiscard]] inline double mg_to_kg(std::int64_t mass_mg) {
    return static_cast<double>(mass_mg) / mg_per_kg;
}

} // namespace tumpline::planner
