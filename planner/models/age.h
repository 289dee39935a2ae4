#pragma once

#include "planner/models/resting_energy.h"

#include <optional>

/// What age changes: the energy of a child's day, how fast the old walk, what the young may carry.
namespace tumpline::planner {

/// Under 18 years, where the equations of children's energy end.
[[nodiscard]] bool is_child(const Body& body);

/// How active a child's usual days are.
enum class ChildDay { light, moderate, heavy };

/// Energy of a whole day of a child, joules, growth left out (6 to 33 kcal).
///
///     boys   310.2 + 63.3 W - 0.263 W^2     kcal per day
///     girls  263.4 + 65.3 W - 0.454 W^2
///
/// Source: [FAO2004], [Torun2005]; light days 0.85 and heavy ones 1.15 of it, from 6 years on.
/// Covers: 1 to 18 years. Known bias: of children at home, not under a pack.
/// Departs: girls heavier than 65 kg count as 65 kg, as the curve turns down at 72 kg.
[[nodiscard]] double child_day_j(const Body& body, ChildDay day);

/// Comfortable walking speed at an age over that of 30 to 59 years; the mean of men and women.
///
///     0.93 in the sixties, 0.86 in the seventies, 0.69 from 80 on; else 1
///
/// Source: [Bohannon2011], a level floor without a load. Known bias: of two people of one age the
/// slower is often older in nothing: the spread within a decade is wider than from one to the next.
[[nodiscard]] double gait_ratio(double age_years);

/// Comfortable walking speed of a decade on a level floor, m/s; empty where the table has none.
/// Source: [Bohannon2011]. Covers: 20 to 99 years.
[[nodiscard]] std::optional<double> comfortable_gait_mps(double age_years, bool male);

/// Share of a child's body mass in a pack. Source: [AAPBackpack], "10 to 20 %", of school bags: the
/// middle. No trial of children on walks of days was found.
inline constexpr double child_load_share = 0.15;
inline constexpr double child_most_share = 0.20;

} // namespace tumpline::planner
