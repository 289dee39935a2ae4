#include "tests/support/level_trip.h"

#include "geo/lines/geodesic.h"

#include <fmt/format.h>

#include <chrono>

namespace tumpline::test {

namespace {

using namespace planner;
using namespace std::chrono_literals;

constexpr geo::Position start{.lat_deg = 47.0, .lon_deg = 11.0};

geo::Position point_at(double along_m) {
    return along_m > 0.0 ? geo::destination(start, 90.0, along_m) : start;
}

/// Points every kilometre along the geodesic, so that lengths are those asked for.
RouteLeg route_leg(const TripLeg& spec, const LevelLeg& wanted, double from_m) {
    std::vector<geo::Position> points;
    for (double at_m = 0.0; at_m < wanted.length_m - 1.0; at_m += 1000.0)
        points.push_back(point_at(from_m + at_m));
    points.push_back(point_at(from_m + wanted.length_m));
    RouteLeg leg{.name = spec.name,
                 .travel = wanted.travel,
                 .spec = spec,
                 .line = geo::Polyline(std::move(points)),
                 .from_m = from_m,
                 .to_m = 0.0,
                 .profile = {},
                 .turned_round = false};
    leg.to_m = from_m + leg.line.length_m();
    return leg;
}

Trip one_person() {
    Trip trip;
    trip.file = "level.json";
    trip.name = "a level trip";
    trip.start = std::chrono::year{2027} / std::chrono::June / 7;
    trip.time_zone = "UTC";
    trip.route.tracks = {"level.gpx"};
    Member ada;
    ada.name = "Ada";
    ada.body_kg = 70.0;
    ada.carry_limit_kg = 30.0;
    ada.level_speed_mps = 1.0;
    trip.party = {ada};
    trip.models.walking = "constant";
    trip.models.load_effect = "none";
    trip.models.paddling = "constant";
    trip.changeovers = {
        .boots_to_boat = 0s, .boat_to_boots = 0s, .landing = 0s, .scout = 0s, .break_camp = 0s};
    trip.days.set_off = 6h;
    trip.days.rest_per_hour = 0s;
    trip.days.hours = 24.0;
    trip.food.ration_kg = 1.0;
    trip.food.packaging = 0.0;
    trip.food.reserve_days = 0.0;
    trip.water.capacity_l = 20.0;
    trip.weather.wind_mps = 0.0;
    trip.weather.rain = false;
    return trip;
}

} // namespace

RandomTrip level_trip(const std::vector<LevelLeg>& legs, const std::vector<LevelPlace>& places) {
    RandomTrip made;
    Trip& trip = made.trip;
    trip = one_person();
    for (const LevelLeg& wanted : legs) {
        TripLeg spec;
        spec.name = fmt::format("leg {}", trip.route.legs.size() + 1);
        spec.travel = wanted.travel;
        if (wanted.travel == Travel::paddle) {
            spec.water = wanted.current_mps != 0.0 ? Water::river : Water::lake;
            spec.current_mps = wanted.current_mps;
            spec.scouts = 0;
            if (trip.craft.empty()) {
                Craft boat;
                boat.name = "boat";
                boat.kind = CraftKind::packraft;
                boat.mass_kg = 3.0;
                boat.crew = {"Ada"};
                boat.calm_speed_mps = 1.2;
                trip.craft = {boat};
            }
        }
        made.route.legs.push_back(route_leg(spec, wanted, made.route.length_m));
        made.route.length_m = made.route.legs.back().to_m;
        trip.route.legs.push_back(std::move(spec));
    }
    for (const LevelPlace& wanted : places) {
        TripPlace place;
        place.name = wanted.name;
        place.kind = wanted.kind;
        place.at = point_at(wanted.along_m);
        std::size_t leg = 0;
        while (leg + 1 < made.route.legs.size() && made.route.legs[leg].to_m <= wanted.along_m)
            ++leg;
        made.route.places.push_back({.name = place.name,
                                     .kind = place.kind,
                                     .at = *place.at,
                                     .along_m = wanted.along_m,
                                     .off_m = 0.0,
                                     .leg = LegNumber::of_index(leg),
                                     .spec = trip.route.places.size()});
        trip.route.places.push_back(std::move(place));
    }
    return made;
}

} // namespace tumpline::test
