#include "planner/results/hazards.h"

#include "planner/results/assembly.h"

#include <algorithm>
#include <utility>

namespace tumpline::planner {

namespace {

/// The day on which one comes to a point of a leg (from 1); where a night parts there, the earlier.
int day_at(const std::vector<PlanLeg>& legs, LegNumber leg, double along_m) {
    int day = 1;
    for (const PlanLeg& part : legs) {
        if (part.leg != leg)
            continue;
        day = part.day;
        if (along_m <= part.to_m)
            break;
    }
    return day;
}

} // namespace

std::vector<PlanHazard> plan_hazards(const Assembly& draft, const std::vector<PlanLeg>& legs) {
    const Route& route = draft.prepared.route;
    const std::vector<TripPlace>& specs = draft.prepared.trip.route.places;
    std::vector<PlanHazard> all;
    for (std::size_t i = 0; i < route.legs.size(); ++i)
        if (const RouteLeg& leg = route.legs[i]; !leg.spec.note.empty())
            all.push_back({.name = leg.name,
                           .note = leg.spec.note,
                           .day = day_at(legs, LegNumber::of_index(i), leg.from_m),
                           .leg = LegNumber::of_index(i),
                           .along_m = leg.from_m});
    for (const RoutePlace& place : route.places) {
        const bool hazard = place.kind == PlaceKind::hazard || place.kind == PlaceKind::ford;
        const std::string note = place.spec < specs.size() ? specs[place.spec].note : std::string();
        if (!hazard && note.empty())
            continue;
        all.push_back({.hazard = hazard,
                       .place = place.kind,
                       .name = place.name,
                       .note = note,
                       .day = day_at(legs, place.leg, place.along_m),
                       .leg = place.leg,
                       .along_m = place.along_m});
    }
    std::stable_sort(all.begin(), all.end(), [](const PlanHazard& a, const PlanHazard& b) {
        return std::pair(a.leg, a.along_m) < std::pair(b.leg, b.along_m);
    });
    return all;
}

} // namespace tumpline::planner
