#include "tests/support/random_route.h"

#include "geo/lines/geodesic.h"
#include "geo/profiles/profile.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <utility>

namespace tumpline::test {

namespace {

using planner::PlaceKind;
using planner::Route;
using planner::RouteLeg;
using planner::RoutePlace;
using planner::Terrain;
using planner::Travel;
using planner::Trip;
using planner::TripLeg;
using planner::TripPlace;
using planner::Water;

std::vector<Travel> random_ways(Draws& draws) {
    std::vector<Travel> ways;
    const int count = draws.whole(1, 8);
    while (static_cast<int>(ways.size()) < count) {
        const bool afloat = !ways.empty() && ways.back() == Travel::paddle;
        if (!ways.empty() && ways.back() == Travel::portage)
            ways.push_back(Travel::paddle);
        else if (afloat && draws.chance(0.5))
            ways.push_back(Travel::portage);
        else
            ways.push_back(draws.chance(0.5) ? Travel::walk : Travel::paddle);
    }
    if (ways.back() == Travel::portage)
        ways.push_back(Travel::paddle);
    return ways;
}

TripLeg random_leg(Travel travel, std::size_t number, Draws& draws) {
    TripLeg leg;
    leg.name = fmt::format("leg {}", number);
    leg.travel = travel;
    leg.track = leg.name;
    if (travel == Travel::paddle) {
        leg.water = draws.one_of(std::vector{Water::lake, Water::lake, Water::river, Water::sea});
        if (leg.water == Water::river) {
            // upstream now and then, but not faster than one paddles
            leg.current_mps =
                draws.chance(0.15) ? draws.in_steps(-0.4, -0.1) : draws.in_steps(0.0, 2.0);
            leg.river_class = draws.whole(1, 4);
            if (draws.chance(0.4))
                leg.scouts = draws.whole(0, 4);
        } else {
            leg.open_crossing = draws.chance(0.3);
        }
        if (draws.chance(0.3))
            leg.shelter = draws.in_steps(0.0, 1.0);
        if (draws.chance(0.2))
            leg.drinkable = draws.chance(0.5);
        return leg;
    }
    leg.terrain = draws.one_of(std::vector{Terrain::path,
                                           Terrain::path,
                                           Terrain::rough_path,
                                           Terrain::forest,
                                           Terrain::off_path,
                                           Terrain::brush,
                                           Terrain::bog,
                                           Terrain::sand,
                                           Terrain::snow});
    if (leg.terrain == Terrain::snow && draws.chance(0.5))
        leg.footprint_m = draws.in_steps(0.0, 0.3);
    if (draws.chance(0.05))
        leg.night = true;
    if (travel == Travel::portage) {
        if (draws.chance(0.4))
            leg.carries = draws.one_of(std::vector{1.0, 1.5, 2.0, 3.0});
        if (draws.chance(0.5))
            leg.boat_on_carry = draws.one_of(std::vector{planner::BoatOnCarry::rolled,
                                                         planner::BoatOnCarry::whole,
                                                         planner::BoatOnCarry::automatic});
    }
    return leg;
}

/// Upstream boats are paddled, lined, waded with and poled in turn.
Travel way_upstream(TripLeg& leg, std::size_t number) {
    constexpr std::array ways{Travel::paddle, Travel::line, Travel::wade, Travel::pole};
    if (leg.current_mps.value_or(0.0) >= 0.0)
        return *leg.travel;
    leg.travel = ways.at(number % ways.size());
    if (leg.travel == Travel::wade)
        leg.wading_m = 0.1 * static_cast<double>(number);
    if (leg.travel != Travel::paddle)
        leg.shelter.reset();
    return *leg.travel;
}

double random_length_m(Travel travel, Draws& draws) {
    const double share = draws.part() * draws.part(); // short ones are common
    switch (travel) {
    case Travel::walk:
        return 400.0 + share * 22'000.0;
    case Travel::portage:
        return 40.0 + share * 3'500.0;
    case Travel::paddle:
    case Travel::line:
    case Travel::wade:
    case Travel::pole:
        return 300.0 + share * 26'000.0;
    case Travel::ride:
        return 2'000.0 + share * 60'000.0;
    }
    return 0.0;
}

/// A line that wanders: points every 100 m or so around a course that turns slowly.
std::vector<geo::Position>
wandering_line(const geo::Position& start, double length_m, Draws& draws) {
    const int steps = std::max(1, static_cast<int>(length_m / draws.between(60.0, 180.0)));
    double course_deg = draws.between(0.0, 360.0);
    std::vector<geo::Position> points{start};
    for (int i = 0; i < steps; ++i) {
        course_deg += draws.between(-25.0, 25.0);
        points.push_back(geo::destination(points.back(), course_deg, length_m / steps));
    }
    return points;
}

/// Hills of three wavelengths on a slope, from `from_m` on.
geo::PointHeights hilly(const geo::Polyline& line, double from_m, Draws& draws) {
    const double slope = draws.between(-0.06, 0.06);

    struct Hill {
        double height_m;
        double wave_m;
        double phase;
    };

    std::vector<Hill> hills;
    for (const double wave_m : {300.0, 1'500.0, 6'000.0})
        hills.push_back({.height_m = draws.between(0.0, 0.02) * wave_m,
                         .wave_m = wave_m * draws.between(0.7, 1.4),
                         .phase = draws.between(0.0, 2.0 * std::numbers::pi)});
    geo::PointHeights heights;
    for (const double along_m : line.along_m()) {
        double height_m = from_m + slope * along_m;
        for (const Hill& hill : hills)
            height_m += hill.height_m *
                        (std::sin(2.0 * std::numbers::pi * along_m / hill.wave_m + hill.phase) -
                         std::sin(hill.phase));
        heights.emplace_back(height_m);
    }
    return heights;
}

geo::PointHeights falling(const geo::Polyline& line, double from_m, double gradient) {
    geo::PointHeights heights;
    for (const double along_m : line.along_m())
        heights.emplace_back(from_m - gradient * along_m);
    return heights;
}

/// The ground or the water of a leg that starts at the height `from_m`.
geo::Profile random_profile(const RouteLeg& leg, double from_m, Draws& draws) {
    const geo::ProfileOptions options;
    if (draws.chance(0.1)) // no heights known
        return geo::make_profile(leg.line, {}, nullptr, geo::Surface::land, options);
    if (!planner::afloat(leg.travel))
        return geo::make_profile(
            leg.line, hilly(leg.line, from_m, draws), nullptr, geo::Surface::land, options);
    if (leg.spec.water != Water::river)
        return geo::make_profile(
            leg.line, falling(leg.line, from_m, 0.0), nullptr, geo::Surface::level_water, options);
    const bool upstream = leg.spec.current_mps.value_or(0.0) < 0.0;
    const double gradient = draws.between(0.0, 0.006) * (upstream ? -1.0 : 1.0);
    return geo::make_profile(leg.line,
                             falling(leg.line, from_m, gradient),
                             nullptr,
                             upstream ? geo::Surface::rising_river : geo::Surface::falling_river,
                             options);
}

std::size_t leg_at(const Route& route, double along_m) {
    std::size_t leg = 0;
    while (leg + 1 < route.legs.size() && route.legs[leg].to_m <= along_m)
        ++leg;
    return leg;
}

void add_place(Trip& trip, Route& route, TripPlace place, double along_m) {
    const std::size_t number = leg_at(route, along_m);
    const RouteLeg& leg = route.legs[number];
    RoutePlace on_route{.name = place.name,
                        .kind = place.kind,
                        .at = leg.line.at(along_m - leg.from_m),
                        .along_m = along_m,
                        .off_m = 0.0,
                        .leg = planner::LegNumber::of_index(number),
                        .spec = trip.route.places.size()};
    place.at = on_route.at;
    trip.route.places.push_back(std::move(place));
    route.places.push_back(std::move(on_route));
}

/// Puts places of a kind along the route, `apart_m` on the average.
struct Scatter {
    PlaceKind kind;
    double apart_m;
};

void scatter_places(Trip& trip, Route& route, const Scatter& scatter, Draws& draws) {
    int number = 0;
    double along_m = scatter.apart_m * draws.part();
    while (along_m < route.length_m && number < 40) {
        TripPlace place;
        place.kind = scatter.kind;
        place.name = fmt::format(
            "{} {}", scatter.kind == PlaceKind::camp ? "camp" : "place", trip.route.places.size());
        if (scatter.kind == PlaceKind::camp) {
            if (draws.chance(0.6))
                place.water = draws.chance(0.6);
            if (draws.chance(0.2))
                place.holds = draws.whole(1, 10);
        }
        if (scatter.kind == PlaceKind::cache && draws.chance(0.5))
            place.food_mass_kg = draws.in_steps(1.0, 9.0);
        if (scatter.kind == PlaceKind::resupply && draws.chance(0.3))
            place.closed_weekdays = {draws.whole(1, 7)};
        add_place(trip, route, std::move(place), along_m);
        along_m += scatter.apart_m * draws.between(0.5, 1.5);
        ++number;
    }
}

void add_ends(Trip& trip, Route& route, Draws& draws) {
    if (draws.chance(0.7)) {
        TripPlace start;
        start.name = "road end";
        start.kind = PlaceKind::start;
        add_place(trip, route, start, 0.0);
    }
    if (draws.chance(0.7)) {
        TripPlace finish;
        finish.name = "far road";
        finish.kind = PlaceKind::finish;
        add_place(trip, route, finish, route.length_m);
    }
}

} // namespace

Route random_route(Trip& trip, const Region& region, Draws& draws) {
    Route route;
    geo::Position at = region.start;
    double height_m = draws.between(0.0, 1'500.0);
    for (const Travel travel : random_ways(draws)) {
        TripLeg spec = random_leg(travel, route.legs.size() + 1, draws);
        const double length_m = random_length_m(travel, draws);
        const Travel way = way_upstream(spec, route.legs.size());
        RouteLeg leg{.name = spec.name,
                     .travel = way,
                     .spec = spec,
                     .line = geo::Polyline(wandering_line(at, length_m, draws)),
                     .from_m = route.length_m,
                     .to_m = 0.0,
                     .profile = {},
                     .turned_round = false};
        leg.to_m = leg.from_m + leg.line.length_m();
        leg.profile = random_profile(leg, height_m, draws);
        if (!leg.profile.heights_m.empty())
            height_m = leg.profile.heights_m.back();
        at = leg.line.points().back();
        route.length_m = leg.to_m;
        route.legs.push_back(std::move(leg));
        trip.route.legs.push_back(std::move(spec));
    }
    add_ends(trip, route, draws);
    if (draws.chance(0.9))
        scatter_places(
            trip, route, {.kind = PlaceKind::camp, .apart_m = draws.between(2e3, 9e3)}, draws);
    scatter_places(
        trip, route, {.kind = PlaceKind::water, .apart_m = draws.between(3e3, 20e3)}, draws);
    scatter_places(
        trip, route, {.kind = PlaceKind::exit, .apart_m = draws.between(10e3, 60e3)}, draws);
    if (draws.chance(0.4))
        scatter_places(trip,
                       route,
                       {.kind = PlaceKind::resupply, .apart_m = draws.between(20e3, 60e3)},
                       draws);
    if (draws.chance(0.3))
        scatter_places(
            trip, route, {.kind = PlaceKind::cache, .apart_m = draws.between(30e3, 60e3)}, draws);
    std::stable_sort(
        route.places.begin(),
        route.places.end(),
        [](const RoutePlace& one, const RoutePlace& other) { return one.along_m < other.along_m; });
    route.sources = {"random.gpx"};
    return route;
}

} // namespace tumpline::test
