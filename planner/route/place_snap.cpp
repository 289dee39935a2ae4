#include "planner/route/place_snap.h"

#include "geo/lines/geodesic.h"
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
    LegNumber leg;
};

/// The legs by how near they may come to a place: a bound that is cheap to have.
struct NearLeg {
    double no_nearer_m;
    LegNumber leg;
};

/// Nobody gets off a ride on its way: it comes by what stands at its ends.
Pass nearer_end(const RouteLeg& leg, LegNumber number, const geo::Position& at) {
    const Pass start{leg.from_m, geo::distance_m(at, leg.line.points().front()), number};
    const Pass end{leg.to_m, geo::distance_m(at, leg.line.points().back()), number};
    return end.off_m < start.off_m ? end : start;
}

/// Where a leg passes nearest.
Pass nearest_on(const RouteLeg& leg, LegNumber number, const geo::Position& at) {
    if (is_ride(leg.travel))
        return nearer_end(leg, number, at);
    const geo::Snap snap = leg.line.nearest(at);
    return {leg.from_m + snap.along_m, snap.off_m, number};
}

/// Every pass of a leg within a distance, in order.
std::vector<Pass>
passes_on(const RouteLeg& leg, LegNumber number, const geo::Position& at, double within_m) {
    std::vector<Pass> passes;
    if (is_ride(leg.travel)) {
        const Pass end = nearer_end(leg, number, at);
        if (end.off_m <= within_m)
            passes.push_back(end);
        return passes;
    }
    for (const geo::Snap& snap : leg.line.passes(at, within_m))
        passes.push_back({leg.from_m + snap.along_m, snap.off_m, number});
    return passes;
}

std::vector<NearLeg> nearest_first(const Route& route, const geo::Position& at) {
    std::vector<NearLeg> legs;
    legs.reserve(route.legs.size());
    for (std::size_t i = 0; i < route.legs.size(); ++i) {
        const RouteLeg& leg = route.legs[i];
        if (leg.drawn())
            legs.push_back({is_ride(leg.travel) ? nearer_end(leg, LegNumber::of_index(i), at).off_m
                                                : leg.line.no_nearer_m(at),
                            LegNumber::of_index(i)});
    }
    std::sort(legs.begin(), legs.end(), [](const NearLeg& a, const NearLeg& b) {
        return a.no_nearer_m < b.no_nearer_m;
    });
    return legs;
}

/// The nearest point of all legs, of equals on the first leg: exact where a bound does not say that
/// the leg stays further away.
Pass nearest_pass(const Route& route, const geo::Position& at, const std::vector<NearLeg>& legs) {
    Pass nearest{0.0, HUGE_VAL, {}};
    for (const NearLeg& near : legs) {
        if (near.no_nearer_m > nearest.off_m)
            break;
        const Pass best = nearest_on(route.legs[near.leg.index()], near.leg, at);
        if (best.off_m < nearest.off_m || (best.off_m == nearest.off_m && near.leg < nearest.leg))
            nearest = best;
    }
    return nearest;
}

std::vector<Pass> passes_of(const Route& route, const geo::Position& at) {
    const std::vector<NearLeg> legs = nearest_first(route, at);
    const Pass nearest = nearest_pass(route, at, legs);
    const double within_m = std::min(far_off_m, nearest.off_m + same_pass_m);
    std::vector<LegNumber> within;
    for (const NearLeg& near : legs)
        if (near.no_nearer_m <= within_m)
            within.push_back(near.leg);
    std::sort(within.begin(), within.end());
    std::vector<Pass> passes;
    for (const LegNumber number : within) {
        for (const Pass& pass : passes_on(route.legs[number.index()], number, at, within_m)) {
            // The end of one leg and the start of the next are one pass.
            if (!passes.empty() && pass.along_m - passes.back().along_m < far_off_m) {
                if (pass.off_m < passes.back().off_m - 1e-6)
                    passes.back() = pass;
                continue;
            }
            passes.push_back(pass);
        }
    }
    if (passes.empty() && !legs.empty())
        passes.push_back(nearest);
    return passes;
}

/// The ends of legs without a line that name a place.
std::vector<Pass> named_ends(const Route& route, const std::string& name) {
    std::vector<Pass> passes;
    for (std::size_t i = 0; i < route.legs.size(); ++i) {
        const RouteLeg& leg = route.legs[i];
        const bool on_from = !leg.drawn() && leg.spec.from == name;
        const bool on_to = !leg.drawn() && leg.spec.to == name;
        if (on_from && (passes.empty() || leg.from_m - passes.back().along_m >= 1.0))
            passes.push_back({leg.from_m, 0.0, LegNumber::of_index(i)});
        if (on_to)
            passes.push_back({leg.to_m, 0.0, LegNumber::of_index(i)});
    }
    return passes;
}

