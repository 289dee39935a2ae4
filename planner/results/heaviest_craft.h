#pragma once

#include "planner/plan.h"
#include "planner/quantities/leg_number.h"

#include <cstddef>
#include <vector>

namespace tumpline::planner {

/// Where a boat is heaviest on the whole trip.
struct HeaviestCraft {
    PlanLegNumber plan_leg = {};
    std::size_t craft = 0; ///< index into that leg's craft
};

/// For each boat the leg on which people, what they wear and goods weigh most in it, the first of
/// equals; in the order in which the boats are first afloat.
[[nodiscard]] std::vector<HeaviestCraft> heaviest_craft(const std::vector<PlanLeg>& legs);

} // namespace tumpline::planner
