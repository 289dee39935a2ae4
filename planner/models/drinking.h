#pragma once

#include "planner/models/model_entry.h"

#include <optional>
#include <span>
#include <string_view>

/// What people drink on the move and in camp. People differ by a factor of two and more, and too
/// much is dangerous as too little is: the figures plan what is carried, thirst and a medical
/// adviser say what is drunk.
namespace tumpline::planner {

enum class Effort {
    easy,     ///< floating, paddling at a touring pace
    moderate, ///< walking with a pack
    hard,     ///< portage, steep ascent
};

/// min(cap, base (1 + 0.05 max(0, T - 15))) with base 0.30, 0.45, 0.60 L/h and cap 0.946, 0.946,
/// 1.2 L/h. In litres per second.
/// Source: this project's line inside the limits of [TBMED507]; air temperature stands in for the
/// wet-bulb globe temperature, which needs humidity and sun.
/// Covers: -30 to 45 C. Known bias: too low in humid heat and full sun.
[[nodiscard]] double drinking_lps(Effort effort, double air_c);

/// Air temperatures of that line.
inline constexpr double coldest_air_c = -30.0;
inline constexpr double hottest_air_c = 45.0;
[[nodiscard]] bool drinking_covers(double air_c);

/// Never planned above this in any hour or day. Source: [TBMED507], 1.5 and 12 US quarts.
inline constexpr double most_drunk_per_hour_l = 1.5 * 0.946352946;
inline constexpr double most_drunk_per_day_l = 12.0 * 0.946352946;

/// An ascent from this slope up is hard work: there the energy model asks some 600 W of somebody of
/// 75 kg under 22 kg, the mean of what [TBMED507] calls hard. From memory.
inline constexpr double steep_ascent_slope = 0.10;

/// From arriving to setting off, seconds, and the air's temperature.
struct InCamp {
    double stay_s;
    double air_c;
};

/// What one person uses in camp, litres: the kitchen, and what a body at rest drinks by the hour.
///
///     camp = 1.2 + h 1.75/24 (1 + 0.05 max(0, T - 15))
///
/// Source: 1.75 L a day, beverages alone, [JequierConstant2010]; heat as on the way; the kitchen's
/// 1.2 L (dried meals 1.0, washing up 0.2) from memory.
/// Covers: -30 to 45 C. Known bias: too low in humid heat.
[[nodiscard]] double camp_l(const InCamp& camp);
inline constexpr double kitchen_l = 1.2;
inline constexpr double resting_l_per_day = 1.75;

/// What a body at rest drinks, litres per second.
[[nodiscard]] double resting_lps(double air_c);

/// Hours at a rate plus the camp, held to `most_drunk_per_day_l`; drunk and cooked together, so
/// that the limit errs low.
struct DrinkingDay {
    double moving_s;
    double rate_lps;
    double camp_l;
};

[[nodiscard]] double drinking_day_l(const DrinkingDay& day);

/// Heat category 1 to 5 of a wet-bulb globe temperature; empty below category 1 (25.6 C).
/// Source: [TBMED507].
[[nodiscard]] std::optional<int> heat_category(double wbgt_c);

/// Printed intake, for an acclimatised soldier, in US quarts per hour; needs differ by a quarter
/// either way, and as much again between full sun and shade. `category` is held to 1..5.
/// Source: [TBMED507].
[[nodiscard]] double heat_table_qt_per_h(int category, Effort effort);

/// A printed daily amount to compare a plan with.
struct DailyWater {
    std::string_view who;
    double low_l;
    double high_l;
    std::string_view source;
};

[[nodiscard]] std::span<const DailyWater> daily_water();

[[nodiscard]] std::span<const ModelEntry> drinking_entries();

} // namespace tumpline::planner
