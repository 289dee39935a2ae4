#include "tests/support/plain_trip.h"

#include "geo/lines/geodesic.h"
#include "planner/make_plan.h"
#include "planner/plan.h"

#include <fmt/format.h>

#include <cmath>
#include <utility>

namespace tumpline::test {

namespace {

using planner::Travel;
using planner::Water;

geo::Profile even_profile(double start_m, const PlainLeg& leg) {
    constexpr double step_m = 25.0;
    const auto steps = static_cast<std::size_t>(std::ceil(leg.length_m / step_m));
    geo::Profile profile;
    profile.length_m = leg.length_m;
    profile.step_m = leg.length_m / static_cast<double>(steps);
    for (std::size_t i = 0; i <= steps; ++i)
        profile.heights_m.push_back(start_m + leg.slope * profile.step_m * static_cast<double>(i));
    profile.source = geo::HeightSource::raster;
    profile.ascent_m = std::max(0.0, leg.slope) * leg.length_m;
    profile.descent_m = std::max(0.0, -leg.slope) * leg.length_m;
    return profile;
}

PlainLeg plain(Travel travel, double length_m, double slope) {
    PlainLeg leg;
    leg.spec.travel = travel;
    leg.length_m = length_m;
    leg.slope = slope;
    return leg;
}

} // namespace

PlainTrip plain_trip(const std::vector<PlainLeg>& legs) {
    PlainTrip plain;
    planner::Trip& trip = plain.trip;
    trip.file = "plain.json";
    trip.name = "plain";
    trip.start = std::chrono::year(2027) / 6 / 18;
    trip.time_zone = "UTC";
    planner::Member ada;
    ada.name = "Ada";
    ada.body_kg = 70.0;
    ada.height_m = 1.70;
    ada.age_years = 40.0;
    ada.sex = planner::Sex::female;
    ada.carry_limit_kg = 40.0;
    trip.party = {ada};
    trip.days.hours = 10.0;
    trip.weather.high_c = 15.0;
    trip.weather.rain = false;
    trip.weather.wind_mps = 0.0;
    geo::Position at{.lat_deg = 45.0, .lon_deg = -40.0};
    double height_m = 300.0;
    bool afloat = false;
    for (const PlainLeg& one : legs) {
        const geo::Position end = geo::destination(at, 0.0, one.length_m);
        planner::RouteLeg leg{.name = fmt::format("leg {}", plain.route.legs.size() + 1),
                              .travel = one.spec.travel.value(),
                              .spec = one.spec,
                              .line = geo::Polyline({at, end}),
                              .from_m = plain.route.length_m,
                              .to_m = plain.route.length_m + one.length_m,
                              .profile = even_profile(height_m, one),
                              .turned_round = false};
        leg.spec.name = leg.name;
        afloat = afloat || leg.travel == Travel::paddle;
        height_m = leg.profile.heights_m.back();
        at = end;
        plain.route.length_m = leg.to_m;
        trip.route.legs.push_back(leg.spec);
        plain.route.legs.push_back(std::move(leg));
    }
    if (afloat) {
        planner::Craft boat;
        boat.name = "boat";
        boat.kind = planner::CraftKind::packraft;
        boat.mass_kg = 3.0;
        boat.crew = {"Ada"};
        boat.calm_speed_mps = 1.0;
        trip.craft = {boat};
    }
    return plain;
}

PlainLeg walk(double length_m, double slope) {
    return plain(Travel::walk, length_m, slope);
}

PlainLeg lake(double length_m) {
    PlainLeg leg = plain(Travel::paddle, length_m, 0.0);
    leg.spec.water = Water::lake;
    return leg;
}

PlainLeg river(double length_m, double fall) {
    PlainLeg leg = plain(Travel::paddle, length_m, -fall);
    leg.spec.water = Water::river;
    leg.spec.river_class = 1;
    leg.spec.scouts = 0;
    return leg;
}

planner::KitItem thing(const std::string& name, double mass_kg) {
    planner::KitItem item;
    item.name = name;
    item.mass_kg = mass_kg;
    item.owner = "Ada";
    return item;
}

planner::KitItem party_thing(const std::string& name, double mass_kg) {
    planner::KitItem item = thing(name, mass_kg);
    item.owner.clear();
    return item;
}

void add_member(PlainTrip& plain, const std::string& name, double limit_kg) {
    planner::Member member = plain.trip.party.front();
    member.name = name;
    member.carry_limit_kg = limit_kg;
    plain.trip.party.push_back(member);
}

void add_place(PlainTrip& plain, planner::PlaceKind kind, const std::string& name, double along_m) {
    planner::TripPlace spec;
    spec.name = name;
    spec.kind = kind;
    spec.at = plain.route.at(along_m);
    std::size_t leg = 0;
    while (leg + 1 < plain.route.legs.size() && plain.route.legs[leg].to_m < along_m)
        ++leg;
    plain.route.places.push_back({.name = name,
                                  .kind = kind,
                                  .at = *spec.at,
                                  .along_m = along_m,
                                  .off_m = 0.0,
                                  .leg = LegNumber::of_index(leg),
                                  .spec = plain.trip.route.places.size()});
    plain.trip.route.places.push_back(spec);
}

planner::RouteLeg on_foot_beside(const planner::RouteLeg& leg, const std::string& name) {
    planner::RouteLeg beside = leg;
    beside.name = beside.spec.name = name;
    beside.travel = Travel::walk;
    beside.spec.travel = Travel::walk;
    beside.spec.water.reset();
    beside.spec.instead_of = leg.name;
    beside.from_m = beside.to_m = 0.0;
    return beside;
}

void make_portage(PlainTrip& plain, std::size_t leg) {
    plain.route.legs[leg].travel = Travel::portage;
    plain.route.legs[leg].spec.travel = Travel::portage;
    plain.trip.route.legs[leg].travel = Travel::portage;
}

std::vector<std::string> cautions_of(const PlainTrip& plain, const std::string& code) {
    std::vector<std::string> texts;
    for (const planner::Caution& caution : planner::make_plan(plain.trip, plain.route).cautions)
        if (caution.code == code)
            texts.push_back(caution.text);
    return texts;
}

} // namespace tumpline::test
