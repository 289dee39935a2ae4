#pragma once

#include "planner/defaults/defaults.h"
#include "planner/journey/schedule.h"
#include "planner/journey/segments.h"
#include "planner/loads/load_book.h"

#include <cstddef>
#include <vector>

namespace tumpline::planner {

/// What everyone spends, joules, rest included.
struct Expenditure {
    std::vector<std::vector<double>> stretch_j; ///< per stretch, per member: moving only
    std::vector<std::vector<double>> day_j;     ///< per day, per member: all 24 hours
};

/// Walking, carrying and paddling by the models; change-overs, rests, camp and sleep by multiples
/// of resting metabolism. Eight hours of sleep, three of camp work where the day leaves them, the
/// rest of the day standing and sitting about (docs/models/compendium.md).
[[nodiscard]] Expenditure spend(const Route& route,
                                const Stretches& stretches,
                                const Assumed& assumed,
                                const Timeline& timeline,
                                const Loads& loads);

} // namespace tumpline::planner
