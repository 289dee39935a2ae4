#include "planner/route/place_snap.h"

#include "planner/quantities/unit_text.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace tumpline::planner {

namespace {

constexpr double same_pass_m = 50.0; // passes this near to the best one count as passes too

struct Pass {
    double along_m;
    double off_m;
    std::size_t leg;
};

/// The legs by how near they may come to a place: a bound that is cheap to have.
struct NearLeg {
    double no_nearer_m;
    std::size_t leg;
};

std::vector<NearLeg> nearest_first(const Route& route, const geo::Position& at) {
    std::vector<NearLeg> legs;
    legs.reserve(route.legs.size());
    for (std::size_t i = 0; i < route.legs.size(); ++i)
        legs.push_back({route.legs[i].line.no_nearer_m(at), i});
    std::sort(legs.begin(), legs.end(), [](const NearLeg& a, const NearLeg& b) {
        return a.no_nearer_m < b.no_nearer_m;
    });
    return legs;
}

/// The nearest point of all legs, of equals on the first leg: exact where a bound does not say that
/// the leg stays further away.
Pass nearest_pass(const Route& route, const geo::Position& at, const std::vector<NearLeg>& legs) {
    Pass nearest{0.0, HUGE_VAL, 0};
    for (const NearLeg& near : legs) {
        if (near.no_nearer_m > nearest.off_m)
            break;
        const RouteLeg& leg = route.legs[near.leg];
        const geo::Snap best = leg.line.nearest(at);
        if (best.off_m < nearest.off_m || (best.off_m == nearest.off_m && near.leg < nearest.leg))
            nearest = {leg.from_m + best.along_m, best.off_m, near.leg};
    }
    return nearest;
}

std::vector<Pass> passes_of(const Route& route, const geo::Position& at) {
    const std::vector<NearLeg> legs = nearest_first(route, at);
    const Pass nearest = nearest_pass(route, at, legs);
    const double within_m = std::min(far_off_m, nearest.off_m + same_pass_m);
    std::vector<std::size_t> within;
    for (const NearLeg& near : legs)
        if (near.no_nearer_m <= within_m)
            within.push_back(near.leg);
    std::sort(within.begin(), within.end());
    std::vector<Pass> passes;
    for (const std::size_t i : within) {
        const RouteLeg& leg = route.legs[i];
        for (const geo::Snap& snap : leg.line.passes(at, within_m)) {
            const double along_m = leg.from_m + snap.along_m;
            // The end of one leg and the start of the next are one pass.
            if (!passes.empty() && along_m - passes.back().along_m < far_off_m) {
                if (snap.off_m < passes.back().off_m - 1e-6)
                    passes.back() = {along_m, snap.off_m, i};
                continue;
            }
            passes.push_back({along_m, snap.off_m, i});
        }
    }
    if (passes.empty())
        passes.push_back(nearest);
    return passes;
}

/// A place within this distance of a leg's end stands at the end: that is where people stop.
void settle_on_ends(const Route& route, Pass& pass) {
    constexpr double near_end_m = 30.0;
    const RouteLeg& leg = route.legs[pass.leg];
    if (pass.along_m - leg.from_m < near_end_m)
        pass.along_m = leg.from_m;
    else if (leg.to_m - pass.along_m < near_end_m)
        pass.along_m = leg.to_m;
}

void snap_waypoint(Route& route, const std::string& name, const geo::Position& at) {
    for (Pass& pass : passes_of(route, at)) {
        settle_on_ends(route, pass);
        route.met_at.push_back({.name = name,
                                .kind = PlaceKind::landing,
                                .at = at,
                                .along_m = pass.along_m,
                                .off_m = pass.off_m,
                                .leg = pass.leg,
                                .spec = 0});
    }
}

} // namespace

void KnownPlaces::snap(Route& route, const std::vector<TripPlace>& places) const {
    for (std::size_t i = 0; i < places.size(); ++i) {
        const auto at = of_trip.find(places[i].name);
        if (at == of_trip.end())
            continue;
        std::vector<Pass> passes = passes_of(route, at->second);
        for (Pass& pass : passes) {
            settle_on_ends(route, pass);
            route.places.push_back({.name = places[i].name,
                                    .kind = places[i].kind,
                                    .at = at->second,
                                    .along_m = pass.along_m,
                                    .off_m = pass.off_m,
                                    .leg = pass.leg,
                                    .spec = i});
        }
        const UnitText off =
            format_both("\"{}\" lies {} off the route; the way there and back is not in this plan.",
                        places[i].name,
                        in_both(show_distance, passes.front().off_m));
        if (passes.front().off_m > far_off_m)
            route.cautions.push_back({.level = Level::caution,
                                      .code = "place-off-route",
                                      .day = std::nullopt,
                                      .leg = passes.front().leg + 1,
                                      .text = off.metric,
                                      .source = "docs/route.md",
                                      .imperial = off.imperial});
    }
    std::stable_sort(route.places.begin(), route.places.end(), [](const auto& a, const auto& b) {
        return a.along_m < b.along_m;
    });
    for (const auto& [name, at] : met_at)
        snap_waypoint(route, name, at);
}

} // namespace tumpline::planner
