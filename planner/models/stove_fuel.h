#pragma once

#include "planner/models/model_entry.h"

#include <optional>
#include <span>
#include <string_view>

/// How much fuel hot water takes, by stove, start temperature, altitude and snow.
namespace tumpline::planner {

/// A fuel as printed.
struct HeatingValue {
    std::string_view fuel;
    double lower_j_per_kg; ///< steam leaves as steam: what a pot gets
    double higher_j_per_kg;
    std::string_view source;
};

[[nodiscard]] std::span<const HeatingValue> heating_values();

struct Stove {
    std::string_view name; ///< as the trip file gives it
    std::string_view burns;
    double efficiency; ///< share of the heat that reaches the water, sheltered; from memory
    double heating_value_j_per_kg;
};

/// "gas" (the default), "gas-exchanger", "white-gas", "ethanol", "methanol", "hexamine".
[[nodiscard]] std::span<const Stove> stoves();
[[nodiscard]] std::optional<Stove> stove(std::string_view name);
inline constexpr std::string_view default_stove = "gas";

/// Water to be boiled. Snow colder than 0 C gives its temperature as `start_c`.
struct Boil {
    double start_c;
    double boil_c;
    bool from_snow;
};

/// m c (Tb - T0), or for snow 2.09 (0 - Ts) + 334 + 4.186 Tb kJ/kg. From memory, textbook physics.
[[nodiscard]] double heat_j_per_kg(const Boil& boil);

/// Heat over efficiency times lower heating value; 1 L of water is taken as 1 kg.
/// Covers: a sheltered stove with a lid. Known bias: too little in wind,
/// where a stove without a screen may take twice as much; efficiencies are from memory.
[[nodiscard]] double fuel_kg_per_litre(const Stove& stove, const Boil& boil);

/// Fuel of a day: litres boiled at that rate with a share on top.
struct FuelDay {
    double boiled_l;
    double kg_per_litre;
    double reserve; ///< share on top, 0.15
};

[[nodiscard]] double fuel_day_kg(const FuelDay& day);

inline constexpr double default_fuel_reserve = 0.15;
inline constexpr double default_start_c = 10.0;
inline constexpr double default_snow_c = -5.0;
inline constexpr double sea_level_boil_c = 100.0;

/// Standard atmosphere, 101325 (1 - 2.25577e-5 h)^5.25588 Pa. From memory [ISO2533].
/// Covers: -500 to 11000 m; altitudes beyond are held there.
[[nodiscard]] double pressure_pa(double altitude_m);

/// Antoine's equation for water at that pressure. Boiling high up takes less heat but cooking
/// takes longer, so fuel is planned with `sea_level_boil_c` unless the water is only to boil.
[[nodiscard]] double boiling_point_c(double altitude_m);

/// How long a rolling boil makes doubtful water fit to drink: 1 minute, 3 above 2000 m
/// [CDCBackcountry].
[[nodiscard]] double rolling_boil_s(double altitude_m);

/// Liquid fuel per person and day where all water is melted, a rule of polar camps [RGS2003].
inline constexpr double polar_liquid_l_per_day = 0.5;

[[nodiscard]] std::span<const ModelEntry> stove_fuel_entries();

} // namespace tumpline::planner
