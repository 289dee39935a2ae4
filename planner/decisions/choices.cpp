#include "planner/decisions/choices.h"

#include "planner/decisions/alternatives_compared.h"
#include "planner/decisions/flows_compared.h"
#include "planner/decisions/plan_budget.h"
#include "planner/decisions/remedies.h"
#include "planner/make_plan.h"

namespace tumpline::planner {

Plan make_plan_with_choices(const Trip& trip,
                            const Route& route,
                            const std::vector<OtherRoute>& others,
                            const Choices& choices) {
    const Prepared prepared = prepare(trip, route);
    const Solved settled = settle_trip(prepared);
    Plan plan = assemble_plan(prepared, settled);
    if (choices.remedies)
        plan.remedies = remedies({prepared, settled}, plan);
    if (choices.other_ways)
        plan.other_ways = other_ways(plan, others, plans_to_spend(prepared, most_other_ways));
    if (choices.flows)
        plan.flows = flows_compared(trip, route);
    return plan;
}

} // namespace tumpline::planner
