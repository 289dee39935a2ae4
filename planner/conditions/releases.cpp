#include "planner/conditions/releases.h"

#include "planner/quantities/quantities.h"

#include <algorithm>
#include <cmath>

namespace tumpline::planner {

namespace {

bool has_release(const RouteLeg& leg) {
    return leg.spec.flow && !leg.spec.flow->times.empty();
}

} // namespace

std::optional<FlowState> released_at(const RouteLeg& leg, double after_midnight_s) {
    if (!has_release(leg))
        return std::nullopt;
    const double hour_s = after_midnight_s - s_per_day * std::floor(after_midnight_s / s_per_day);
    FlowNow now = leg.spec.flow->now;
    for (const Release& release : leg.spec.flow->times)
        if (release.hours && release.hours->holds(hour_s))
            now = release.now;
    return flow_state(*leg.spec.flow, now);
}

std::vector<double> release_changes(const RouteLeg& leg) {
    std::vector<double> changes;
    if (!has_release(leg))
        return changes;
    for (const double day_s : {0.0, s_per_day})
        for (const Release& release : leg.spec.flow->times)
            if (release.hours) {
                changes.push_back(day_s + release.hours->from_s);
                changes.push_back(day_s + release.hours->to_s);
            }
    std::sort(changes.begin(), changes.end());
    changes.erase(std::unique(changes.begin(), changes.end()), changes.end());
    return changes;
}

bool has_releases(const Route& route) {
    return std::any_of(route.legs.begin(), route.legs.end(), has_release);
}

} // namespace tumpline::planner
