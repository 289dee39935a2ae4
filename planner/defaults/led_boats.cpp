#include "planner/defaults/led_boats.h"

#include "planner/models/compendium.h"

namespace tumpline::planner {

double usual_led_mps(Travel travel) {
    constexpr double line_mps = 0.4;
    constexpr double wade_mps = 0.3;
    constexpr double pole_mps = 0.6;
    return travel == Travel::line ? line_mps : travel == Travel::wade ? wade_mps : pole_mps;
}

LedRange led_range(Travel travel) {
    constexpr LedRange line{.slow_mps = 0.2, .fast_mps = 0.7}; // boulders and brush; a clean bank
    constexpr LedRange wade{.slow_mps = 0.2, .fast_mps = 0.5};
    constexpr LedRange pole{.slow_mps = 0.5, .fast_mps = 1.0};
    return travel == Travel::line ? line : travel == Travel::wade ? wade : pole;
}

double led_met(Travel travel) {
    return travel == Travel::line   ? met_hiking
           : travel == Travel::wade ? met_portage
                                    : met_paddling_hard;
}

} // namespace tumpline::planner
