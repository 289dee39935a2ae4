#include "planner/results/portage_choices.h"

#include "planner/journey/darkness.h"

#include <algorithm>

namespace tumpline::planner {

namespace {

/// What the portage's ways have in common: when they begin, and after how much moving on the day.
Walk begun_at(const Assembly& draft, std::size_t stretch, const DaySpan& day) {
    const std::vector<StretchTime>& times = draft.settled.timeline.stretches;
    double moved_s = 0.0;
    for (std::size_t i = day.first; i < stretch; ++i)
        moved_s += times[i].moving_s;
    return {.start_s = times[stretch].start_s + times[stretch].before.lasts_s,
            .by_day_s = 0.0,
            .moved_before_s = moved_s,
            .rest_per_hour_s = draft.prepared.assumed.times.rest_per_hour_s,
            .dark_factor = draft.prepared.stretches.stretches[stretch].dark_factor};
}

} // namespace

std::vector<CarryChoice> choices_by_clock(const Assembly& draft, std::size_t stretch) {
    const std::optional<PortagePlan>& plan = draft.settled.loads.portages[stretch];
    if (!plan)
        return {};
    std::vector<CarryChoice> choices = plan->choices;
    const std::vector<DaySpan>& days = draft.settled.timeline.days;
    const auto day = std::find_if(days.begin(), days.end(), [&](const DaySpan& one) {
        return one.first <= stretch && stretch < one.last;
    });
    if (day == days.end())
        return choices;
    Walk walk = begun_at(draft, stretch, *day);
    const Darkness& dark = draft.settled.darkness[static_cast<std::size_t>(day - days.begin())];
    for (CarryChoice& choice : choices) {
        walk.by_day_s = choice.moving_s;
        choice.moving_s = walked(walk, dark).moving_s;
    }
    return choices;
}

} // namespace tumpline::planner
