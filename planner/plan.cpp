#include "planner/plan.h"

#include "planner/cautions/verdict.h"
#include "planner/conditions/calendar.h"
#include "planner/results/assembly.h"
#include "planner/results/models_used.h"
#include "planner/solution/nights.h"

#include <algorithm>

namespace tumpline::planner {

bool Plan::can_be_carried_out() const {
    return std::none_of(cautions.begin(), cautions.end(), [](const Caution& caution) {
        return caution.level == Level::stop;
    });
}

Date date_of(const Assembly& draft, int day) {
    return date_of(draft.prepared.assumed, day);
}

sys_seconds instant(const Assembly& draft, int day, double after_midnight_s) {
    return instant(draft.prepared.assumed, {day, after_midnight_s});
}

Solved settle_trip(const Prepared& prepared) {
    if (prepared.trip.days.nights_auto)
        return as_chosen(prepared, choose_nights(prepared, 0));
    SolveOptions options;
    if (!prepared.trip.days.nights.empty())
        options.nights = listed_nights(prepared);
    return solve(prepared, options);
}

Plan make_plan(const Trip& trip, const Route& route) {
    const Prepared prepared = prepare(trip, route);
    return assemble_plan(prepared, settle_trip(prepared));
}

Plan make_plan_with_choices(const Trip& trip, const Route& route) {
    const Prepared prepared = prepare(trip, route);
    const Solved settled = settle_trip(prepared);
    Plan plan = assemble_plan(prepared, settled);
    plan.remedies = remedies({prepared, settled}, plan);
    plan.other_ways = other_ways(plan, route);
    return plan;
}

Plan assemble_plan(const Prepared& prepared, const Solved& settled) {
    const Assembly draft{prepared, settled};
    Plan plan;
    plan.trip = prepared.trip;
    plan.trip.time_zone = prepared.assumed.time_zone;
    plan.defaults = prepared.assumed.defaults;
    plan.converged = settled.converged;
    plan.ledger = settled.loads.ledger;
    plan.stays_home = prepared.kit.stays_home;
    plan.comes = prepared.kit.comes;
    plan.legs = plan_legs(draft);
    plan.models = models_used(draft, plan.legs);
    plan.bands = bands_used(draft, plan.legs);
    plan.events = plan_events(draft);
    plan.days = plan_days(draft, plan.legs);
    plan.totals = plan_totals(draft, plan.days, plan.legs);
    plan.stages = plan_stages(draft);
    plan.water = plan_water(draft);
    plan.litres = plan_litres(draft);
    plan.carrying = plan_carries(draft);
    plan.sharing = plan_sharing(draft, plan.legs);
    plan.appointments = plan_appointments(draft);
    plan.exits = plan_exits(draft);
    plan.turn_rounds = plan_turn_rounds(draft);
    plan.cautions = plan_cautions(draft, plan);
    plan.verdict = verdict_of(draft, plan);
    return plan;
}

} // namespace tumpline::planner
