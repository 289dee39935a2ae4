#include "planner/decisions/flows_compared.h"

#include "planner/make_plan.h"

#include <algorithm>

namespace tumpline::planner {

namespace {

FlowLeg flow_leg(const RouteLeg& leg, LegNumber number, const Plan& plan) {
    const RiverFlow& flow = *leg.spec.flow;
    FlowLeg row{.leg = number, .name = leg.name, .asked = flow.asked};
    if (const std::optional<FlowState> state = flow_state(flow, flow.now)) {
        row.current_mps = state->current_mps;
        row.reading = state->reading;
        row.river_class = state->river_class;
        row.estimated = state->estimated;
        row.runnable = is_runnable(flow, *state);
    }
    for (const PlanLeg& part : plan.legs)
        if (part.leg == number)
            row.moving_s += part.moving_s;
    return row;
}

FlowPlan at_level(Trip trip, Route route, FlowLevel level) {
    trip.flow_asked = level;
    for (RouteLeg& leg : route.legs)
        ask_flow(leg.spec, level);
    const Plan plan = make_plan(trip, route);
    FlowPlan flow{.level = level,
                  .moving_s = plan.totals.moving_s,
                  .days = plan.totals.days,
                  .legs = {},
                  .before_dusk_s = {},
                  .appointments = {},
                  .verdict = plan.verdict.level,
                  .titles = {}};
    for (std::size_t i = 0; i < route.legs.size(); ++i)
        if (route.legs[i].spec.flow)
            flow.legs.push_back(flow_leg(route.legs[i], LegNumber::of_index(i), plan));
    for (const PlanDay& day : plan.days)
        flow.before_dusk_s.push_back(day.before_dusk_s);
    for (const PlanAppointment& meet : plan.appointments)
        flow.appointments.push_back({meet.what, meet.spare_s, meet.margin_s});
    for (const VerdictReason& reason : plan.verdict.reasons)
        flow.titles.push_back(reason.title);
    for (const VerdictReason& reason : plan.verdict.also)
        flow.titles.push_back(reason.title);
    return flow;
}

} // namespace

std::vector<FlowPlan> flows_compared(const Trip& trip, const Route& route) {
    std::vector<FlowPlan> plans;
    for (const FlowLevel level : flow_levels) {
        const bool given =
            std::any_of(route.legs.begin(), route.legs.end(), [&](const RouteLeg& leg) {
                return leg.spec.flow && leg.spec.flow->column(level);
            });
        if (given)
            plans.push_back(at_level(trip, route, level));
    }
    return plans;
}

} // namespace tumpline::planner
