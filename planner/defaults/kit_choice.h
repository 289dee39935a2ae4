#pragma once

#include "planner/defaults/defaults.h"
#include "planner/plan.h"
#include "planner/route/route.h"

#include <vector>

namespace tumpline::planner {

/// Which things come along, and why the others stay.
struct KitChoice {
    std::vector<bool> brought; ///< per kit item
    std::vector<StaysHome> stays_home;
    std::vector<Comes> comes; ///< items with a condition that holds, or an override
};

/// Weighs each item's conditions against the legs and the weather. What is not known (water
/// temperature, night frost, rain) counts as holding: rather carried than missed. The price of an
/// item is its mass times the way and the climb on foot.
[[nodiscard]] KitChoice choose_kit(const Trip& trip, const Route& route, const Assumed& assumed);

} // namespace tumpline::planner
