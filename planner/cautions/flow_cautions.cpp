#include "planner/cautions/flow_cautions.h"

#include "planner/cautions/caution_list.h"
#include "planner/quantities/quantities.h"

#include <algorithm>
#include <set>

namespace tumpline::planner {

namespace {

constexpr std::string_view ask_locally =
    "Ask people who know this river today; their word and a closure by the authority go first.";

/// The first level met on a leg for which `holds`.
template <typename Holds> const FlowState* first_state(const PlanFlow& flow, Holds holds) {
    const auto found = std::find_if(flow.states.begin(), flow.states.end(), holds);
    return found == flow.states.end() ? nullptr : &*found;
}

bool outside(const PlanFlow& flow, const FlowState& state) {
    return flow.runnable && state.reading &&
           (state.reading->value < (*flow.runnable)[0].value ||
            state.reading->value > (*flow.runnable)[1].value);
}

void range(const PlanFlow& flow, CautionList& list) {
    if (!flow.runnable)
        return;
    const UnitText least = reading_words((*flow.runnable)[0]);
    const UnitText most = reading_words((*flow.runnable)[1]);
    if (const FlowState* state =
            first_state(flow, [&](const FlowState& one) { return outside(flow, one); })) {
        const bool little = state->reading->value < (*flow.runnable)[0].value;
        const UnitText here = reading_words(*state->reading);
        Caution& caution = list.add(
            Level::stop,
            "flow-not-runnable",
            format_both("The river carries {} where it is said to be runnable from {} to {}: too "
                        "{}. Wait for the level, or go another way. {}",
                        here,
                        least,
                        most,
                        little ? "little" : "much",
                        ask_locally));
        set_figure(caution,
                   format_both("{}, runnable from {} to {}", here, least, most),
                   little ? (*flow.runnable)[0].value / std::max(1e-9, state->reading->value)
                          : state->reading->value / std::max(1e-9, (*flow.runnable)[1].value));
    } else if (first_state(flow, [](const FlowState& one) { return !one.reading; })) {
        list.add(Level::caution,
                 "flow-unread",
                 format_both("The river is said to be runnable from {} to {}, and the level the "
                             "plan takes has no reading: whether it is runnable is not judged. "
                             "Read the gauge.",
                             least,
                             most));
    }
}

void estimates(const PlanFlow& flow, CautionList& list) {
    const FlowState* beyond = first_state(flow, [](const FlowState& one) { return one.beyond; });
    if (beyond != nullptr && beyond->reading) {
        Caution& caution = list.add(
            Level::caution,
            "flow-beyond",
            format_both("{} lies outside the levels that are given: the current is an estimate by "
                        "hydraulic geometry, the class is that of the nearest level, and nobody "
                        "has said what the river does there. {}",
                        reading_words(*beyond->reading),
                        ask_locally),
            "LeopoldMaddock1953");
        set_figure(caution, reading_words(*beyond->reading), beyond->reading->value);
        return;
    }
    if (const FlowState* state =
            first_state(flow, [](const FlowState& one) { return one.estimated; }))
        list.add(Level::caution,
                 "flow-estimated",
                 format_both("The current of {} at this level is an estimate from another level by "
                             "hydraulic geometry: a mean of the section within the banks, which "
                             "rapids, pools and floods do not follow. Time a stick when you are "
                             "there.",
                             in_both(show_speed, state->current_mps)),
                 "LeopoldMaddock1953");
}

} // namespace

std::vector<Caution> flow_cautions(const Plan& plan) {
    CautionList list;
    for (const PlanLeg& leg : plan.legs) {
        if (!leg.flow)
            continue;
        list.at(leg.day, leg.leg);
        range(*leg.flow, list);
        estimates(*leg.flow, list);
    }
    return list.take();
}

} // namespace tumpline::planner