/// A point of a leg on this route; none where the route goes another way.
std::vector<Pass> at_distance(const Route& route, const LegDistance& along) {
    std::size_t ahead = 0;
    for (std::size_t i = 0; i < route.legs.size(); ++i) {
        const RouteLeg& leg = route.legs[i];
        if (leg.name == along.leg && ahead++ == along.same_named)
            return {
                {std::min(leg.to_m, leg.from_m + along.from_start_m), 0.0, LegNumber::of_index(i)}};
    }
    return {};
}

/// A place that is both where a line passes and where a leg without a line ends is passed once.
void drop_same_passes(std::vector<Pass>& passes) {
    std::stable_sort(passes.begin(), passes.end(), [](const Pass& a, const Pass& b) {
        return a.along_m < b.along_m;
    });
    std::vector<Pass> apart;
    for (const Pass& pass : passes) {
        if (apart.empty() || pass.along_m - apart.back().along_m >= far_off_m)
            apart.push_back(pass);
        else if (pass.off_m < apart.back().off_m)
            apart.back() = pass;
    }
    passes = std::move(apart);
}

/// A place within this distance of a leg's end stands at the end: that is where people stop.
void settle_on_ends(const Route& route, Pass& pass) {
    constexpr double near_end_m = 30.0;
    const RouteLeg& leg = route.legs[pass.leg.index()];
    if (pass.along_m == leg.to_m)
        return;
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

std::optional<LegDistance> leg_distance(const Route& route, const RouteDistance& along) {
    if (route.legs.empty())
        return std::nullopt;
    double start_m = 0.0;
    double length_m = route.length_m;
    if (!along.leg.empty()) {
        const auto leg = std::find_if(route.legs.begin(), route.legs.end(), [&](const auto& one) {
            return one.name == along.leg;
        });
        if (leg == route.legs.end())
            return std::nullopt;
        start_m = leg->from_m;
        length_m = leg->length_m();
    }
    if (along.distance_m > length_m + 1.0)
        return std::nullopt;
    const double way_m = std::min(along.distance_m, length_m);
    const double at_m = start_m + (along.before_end ? length_m - way_m : way_m);
    const auto on = std::find_if(
        route.legs.begin(), route.legs.end() - 1, [&](const auto& leg) { return at_m < leg.to_m; });
    return LegDistance{
        .leg = on->name,
        .same_named = static_cast<std::size_t>(std::count_if(
            route.legs.begin(), on, [&](const auto& leg) { return leg.name == on->name; })),
        .from_start_m = std::min(at_m - on->from_m, on->length_m())};
}

void KnownPlaces::snap(Route& route, const std::vector<TripPlace>& places) const {
    for (std::size_t i = 0; i < places.size(); ++i) {
        const std::string& name = places[i].name;
        const auto at = of_trip.find(name);
        const auto along = by_distance.find(name);
        std::vector<Pass> passes = along != by_distance.end() ? at_distance(route, along->second)
                                                              : named_ends(route, name);
        if (at != of_trip.end()) {
            const bool on_ends = !passes.empty();
            for (const Pass& pass : passes_of(route, at->second))
                if (!on_ends || pass.off_m <= far_off_m)
                    passes.push_back(pass);
        }
        drop_same_passes(passes);
        if (passes.empty())
            continue;
        for (Pass& pass : passes) {
            settle_on_ends(route, pass);
            const bool located = at != of_trip.end() || route.located(pass.along_m);
            route.places.push_back({.name = name,
                                    .kind = places[i].kind,
                                    .at = at != of_trip.end() ? at->second : route.at(pass.along_m),
                                    .along_m = pass.along_m,
                                    .off_m = pass.off_m,
                                    .leg = pass.leg,
                                    .spec = i,
                                    .located = located});
        }
        const UnitText off =
            format_both("\"{}\" lies {} off the route; the way there and back is not in this plan.",
                        name,
                        in_both(show_distance, passes.front().off_m));
        if (passes.front().off_m > far_off_m)
            route.cautions.push_back({.level = Level::caution,
                                      .code = "place-off-route",
                                      .day = std::nullopt,
                                      .leg = passes.front().leg,
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
