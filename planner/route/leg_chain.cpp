#include "planner/route/leg_chain.h"

#include "geo/lines/geodesic.h"
#include "planner/quantities/unit_text.h"

#include <fmt/format.h>

#include <algorithm>
#include <cstddef>
#include <optional>
#include <utility>

namespace tumpline::planner {

namespace {

geo::Position start(const LooseLeg& leg) {
    return leg.traced.line.points().front();
}

geo::Position end(const LooseLeg& leg) {
    return leg.traced.line.points().back();
}

void turn(LooseLeg& leg) {
    leg.traced = reversed(leg.traced);
    leg.turned_round = true;
}

bool in_chain(const LooseLeg& leg) {
    return leg.spec.instead_of.empty();
}

bool drawn(const LooseLeg& leg) {
    return !leg.spec.length_m;
}

/// Whether a leg that should start at `at` does so only backwards.
bool only_backwards(const LooseLeg& leg, const geo::Position& at) {
    const double forward_m = geo::distance_m(at, start(leg));
    return !leg.direction_given && forward_m > largest_gap_m &&
           geo::distance_m(at, end(leg)) < forward_m;
}

void turn_alternatives(std::vector<LooseLeg>& legs) {
    const LooseLeg* before = nullptr;
    for (LooseLeg& leg : legs) {
        if (in_chain(leg) || !drawn(leg))
            continue;
        const auto replaced = std::find_if(legs.begin(), legs.end(), [&](const LooseLeg& other) {
            return in_chain(other) && other.name == leg.spec.instead_of;
        });
        if (replaced == legs.end() || !drawn(*replaced))
            continue;
        // The second of two alternatives to one leg may go on where the first ends.
        const bool goes_on = before && before->spec.instead_of == leg.spec.instead_of &&
                             std::min(geo::distance_m(end(*before), start(leg)),
                                      geo::distance_m(end(*before), end(leg))) <= largest_gap_m;
        if (only_backwards(leg, goes_on ? end(*before) : start(*replaced)))
            turn(leg);
        before = &leg;
    }
}

} // namespace

void turn_round(std::vector<LooseLeg>& legs) {
    LooseLeg* before = nullptr;
    for (std::size_t i = 0; i < legs.size(); ++i) {
        LooseLeg& leg = legs[i];
        if (!in_chain(leg))
            continue;
        if (!drawn(leg)) { // what follows need not start where what is ahead of it ends
            before = nullptr;
            continue;
        }
        auto after =
            std::find_if(legs.begin() + static_cast<std::ptrdiff_t>(i) + 1, legs.end(), in_chain);
        if (after != legs.end() && !drawn(*after))
            after = legs.end();
        if (before) {
            if (only_backwards(leg, end(*before)))
                turn(leg);
        } else if (after != legs.end() && !leg.direction_given) {
            const double ahead_m = std::min(geo::distance_m(end(leg), start(*after)),
                                            geo::distance_m(end(leg), end(*after)));
            const double behind_m = std::min(geo::distance_m(start(leg), start(*after)),
                                             geo::distance_m(start(leg), end(*after)));
            if (ahead_m > largest_gap_m && behind_m < ahead_m)
                turn(leg);
        }
        before = &leg;
    }
    turn_alternatives(legs);
}

void lay_legs(Route& route, std::vector<RouteLeg> legs) {
    for (RouteLeg& leg : legs) {
        leg.from_m = route.length_m;
        leg.to_m = leg.from_m + leg.length_m();
        route.length_m = leg.to_m;
        const LegNumber number = LegNumber::of_index(route.legs.size());
        if (leg.turned_round)
            route.cautions.push_back(
                {.level = Level::caution,
                 .code = "turned-round",
                 .day = std::nullopt,
                 .leg = number,
                 .text =
                     fmt::format("\"{}\" fits the route only backwards and is turned round: it is "
                                 "planned from its end to its start. If that is not how you "
                                 "go, the tracks stand in the wrong order.",
                                 leg.name),
                 .source = "docs/route.md"});
        if (!route.legs.empty() && leg.drawn() && route.legs.back().drawn()) {
            const RouteLeg& before = route.legs.back();
            const double gap_m =
                geo::distance_m(before.line.points().back(), leg.line.points().front());
            const UnitText gap = format_both(
                "Between the end of \"{}\" and the start of \"{}\" lie {} that belong to no "
                "leg: their time and climb are not in this plan.",
                before.name,
                leg.name,
                in_both(show_distance, gap_m));
            if (gap_m > largest_gap_m)
                route.cautions.push_back({.level = Level::caution,
                                          .code = "route-gap",
                                          .day = std::nullopt,
                                          .leg = number,
                                          .text = gap.metric,
                                          .source = "docs/route.md",
                                          .imperial = gap.imperial});
        }
        route.legs.push_back(std::move(leg));
    }
}

} // namespace tumpline::planner
