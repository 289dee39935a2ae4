#pragma once

#include "planner/models/drinking.h"
#include "planner/models/model_entry.h"

#include <optional>
#include <span>

/// Heat at work: one index from temperature and humidity, and how long one works in it.
namespace tumpline::planner {

struct Air {
    double temperature_c;
    double humidity; ///< relative, 0..1
};

/// Vapour pressure, hPa: e = rh 6.105 exp(17.27 T / (237.7 + T)). Source: [BOMThermal].
[[nodiscard]] double vapour_pressure_hpa(const Air& air);

/// About the wet-bulb globe temperature, C: 0.567 T + 0.393 e + 3.94 with e in hPa.
/// Source: [BOMThermal].
/// Covers: moderately high sun in light wind. Known bias: too high at night, under cloud and in
/// wind, too low in full sun without wind.
[[nodiscard]] double wbgt_c(const Air& air);

/// Minutes of work in an hour for those used to heat; 60: no limit. `category` 1 to 5 as
/// `heat_category` gives it, held to that range. Source: [TBMED507].
[[nodiscard]] int work_minutes(int category, Effort effort);

/// The same for those who are not used to heat: moderate work for walking, heavy for carrying,
/// light for the rest; 0: avoid. Empty below 20 C. Source: [DNDHeat].
[[nodiscard]] std::optional<int> unused_work_minutes(double wbgt_c, Effort effort);

/// Litres an hour beside it. Source: [DNDHeat].
[[nodiscard]] std::optional<double> unused_litres(double wbgt_c, Effort effort);

[[nodiscard]] std::span<const ModelEntry> heat_entries();

} // namespace tumpline::planner
