#include "tests/support/varied_trip.h"

#include "geo/lines/geodesic.h"
#include "geo/profiles/profile.h"
#include "planner/route/leg_chain.h"
#include "planner/route/place_snap.h"
#include "tests/support/random_draws.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace tumpline::test {

namespace {

using planner::PlaceKind;
using planner::RouteLeg;
using planner::Travel;
using Legs = std::vector<RouteLeg>;

/// A part of a leg, from one distance along it to another.
struct Part {
    double from_m;
    double to_m;
    const char* name;
};

RouteLeg part_of(const RouteLeg& whole, const Part& part) {
    RouteLeg leg = whole;
    leg.line = whole.line.cut(part.from_m, part.to_m);
    leg.profile = geo::cut(whole.profile, part.from_m, part.to_m);
    leg.name = leg.spec.name = whole.name + part.name;
    return leg;
}

/// Each portage as two that follow on each other.
Legs portages_in_a_row(const Legs& legs) {
    Legs rows;
    for (const RouteLeg& leg : legs) {
        const double length_m = leg.line.length_m();
        if (leg.travel != Travel::portage || length_m < 200.0) {
            rows.push_back(leg);
            continue;
        }
        rows.push_back(part_of(leg, {0.0, 0.5 * length_m, ""}));
        rows.push_back(part_of(leg, {0.5 * length_m, length_m, ", second half"}));
    }
    return rows;
}

bool is_portage(const RouteLeg& leg) {
    return leg.travel == Travel::portage;
}

RouteLeg back_over(const RouteLeg& leg) {
    RouteLeg back = leg;
    back.name = back.spec.name = leg.name + " back";
    back.line = leg.line.reversed();
    std::reverse(back.profile.heights_m.begin(), back.profile.heights_m.end());
    std::swap(back.profile.ascent_m, back.profile.descent_m);
    back.profile.gaps.clear();
    if (leg.spec.current_mps) // no stronger than one paddles against
        back.spec.current_mps = std::max(-0.4, -*leg.spec.current_mps);
    return back;
}

void there_and_back(Legs& legs) {
    const std::size_t there = legs.size();
    for (std::size_t i = there; i-- > 0;)
        legs.push_back(back_over(legs[i]));
}

/// What a leg's alternative is: on foot beside it, to the same end.
RouteLeg alternative_to(const RouteLeg& leg, Draws& draws) {
    RouteLeg other = leg;
    other.name = other.spec.name = "round " + leg.name;
    other.travel = Travel::walk;
    other.spec = {};
    other.spec.name = other.name;
    other.spec.travel = Travel::walk;
    other.spec.track = other.name;
    other.spec.terrain = planner::Terrain::path;
    other.spec.instead_of = leg.name;
    const geo::Position& from = leg.line.points().front();
    const geo::Position& to = leg.line.points().back();
    const geo::Position between =
        geo::destination(leg.line.at(0.5 * leg.line.length_m()), draws.between(0.0, 360.0), 150.0);
    other.line = geo::Polyline({from, between, to});
    other.profile = {};
    other.profile.length_m = other.line.length_m();
    other.from_m = other.to_m = 0.0;
    return other;
}

void shape_legs(Legs& legs, Draws& draws) {
    const auto first = std::find_if(legs.begin(), legs.end(), is_portage);
    if (first != legs.end() && draws.chance(0.3))
        legs.erase(legs.begin(), first);
    const auto last = std::find_if(legs.rbegin(), legs.rend(), is_portage);
    if (last != legs.rend() && draws.chance(0.3))
        legs.erase(last.base(), legs.end());
    if (draws.chance(0.3))
        legs = portages_in_a_row(legs);
    if (draws.chance(0.25))
        there_and_back(legs);
}

/// Lays the legs anew, with the places that still lie on them.
void lay(VariedTrip& varied, Legs legs, Draws& draws) {
    planner::Trip& trip = varied.drawn.trip;
    const planner::Route old = std::move(varied.drawn.route);
    planner::Route& route = varied.drawn.route;
    route = {};
    route.sources = old.sources;
    trip.route.legs.clear();
    for (const RouteLeg& leg : legs)
        trip.route.legs.push_back(leg.spec);
    if (draws.chance(0.3)) {
        const RouteLeg other = alternative_to(draws.one_of(legs), draws);
        trip.route.legs.push_back(other.spec);
        route.alternatives.push_back(other);
    }
    planner::lay_legs(route, std::move(legs));
    route.cautions.clear();

    std::vector<planner::TripPlace> kept;
    planner::KnownPlaces known;
    for (const planner::TripPlace& place : trip.route.places) {
        const bool on_the_way =
            std::any_of(route.legs.begin(), route.legs.end(), [&](const RouteLeg& leg) {
                return place.at && leg.line.nearest(*place.at).off_m < 1.0;
            });
        if (!on_the_way)
            continue;
        kept.push_back(place);
        known.of_trip[place.name] = *place.at;
    }
    trip.route.places = std::move(kept);
    known.snap(route, trip.route.places);
    trip.days.nights.clear(); // they may lie elsewhere now
    trip.appointments.clear();
    if (route.places.empty())
        trip.days.nights_auto = false;
    varied.others = planner::other_routes(trip, route, known);
}

void make_children(planner::Trip& trip, Draws& draws) {
    for (planner::Member& member : trip.party) {
        if (!draws.chance(0.25))
            continue;
        const int years = draws.whole(4, 13);
        member.age_years = years;
        member.body_kg = 16.0 + 3.0 * (years - 4);
        member.height_m = 1.0 + 0.06 * (years - 4);
        member.carry_limit_kg.reset();
        member.portage_limit_kg.reset();
    }
}

void leave_one_ashore(planner::Trip& trip, Draws& draws) {
    for (planner::Craft& craft : trip.craft)
        if (craft.crew.size() > 1) {
            craft.crew.pop_back();
            return;
        }
    if (trip.craft.size() > 1 && draws.chance(0.5))
        trip.craft.pop_back();
}

} // namespace

VariedTrip varied_trip(std::uint64_t seed) {
    VariedTrip varied{.drawn = random_trip(seed), .others = {}};
    Draws draws(seed ^ 0x9E3779B97F4A7C15U);
    Legs legs = varied.drawn.route.legs;
    shape_legs(legs, draws);
    lay(varied, std::move(legs), draws);
    planner::Trip& trip = varied.drawn.trip;
    if (draws.chance(0.4))
        make_children(trip, draws);
    if (draws.chance(0.15))
        leave_one_ashore(trip, draws);
    if (draws.chance(0.25))
        for (planner::TripPlace& place : trip.route.places)
            if (place.kind == PlaceKind::camp)
                place.water = false;
    return varied;
}

} // namespace tumpline::test
