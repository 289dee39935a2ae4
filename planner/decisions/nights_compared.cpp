#include "planner/decisions/nights_compared.h"

#include "planner/make_plan.h"
#include "planner/results/assembly.h"

#include <optional>
#include <utility>

namespace tumpline::planner {

namespace {

/// The name of a boundary's camp, else of the boundary.
std::string night_name(const Assembly& draft, std::size_t boundary) {
    for (const std::size_t index : draft.prepared.stretches.boundaries[boundary].places) {
        const RoutePlace& place = draft.prepared.route.places[index];
        if (place.kind == PlaceKind::camp)
            return place.name;
    }
    return boundary_name(draft, boundary);
}

NightsOption option_of(const Prepared& prepared, NightsSettled one) {
    NightsOption option{
        assemble_plan(prepared, one.settled), {}, std::move(one.days), {}, one.broken};
    for (const std::size_t night : one.nights)
        option.nights.push_back(night_name({prepared, one.settled}, night));
    for (const DayCost& day : option.days)
        option.cost += day;
    return option;
}

NightsPlan nights_of(const Trip& trip, const Route& route, const NightsWatch& watch) {
    Trip open = trip;
    open.days.nights_auto = true;
    open.days.nights.clear();
    const Prepared prepared = prepare(open, route);
    NightsPlan result;
    if (!trip.days.nights.empty()) {
        const Prepared as_listed = prepare(trip, route);
        result.listed.push_back(
            option_of(as_listed, settled_at(as_listed, listed_nights(as_listed))));
    }
    NightsChosen chosen = choose_nights(prepared, 2, watch);
    result.asked = chosen.asked;
    result.places = chosen.places;
    result.camps = chosen.camps;
    for (NightsSettled& one : chosen.next)
        result.next.push_back(option_of(prepared, std::move(one)));
    chosen.best.settled = as_chosen(prepared, chosen);
    result.best = option_of(prepared, std::move(chosen.best));
    return result;
}

} // namespace

NightsPlan plan_nights(const Trip& trip, const Route& route) {
    return nights_of(trip, route, {});
}

std::optional<NightsPlan>
watched_nights(const Trip& trip, const Route& route, const NightsWatch& watch) {
    try {
        return nights_of(trip, route, watch);
    } catch (const NightsLeft&) {
        return std::nullopt;
    }
}

} // namespace tumpline::planner
