#pragma once

#include "planner/models/model_entry.h"

#include <optional>
#include <span>
#include <string_view>

namespace tumpline::planner {

/// Factor on walking speed under a load, by equal effort: the loaded walker goes as fast on the
/// level as costs the same power as 1.39 m/s without a load.
///
///     0.19 + 1.78 S^0.58 + 0.27 S^4 = C / (1 + 1.96 l^1.36),   f_L = S / 1.39
///
/// with C the left side at S = 1.39 m/s and l load over body mass, from
/// planner/models/load_carriage.h on a made surface.
/// Source: [EqualEffort], derived here from [Looney2022]; not a published rule.
/// Covers: l up to 0.66, the loads of the study. Checked against 20 kg of [Tranter1970], the
/// dropped pack of [Ruby2003] and the top speeds of [Looney2021]. Known bias: knows nothing of
/// fitness, straps or an awkward load such as a boat. 1 at l = 0, falling all the way; beyond l = 2
/// it stays at its value there (0.05). Read from a table, within 1e-8 of the exact root.
[[nodiscard]] double equal_effort_factor(double load_ratio);

/// The load over body mass at which the table ends.
inline constexpr double heaviest_load_ratio = 2.0;

/// The exact root behind the table, by bisection; for tests and documents, not for loops.
[[nodiscard]] double equal_effort_factor_exact(double load_ratio);

/// Level speed, m/s, that costs a walker without a load on ground of factor `eta` the same as
/// `reference_mps` does on ground of `reference_eta`, by the same equation.
struct EqualEffort {
    double eta;
    double load_ratio;
    double reference_mps;
    double reference_eta;
};

[[nodiscard]] double equal_effort_speed_mps(const EqualEffort& question);

enum class LoadEffect { equal_effort, none };

/// Factor on the speed of a walking model whose people carried `measured_ratio` of their body mass.
[[nodiscard]] double load_factor(LoadEffect effect, double load_ratio, double measured_ratio = 0.0);

/// The heaviest load of the study behind `equal_effort`, over body mass.
inline constexpr double equal_effort_most_ratio = 0.66;

[[nodiscard]] bool load_effect_covers(LoadEffect effect, double load_ratio);
[[nodiscard]] std::optional<LoadEffect> load_effect(std::string_view name);
[[nodiscard]] std::string_view load_effect_name(LoadEffect effect);
[[nodiscard]] std::span<const ModelEntry> load_effect_entries();

} // namespace tumpline::planner
