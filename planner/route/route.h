#pragma once

#include "geo/lines/polyline.h"
#include "geo/profiles/profile.h"
#include "geo/tracks/track.h"
#include "planner/caution.h"
#include "planner/trip/trip.h"

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace tumpline::planner {

/// A leg on the ground.
struct RouteLeg {
    std::string name;
    Travel travel = Travel::walk;
    TripLeg spec;        ///< as the trip file describes it; default made if it has no legs
    geo::Polyline line;  ///< in the direction of travel
    double from_m = 0.0; ///< along the route
    double to_m = 0.0;
    geo::Profile profile; ///< of the ground or of the water's surface
    bool turned_round = false;
};

/// A place on the route. A place that the line passes several times stands at each pass.
struct RoutePlace {
    std::string name;
    PlaceKind kind = PlaceKind::camp;
    geo::Position at;
    double along_m = 0.0;
    double off_m = 0.0;
    std::size_t leg = 0;  ///< index into legs
    std::size_t spec = 0; ///< index into Trip::route.places
};

/// Legs in order and places along them. Does not depend on the party.
struct Route {
    std::vector<RouteLeg> legs;
    std::vector<RoutePlace> places; ///< by along_m
    std::vector<RoutePlace>
        met_at; ///< waypoints that only appointments name; `asked` means nothing
    double length_m = 0.0;
    geo::Repairs repairs;
    std::vector<std::string> sources; ///< files read, one line each
    std::vector<Caution> cautions;
    std::vector<RouteLeg> alternatives;    ///< legs with `instead_of`; from_m = to_m = 0
    std::vector<struct OtherRoute> others; ///< with alternatives laid in place of legs

    [[nodiscard]] geo::Position at(double along_m) const;
    /// Where the line passes a place or a waypoint of `met_at`, in order.
    [[nodiscard]] std::vector<RoutePlace> passes(const std::string& name) const;
    /// Height at a point of the route, if known.
    [[nodiscard]] std::optional<double> height_at(double along_m) const;
};

/// The trip and its route with alternatives in place of the legs for which they stand.
struct OtherRoute {
    std::vector<std::string> instead_of; ///< names of legs, in order
    std::vector<std::string> by;         ///< names of the alternatives in their place
    bool without_boats = false; ///< no water is left to paddle: boats and their gear stay at home
    double left_home_kg = 0.0;  ///< their mass
    std::string refused;        ///< why it cannot be planned, in words; empty if it can
    Trip trip;
    Route route;
};

/// Reads the trip's tracks and rasters and lays its legs end to end.
/// Throws: geo::InputError with every problem found: a track or place that is not there, a place
/// without a position, a file that cannot be read.
[[nodiscard]] Route build_route(const Trip& trip);

} // namespace tumpline::planner
