#pragma once

/// The one home of "over the limit or not": packs, loads of a portage, single things, boats, in the
/// plan, in its cautions and remedies, and in what people read.
namespace tumpline::planner {

/// Half of the last digit that a weight is shown with. Loads are not known to fifty grams, and a
/// pack that reads as heavy as its limit is not told to be over it. Common practice, no source.
inline constexpr double least_over_kg = 0.05;

/// Whether a mass is over a limit by as much as counts.
[[nodiscard]] constexpr bool over_limit(double mass_kg, double limit_kg) {
    return mass_kg > limit_kg + least_over_kg;
}

} // namespace tumpline::planner
