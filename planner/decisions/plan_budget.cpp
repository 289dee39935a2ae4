#include "planner/decisions/plan_budget.h"

#include <algorithm>

namespace tumpline::planner {

int plans_to_spend(const Prepared& prepared, int most) {
    constexpr std::size_t least_plans = 2;
    constexpr std::size_t steps_to_spend = 150'000; // about a second on one core
    const std::size_t members = prepared.assumed.members.size();
    const std::size_t things = prepared.trip.kit.size() + 6 * members; // provisions of six kinds
    std::size_t steps = 1; // members over stretches, things over portages
    for (const Stretch& stretch : prepared.stretches.stretches)
        steps += members + (stretch.travel == Travel::portage ? things : 0);
    return static_cast<int>(
        std::clamp(steps_to_spend / steps, least_plans, static_cast<std::size_t>(most)));
}

} // namespace tumpline::planner
