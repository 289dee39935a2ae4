#include "planner/make_plan.h"

#include "geo/input_error.h"
#include "planner/cautions/all_cautions.h"
#include "planner/cautions/not_judged.h"
#include "planner/cautions/verdict.h"
#include "planner/conditions/calendar.h"
#include "planner/results/appointments.h"
#include "planner/results/assembly.h"
#include "planner/results/carry_summary.h"
#include "planner/results/connections.h"
#include "planner/results/days.h"
#include "planner/results/decision_cards.h"
#include "planner/results/exits.h"
#include "planner/results/hazards.h"
#include "planner/results/heaviest_packs.h"
#include "planner/results/left_things.h"
#include "planner/results/legs.h"
#include "planner/results/luggage.h"
#include "planner/results/models_used.h"
#include "planner/results/packed_items.h"
#include "planner/results/permits.h"
#include "planner/results/suitability.h"
#include "planner/results/supplies.h"
#include "planner/results/turnaround.h"
#include "planner/results/volumes.h"
#include "planner/solution/nights.h"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

namespace tumpline::planner {

namespace {

Solved settle(const Prepared& prepared) {
    if (prepared.trip.days.nights_auto)
        return as_chosen(prepared, choose_nights(prepared, 0));
    SolveOptions options;
    if (!prepared.trip.days.nights.empty())
        options.nights = listed_nights(prepared);
    return solve(prepared, options);
}

/// Which pass is meant, and so whether two entries leave one thing, depends on the days.
void refuse_left_twice(const Prepared& prepared, const Solved& settled) {
    const Trip& trip = prepared.trip;
    const std::vector<LeftTwice> all = left_twice(
        {trip, prepared.route, prepared.stretches, settled.timeline.days, prepared.kit.brought});
    std::vector<geo::Problem> problems;
    for (auto first = all.begin(); first != all.end();) { // one for each pair of entries
        const auto next = std::find_if(first, all.end(), [&](const LeftTwice& other) {
            return other.leave != first->leave || other.earlier != first->earlier;
        });
        const auto more = next - first - 1;
        problems.push_back(
            {.file = trip.file.string(),
             .place = fmt::format("/leave/{}", first->leave),
             .found = fmt::format("\"{}\"{}, which /leave/{} has left at {} and not yet fetched",
                                  first->thing,
                                  more > 0 ? fmt::format(" and {} more", more) : std::string(),
                                  first->earlier,
                                  trip.leaves[first->earlier].at),
             .expected = "things that the party has with it",
             .advice = "leave it out of one of the two, or have it fetched before"});
        first = next;
    }
    if (!problems.empty())
        throw geo::InputError(std::move(problems));
}

} // namespace

Solved settle_trip(const Prepared& prepared) {
    Solved settled = settle(prepared);
    if (!prepared.trip.leaves.empty())
        refuse_left_twice(prepared, settled);
    return settled;
}

Plan make_plan(const Trip& trip, const Route& route) {
    const Prepared prepared = prepare(trip, route);
    return assemble_plan(prepared, settle_trip(prepared));
}

Plan assemble_plan(const Prepared& prepared, const Solved& settled) {
    const Assembly draft{prepared, settled};
    Plan plan;
    plan.trip = prepared.trip;
    plan.trip.time_zone = prepared.assumed.time_zone;
    plan.defaults = prepared.assumed.defaults;
    plan.converged = settled.converged;
    plan.ledger = settled.loads.ledger;
    plan.legs = plan_legs(draft);
    plan.models = models_used(draft, plan.legs);
    plan.bands = bands_used(draft, plan.legs);
    plan.items = plan_items(draft, plan.legs);
    plan.start_loads = plan_start_loads(draft, plan.legs);
    plan.luggage = plan_luggage(draft, plan.items, plan.start_loads);
    plan.events = plan_events(draft);
    plan.days = plan_days(draft, plan.legs);
    plan.left = plan_left(draft);
    plan.suitability = plan_suitability(draft);
    plan.volumes = plan_volumes(draft, plan.days);
    plan.totals = plan_totals(draft, plan.days, plan.legs);
    plan.heaviest_packs = plan_heaviest_packs(plan.days, plan.legs);
    plan.stages = plan_stages(draft);
    plan.water = plan_water(draft);
    plan.litres = plan_litres(draft);
    plan.carrying = plan_carries(draft);
    plan.sharing = plan_sharing(draft, plan.legs);
    plan.appointments = plan_appointments(draft, plan.legs);
    plan.connections = plan_connections(draft, plan.legs);
    plan.permits = plan_permits(draft);
    plan.exits = plan_exits(draft);
    plan.turn_rounds = plan_turn_rounds(draft);
    plan.hazards = plan_hazards(draft, plan.legs);
    plan.decisions = decision_cards(draft, plan);
    plan.cautions = plan_cautions(draft, plan);
    plan.verdict = verdict_of(plan, not_judged(draft, plan));
    return plan;
}

} // namespace tumpline::planner
