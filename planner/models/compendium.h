#pragma once

#include "planner/models/model_entry.h"

#include <optional>
#include <span>
#include <string_view>

namespace tumpline::planner {

/// Editions of the Compendium of Physical Activities. Codes were given new meanings in 2024 (17033,
/// 17035, 17040, 17060): a code alone says nothing.
enum class CompendiumEdition { y2011, y2024 };

/// One row of the Compendium: the rate of an activity in multiples of 1 kcal per kg and hour.
struct Activity {
    CompendiumEdition edition;
    std::string_view code;
    std::string_view what; ///< shortened from the table
    double met;
};

/// The rows that concern walking, paddling and camping.
/// Source: [Ainsworth2011], [Herrmann2024], from agreeing transcriptions.
[[nodiscard]] std::span<const Activity> compendium();

[[nodiscard]] std::optional<double> met(CompendiumEdition edition, std::string_view code);

/// What the planner reckons with where no model of its own is better, all of 2024 but the portage.
inline constexpr double met_sleep = 1.0;             ///< 07030 sleeping
inline constexpr double met_standing = 1.3;          ///< 07040 standing quietly
inline constexpr double met_sitting = 1.0;           ///< 07021 sitting quietly
inline constexpr double met_camp = 2.5;              ///< 09110 camping: standing, walking, sitting
inline constexpr double met_changeover = 2.5;        ///< 09110; rigging and packing have no row
inline constexpr double met_backpacking = 7.0;       ///< 17010
inline constexpr double met_hiking = 6.0;            ///< 17080 cross country
inline constexpr double met_paddling_light = 2.8;    ///< 18040 2.0 to 3.9 mph
inline constexpr double met_paddling_pleasure = 3.5; ///< 18070
inline constexpr double met_paddling_steady = 5.0;   ///< 18100 kayaking, moderate effort
inline constexpr double met_paddling_hard = 5.8;     ///< 18050 4.0 to 5.9 mph
inline constexpr double met_whitewater = 5.0;        ///< 18370
inline constexpr double met_portage = 7.0;           ///< 18030, edition of 2011

struct Spell {
    double met;
    double body_kg;
    double duration_s;
};

/// Energy, joules, of which rest is a part.
///
///     E = MET x kg x h   kcal
///
/// Source: [Ainsworth2011]. Covers: adults. Known bias: MET values are means of studies at a brisk
/// pace.
[[nodiscard]] double met_energy_j(const Spell& spell);

/// The other convention, 3.5 mL of oxygen per kg and minute at 5 kcal per litre: 5 % more.
[[nodiscard]] double met_oxygen_energy_j(const Spell& spell);

/// Power, watts, of `met` for a body.
[[nodiscard]] double met_w(double met, double body_kg);

[[nodiscard]] std::span<const ModelEntry> compendium_entries();

} // namespace tumpline::planner
