#include "planner/results/portage_choices.h"

#include "planner/journey/darkness.h"

#include <algorithm>

namespace tumpline::planner {

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
    const StretchTime& time = draft.settled.timeline.stretches[stretch];
    Walk walk{.start_s = time.start_s + time.before.lasts_s,
              .by_day_s = 0.0,
              .moved_before_s = time.moved_before_s,
              .rest_per_hour_s = draft.prepared.assumed.times.rest_per_hour_s,
              .dark_factor = draft.prepared.stretches.stretches[stretch].dark_factor};
    const Darkness& dark = draft.settled.darkness[static_cast<std::size_t>(day - days.begin())];
    for (CarryChoice& choice : choices) {
        walk.by_day_s = choice.moving_s;
        choice.moving_s = walked(walk, dark).moving_s;
    }
    return choices;
}

} // namespace tumpline::planner
