#pragma once

#include "planner/models/constants.h"
#include "planner/quantities/dimension.h"

#include <chrono>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

/// Quantities as people write them, to SI and back: the only place with conversion factors.
/// docs/units.md lists every unit, and how figures are rounded for people.
namespace tumpline::planner {

/// Exact factors. The foot, yard, mile and pound are those of 1959 and the rest of the NIST list:
/// exact by definition [NISTSP811, appendix B; NISTHB44, appendix C]. Foot and mile, which models
/// need as well, stand in planner/models/constants.h.
inline constexpr double m_per_inch = 0.0254;
inline constexpr double m_per_yard = 0.9144;
inline constexpr double m_per_rod = 5.0292;           ///< 16.5 ft
inline constexpr double m_per_nautical_mile = 1852.0; ///< by definition, [BIPMSI, table 8]
inline constexpr double kg_per_pound = 0.45359237;
inline constexpr double kg_per_ounce = kg_per_pound / 16.0;
inline constexpr double l_per_us_gallon = 3.785411784; ///< 231 cubic inches of 2.54 cm
inline constexpr double l_per_us_fluid_ounce = l_per_us_gallon / 128.0;
inline constexpr double mps_per_kmh = 1.0 / 3.6;
inline constexpr double s_per_min = 60.0;
inline constexpr double s_per_h = 3600.0;
inline constexpr double s_per_day = 86400.0;

/// A quantity read from text, or what is wrong with the text.
struct Reading {
    std::optional<double> value;
    std::string expected; ///< "a mass with a unit (g, kg, oz, lb)"; empty if all is well
    std::string advice;   ///< what to write instead; may be empty
};

/// Reads "970 g", "7 lb 4 oz", "1 h 30 min", "18 C" and the like: a number with a decimal point, a
/// unit, and for masses, lengths and durations more of the same in smaller units. Spaces between
/// number and unit may be left out. Never through a locale; the value is finite.
[[nodiscard]] Reading read_quantity(std::string_view text, Dimension dimension);

/// "a mass with a unit (g, kg, oz, lb)".
[[nodiscard]] std::string expected_quantity(Dimension dimension);

/// "a mass".
[[nodiscard]] std::string_view noun_of(Dimension dimension);

/// How a bare number would be written with a unit of its dimension ("1.9 kg"); `lowest` and
/// `highest`, SI, choose the unit: the first in which the number lies between them.
struct SensibleRange {
    double lowest;
    double highest;
};

[[nodiscard]] std::string with_unit(double bare, Dimension dimension, const SensibleRange& range);

/// A bound as people would write it, "25 kg"; for messages.
[[nodiscard]] std::string plain_quantity(double si, Dimension dimension);

/// Every spelling of a unit that `read_quantity` takes, for the docs' test.
[[nodiscard]] std::vector<std::string> unit_names(Dimension dimension);

/// Time of day "HH:MM" (00:00 to 24:00 excluded) since midnight.
[[nodiscard]] std::optional<std::chrono::seconds> read_time_of_day(std::string_view text);

/// A day of the Gregorian calendar "YYYY-MM-DD", years 1900 to 2199.
[[nodiscard]] std::optional<std::chrono::year_month_day> read_date(std::string_view text);

/// What people read. Programs always get SI.
enum class UnitSystem { metric, imperial };

/// Mass of a pack or a person: "18.6 kg", "41.0 lb"; below 1 kg or 1 lb "970 g", "12.5 oz".
[[nodiscard]] std::string show_mass(double mass_kg, UnitSystem system);
/// Along the route: "12.3 km", "640 m"; "7.6 mi", "700 yd".
[[nodiscard]] std::string show_distance(double length_m, UnitSystem system);
/// A portage: "620 m", "1.24 km"; "123 rods".
[[nodiscard]] std::string show_portage(double length_m, UnitSystem system);
/// Of a boat's side: "15 cm"; "6.0 in".
[[nodiscard]] std::string show_length(double length_m, UnitSystem system);
/// Ascent, descent, altitude: "830 m"; "2720 ft".
[[nodiscard]] std::string show_height(double height_m, UnitSystem system);
/// "4.3 km/h"; "2.7 mph".
[[nodiscard]] std::string show_speed(double speed_mps, UnitSystem system);
/// "4 h 57 min", "35 min"; to the minute. The same in both systems.
[[nodiscard]] std::string show_duration(double duration_s);
/// "1.5 L", "1.6 qt"; below a litre or a quart "250 ml", "8 fl oz".
[[nodiscard]] std::string show_volume(double volume_l, UnitSystem system);
/// "9 C"; "48 F".
[[nodiscard]] std::string show_temperature(double temperature_c, UnitSystem system);
/// "3240 kcal" in both systems.
[[nodiscard]] std::string show_energy(double energy_j);
/// Fall of a river: "2.3 m/km"; "12 ft/mi". `gradient` is fall over length.
[[nodiscard]] std::string show_gradient(double gradient, UnitSystem system);
/// A mass over a way: "27.1 kg km"; "37.1 lb mi".
[[nodiscard]] std::string show_carried(double kg_km, UnitSystem system);
/// A mass up a climb: "900 kg m"; "6510 lb ft".
[[nodiscard]] std::string show_climbed(double kg_m, UnitSystem system);
/// "18:05" of a time of day.
[[nodiscard]] std::string show_time_of_day(std::chrono::seconds since_midnight);
/// "2027-06-18".
[[nodiscard]] std::string show_date(const std::chrono::year_month_day& date);

/// A number without an exponent and without trailing zeros, `decimals` places at most: "1.9", "70".
[[nodiscard]] std::string show_number(double number, int decimals);

} // namespace tumpline::planner
