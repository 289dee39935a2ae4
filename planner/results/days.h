#pragma once

#include "planner/results/assembly.h"

#include <vector>

namespace tumpline::planner {

/// What happens when, in order.
[[nodiscard]] std::vector<Event> plan_events(const Assembly& draft);

/// The days, with light, arrival and what each member bears, eats and spends.
[[nodiscard]] std::vector<PlanDay> plan_days(const Assembly& draft,
                                             const std::vector<PlanLeg>& legs);

[[nodiscard]] Totals plan_totals(const Assembly& draft,
                                 const std::vector<PlanDay>& days,
                                 const std::vector<PlanLeg>& legs);

/// When darkness falls on a day, if it does: a dusk just after midnight is that of the evening
/// before.
[[nodiscard]] std::optional<sys_seconds> dusk_of(const PlanDay& day);

} // namespace tumpline::planner
