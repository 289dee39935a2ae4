#include "planner/route/undrawn_legs.h"

#include "geo/lines/geodesic.h"

#include <algorithm>
#include <cstddef>

namespace tumpline::planner {

bool put_undrawn(std::vector<LooseLeg>& legs,
                 const std::function<std::optional<geo::Position>(const std::string&)>& position_of,
                 const std::optional<geo::Position>& somewhere) {
    for (std::size_t i = 0; i < legs.size(); ++i) {
        const TripLeg& spec = legs[i].spec;
        if (!spec.length_m)
            continue;
        std::optional<geo::Position> at = position_of(spec.from);
        if (!at && i > 0)
            at = legs[i - 1].traced.line.points().back();
        const auto next = std::find_if(legs.begin() + static_cast<std::ptrdiff_t>(i),
                                       legs.end(),
                                       [](const LooseLeg& leg) { return !leg.spec.length_m; });
        if (!at && next != legs.end())
            at = next->traced.line.points().front();
        if (!at)
            at = position_of(spec.to);
        if (!at)
            at = somewhere;
        if (!at)
            return false;
        legs[i].traced.line = geo::Polyline({*at});
    }
    return true;
}

std::vector<ShortLegs> too_short_between(const Route& route) {
    std::vector<ShortLegs> all;
    const RouteLeg* before = nullptr;
    double undrawn_m = 0.0;
    bool unmeasured = false; // a ride among them, of which nobody said how far it goes
    for (const RouteLeg& leg : route.legs) {
        if (!leg.drawn()) {
            undrawn_m += leg.length_m();
            unmeasured = unmeasured || (is_ride(leg.travel) && leg.length_m() <= no_length_m);
            continue;
        }
        if (before && undrawn_m > 0.0 && !unmeasured) {
            const double apart_m =
                geo::distance_m(before->line.points().back(), leg.line.points().front());
            if (undrawn_m + largest_gap_m < apart_m)
                all.push_back({before->name, leg.name, undrawn_m, apart_m});
        }
        before = &leg;
        undrawn_m = 0.0;
        unmeasured = false;
    }
    return all;
}

} // namespace tumpline::planner
