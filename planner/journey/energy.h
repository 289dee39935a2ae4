#pragma once

#include "planner/defaults/defaults.h"
#include "planner/journey/schedule.h"
#include "planner/journey/segments.h"

#include <cstddef>
#include <vector>

namespace tumpline::planner {

/// One passing over a portage's way with something on the back.
struct LadenPass {
    double mass_kg; ///< carried and worn
    double share;   ///< of the way: 0.5 where two members relay it
};

/// What a member bears on a stretch on foot.
struct Burden {
    double start_kg = 0.0; ///< on the back and worn as the stretch begins
    double end_kg = 0.0;
    double worn_kg = 0.0;            ///< worn or in hand
    std::vector<LadenPass> portaged; ///< on portages, where start and end mean nothing
    double waiting_s = 0.0;          ///< on portages, for those who are slower
};

/// What everyone bears: per stretch, per member.
using Burdens = std::vector<std::vector<Burden>>;

/// What everyone spends, joules, rest included.
struct Expenditure {
    std::vector<std::vector<double>> stretch_j; ///< per stretch, per member: moving only
    std::vector<std::vector<double>> day_j;     ///< per day, per member: all 24 hours
};

/// Walking, carrying and paddling by the models; change-overs, rests, camp and sleep by multiples
/// of resting metabolism. Whoever could be faster than the others walks at their pace. Eight hours
/// of sleep; camp work in the morning but on the first day, in the evening but on the last, where
/// the day leaves time for it; the rest of the day standing and sitting about
/// (docs/models/compendium.md).
[[nodiscard]] Expenditure spend(const Route& route,
                                const Stretches& stretches,
                                const Assumed& assumed,
                                const Timeline& timeline,
                                const Burdens& burdens);

} // namespace tumpline::planner
