#pragma once

/// Constants that more than one model needs.
namespace tumpline::planner {

inline constexpr double j_per_kcal = 4184.0;   ///< the thermochemical calorie, [NISTSP811]
inline constexpr double m_per_foot = 0.3048;   ///< exact, [NISTSP811]
inline constexpr double m_per_mile = 1609.344; ///< 5280 ft
inline constexpr double g_mps2 = 9.80665;      ///< standard acceleration of free fall, [NISTSP811]

} // namespace tumpline::planner
