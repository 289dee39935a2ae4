#pragma once

namespace tumpline::planner {

/// What a quantity measures. Its value is always in the unit named here.
enum class Dimension {
    mass,            ///< kg
    length,          ///< m
    area,            ///< m2
    speed,           ///< m/s; a pace ("15 min/km") is one as well
    volume,          ///< l
    duration,        ///< s
    temperature,     ///< degrees Celsius
    energy,          ///< J
    energy_density,  ///< J/kg
    mass_per_volume, ///< kg/l
    volume_per_mass, ///< l/kg
    drinking,        ///< l/s
    flow             ///< m3/s, of a river
};

} // namespace tumpline::planner
