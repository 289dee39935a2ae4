#include "planner/route/alternatives.h"

#include "geo/lines/geodesic.h"
#include "planner/route/leg_chain.h"
#include "planner/route/route_check.h"

#include <fmt/format.h>

#include <algorithm>
#include <cstddef>
#include <utility>

namespace tumpline::planner {

namespace {

/// Alternatives that follow on each other, in place of the legs of one name.
struct Detour {
    std::string instead_of;
    std::vector<const RouteLeg*> legs;
};

/// Whether a leg begins where another ends: their lines meet; or, where one has no line, both name
/// the same place.
bool follows(const RouteLeg& leg, const RouteLeg& before) {
    if (!leg.drawn() || !before.drawn())
        return !leg.spec.from.empty() && leg.spec.from == before.spec.to;
    return geo::distance_m(before.line.points().back(), leg.line.points().front()) <= largest_gap_m;
}

std::vector<Detour> detours_of(const Route& route) {
    std::vector<Detour> detours;
    for (const RouteLeg& leg : route.alternatives) {
        const bool goes_on = !detours.empty() && detours.back().instead_of == leg.spec.instead_of &&
                             follows(leg, *detours.back().legs.back());
        if (!goes_on)
            detours.push_back({leg.spec.instead_of, {}});
        detours.back().legs.push_back(&leg);
    }
    return detours;
}

/// Used or worn on the water and of no use on land.
bool only_for_boats(const KitItem& item) {
    return item.ashore == ItemUse::packed && item.afloat != ItemUse::packed;
}

class Layer {
  public:
    Layer(const Trip& trip, const Route& route, const KnownPlaces& places)
        : trip_(trip), route_(route), places_(places) {}

    /// The route with the first detour round each leg in place of it.
    [[nodiscard]] OtherRoute with(const std::vector<const Detour*>& detours) const;

  private:
    const Trip& trip_;
    const Route& route_;
    const KnownPlaces& places_;
};

OtherRoute Layer::with(const std::vector<const Detour*>& detours) const {
    OtherRoute other;
    other.trip = trip_;
    std::vector<RouteLeg> legs;
    std::vector<const Detour*> laid;
    for (const RouteLeg& leg : route_.legs) {
        const auto found = std::find_if(detours.begin(), detours.end(), [&](const Detour* detour) {
            return detour->instead_of == leg.name;
        });
        if (found == detours.end()) {
            legs.push_back(leg);
            continue;
        }
        if (std::find(laid.begin(), laid.end(), *found) != laid.end())
            continue; // a further leg of the same name
        laid.push_back(*found);
        other.instead_of.push_back(leg.name);
        for (const RouteLeg* part : (*found)->legs) {
            legs.push_back(*part);
            legs.back().spec.instead_of.clear();
            other.by.push_back(part->name);
        }
    }
    other.trip.route.legs.clear();
    for (const RouteLeg& leg : legs)
        other.trip.route.legs.push_back(leg.spec);
    if (std::none_of(
            legs.begin(), legs.end(), [](const RouteLeg& leg) { return afloat(leg.travel); })) {
        other.without_boats = !trip_.craft.empty();
        other.left_home_kg = leave_boats(other.trip);
    }
    other.route.sources = route_.sources;
    other.route.repairs = route_.repairs;
    lay_legs(other.route, std::move(legs));
    places_.snap(other.route, trip_.route.places);
    const std::vector<std::string> off = places_off_route(other.trip, other.route);
    if (!off.empty())
        other.refused = fmt::format("\"{}\" lies off this way", off.front());
    return other;
}

} // namespace

double leave_boats(Trip& trip) {
    double left_home_kg = 0.0;
    for (const Craft& craft : trip.craft)
        left_home_kg += craft.mass_kg;
    trip.craft.clear();
    for (const KitItem& item : trip.kit)
        if (only_for_boats(item))
            left_home_kg += item.all_kg();
    trip.kit.erase(std::remove_if(trip.kit.begin(), trip.kit.end(), only_for_boats),
                   trip.kit.end());
    return left_home_kg;
}

std::vector<OtherRoute>
other_routes(const Trip& trip, const Route& route, const KnownPlaces& places) {
    const std::vector<Detour> detours = detours_of(route);
    const Layer layer(trip, route, places);
    std::vector<OtherRoute> others;
    std::vector<const Detour*> every;
    for (const Detour& detour : detours) {
        others.push_back(layer.with({&detour}));
        if (std::none_of(every.begin(), every.end(), [&](const Detour* known) {
                return known->instead_of == detour.instead_of;
            }))
            every.push_back(&detour);
    }
    if (every.size() > 1)
        others.push_back(layer.with(every));
    return others;
}

} // namespace tumpline::planner
