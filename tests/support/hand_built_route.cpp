#include "tests/support/hand_built_route.h"

#include "geo/lines/geodesic.h"

#include <algorithm>
#include <cmath>
#include <string>
#include <utility>
#include <vector>

namespace tumpline::test {

namespace {

using namespace planner;

constexpr double step_m = 50.0;

/// A line of the length asked for that winds about a heading.
std::vector<geo::Position> winding(const geo::Position& from, double length_m, double along_m) {
    std::vector<geo::Position> line{from};
    const int steps = std::max(1, static_cast<int>(std::ceil(length_m / step_m)));
    for (int i = 0; i < steps; ++i) {
        const double at_m = along_m + length_m * i / steps;
        const double heading_deg =
            70.0 + 45.0 * std::sin(at_m / 2900.0) + 35.0 * std::sin(at_m / 610.0);
        line.push_back(geo::destination(line.back(), heading_deg, length_m / steps));
    }
    return line;
}

geo::Profile profile(const PlanLeg& leg, double from_m, double length_m) {
    geo::Profile made;
    made.length_m = length_m;
    const int steps = std::max(1, static_cast<int>(std::ceil(length_m / 25.0)));
    made.step_m = length_m / steps;
    made.source = geo::HeightSource::raster;
    for (int i = 0; i <= steps; ++i) {
        const double at_m = from_m + made.step_m * i;
        double height_m = 900.0 - at_m / 90.0;
        if (leg.travel == Travel::walk)
            height_m += 380.0 * std::pow(std::sin(at_m / 14200.0 * 3.14159), 2.0) +
                        18.0 * std::sin(at_m / 400.0);
        if (leg.travel == Travel::paddle && leg.gradient == 0.0)
            height_m = 900.0 - from_m / 90.0;
        made.heights_m.push_back(height_m);
    }
    return made;
}

} // namespace

Route hand_built_route(const Plan& plan, const geo::Position& start) {
    Route route;
    route.sources = {"saddle.gpx: 4 tracks, 920 points (invented)",
                     "saddle-dem.tif: 900 by 700 cells of 25 m, above the geoid (invented)"};
    geo::Position at = start;
    for (std::size_t i = 0; i < plan.legs.size(); ++i) {
        const PlanLeg& leg = plan.legs[i];
        const bool continues = i > 0 && plan.legs[i - 1].leg == leg.leg;
        if (continues)
            continue;
        double to_m = leg.to_m;
        for (const PlanLeg& part : plan.legs)
            if (part.leg == leg.leg)
                to_m = part.to_m;
        const double length_m = to_m - leg.from_m;
        geo::Polyline line(winding(at, length_m, leg.from_m));
        at = line.points().back();
        route.legs.push_back({.name = leg.name,
                              .travel = leg.travel,
                              .spec = leg.leg.index() < plan.trip.route.legs.size()
                                          ? plan.trip.route.legs[leg.leg.index()]
                                          : TripLeg{},
                              .line = std::move(line),
                              .from_m = leg.from_m,
                              .to_m = to_m,
                              .profile = profile(leg, leg.from_m, length_m),
                              .turned_round = false});
        route.length_m = to_m;
    }
    const auto place = [&](std::string name, PlaceKind kind, double along_m) {
        route.places.push_back({.name = std::move(name),
                                .kind = kind,
                                .at = route.at(along_m),
                                .along_m = along_m,
                                .off_m = 0.0,
                                .leg = 1,
                                .spec = 0});
    };
    place("Road end", PlaceKind::start, 0.0);
    place("Shelf spring", PlaceKind::water, 6300.0);
    if (route.length_m > 40000.0) {
        place("Birch spit", PlaceKind::camp, 17300.0);
        place("Fall pool", PlaceKind::put_in, 18400.0);
        place("Staircase rapid", PlaceKind::hazard, 25100.0);
        place("Gravel bar", PlaceKind::camp, 32400.0);
    }
    place("Road bridge", PlaceKind::finish, route.length_m);
    return route;
}

Route without_heights(Route route) {
    for (RouteLeg& leg : route.legs) {
        leg.profile.heights_m.clear();
        leg.profile.source = geo::HeightSource::none;
    }
    return route;
}

} // namespace tumpline::test
