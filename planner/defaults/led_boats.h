#pragma once

#include "planner/trip/ways_of_travel.h"

namespace tumpline::planner {

/// Boats that are lined, waded with or poled: paces and efforts, common practice, no source. No
/// published speed of any of the three was found (docs/upstream.md).

/// Range of paces along the shore that the trade speaks of, slowest and quickest.
struct LedRange {
    double slow_mps;
    double fast_mps;
};

/// Nobody is planned to pole up a current faster than this.
inline constexpr double most_poled_mps = 1.5;

[[nodiscard]] constexpr bool too_swift_to_pole(double against_mps) {
    constexpr double rounding_mps = 1e-6;
    return against_mps > most_poled_mps + rounding_mps;
}

/// Along the shore, up or down, whatever the current is. Of no other way of travel.
[[nodiscard]] double usual_led_mps(Travel travel);

[[nodiscard]] LedRange led_range(Travel travel);

/// Metabolic equivalents, by likeness with rows of the compendium: lining as hiking across country,
/// wading as a portage, poling as hard paddling.
[[nodiscard]] double led_met(Travel travel);

} // namespace tumpline::planner
