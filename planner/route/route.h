#pragma once

#include "geo/layers/map_layers.h"
#include "geo/lines/polyline.h"
#include "geo/profiles/profile.h"
#include "geo/tracks/track.h"
#include "planner/caution.h"
#include "planner/quantities/leg_number.h"
#include "planner/trip/trip.h"

#include <cstddef>
#include <memory>
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
    std::optional<double> water_rises_m = {}; ///< a river that is taken to fall, by heights before
                                              ///< they are flattened and beyond their noise

    /// False for a leg that is known by its length only: its `line` is one point near it, for the
    /// sun, and stands on no map.
    [[nodiscard]] bool drawn() const { return !spec.length_m; }

    /// Of the ground, which an undrawn leg's line does not have.
    [[nodiscard]] double length_m() const { return spec.length_m.value_or(line.length_m()); }

    /// The class that people aboard meet: none where they lead the boat from outside it.
    [[nodiscard]] std::optional<RiverClass> class_run() const {
        return aboard(travel) ? spec.river_class : std::nullopt;
    }

    /// Whether what it climbs is known, from a profile or from the trip file.
    [[nodiscard]] bool climb_known() const { return !profile.heights_m.empty() || spec.ascent_m; }
};

/// A place on the route. A place that the line passes several times stands at each pass.
struct RoutePlace {
    std::string name;
    PlaceKind kind = PlaceKind::camp;
    geo::Position at;
    double along_m = 0.0;
    double off_m = 0.0;
    LegNumber leg = {};   ///< of the route
    std::size_t spec = 0; ///< index into Trip::route.places
    bool located = true;  ///< false: on a leg without a line, and `at` is only near it
};

/// A part of a leg with ground on it or above it that is steep enough for avalanches.
struct SteepPart {
    LegNumber leg = {};  ///< of the route
    double from_m = 0.0; ///< along the route
    double to_m = 0.0;
    bool on_line = false;      ///< the line itself crosses it; else it is above the line
    double steepest_deg = 0.0; ///< of that ground
    double nearest_m = 0.0;    ///< from the line; 0 on it
};

/// Where the raster has such ground.
struct SteepGround {
    double cell_m = 0.0;          ///< how finely the ground was looked at
    std::vector<SteepPart> parts; ///< in route order
    std::vector<bool> known;      ///< per leg: heights were found all along it
};

/// Legs in order and places along them. Does not depend on the party.
struct Route {
    std::vector<RouteLeg> legs;
    std::vector<RoutePlace> places; ///< by along_m
    std::vector<RoutePlace> met_at; ///< waypoints that only appointments name; `spec` means nothing
    double length_m = 0.0;
    geo::Repairs repairs;
    std::vector<std::string> sources; ///< files read, one line each
    std::vector<Caution> cautions;
    std::shared_ptr<const geo::MapLayers> land; ///< around the route; null where no layer is named
    std::optional<SteepGround> steep = {};      ///< empty: not looked for (no snow, no raster)
    std::vector<RouteLeg> alternatives;         ///< legs with `instead_of`; from_m = to_m = 0

    /// Where a point of the route is; on a leg without a line somewhere near it.
    [[nodiscard]] geo::Position at(double along_m) const;
    /// Whether `at` is the point itself: on a line, or where a line ends.
    [[nodiscard]] bool located(double along_m) const;
    /// Where the line passes a place or a waypoint of `met_at`, in order.
    [[nodiscard]] std::vector<RoutePlace> passes(const std::string& name) const;
    /// Height at a point of the route, if known.
    [[nodiscard]] std::optional<double> height_at(double along_m) const;
};

} // namespace tumpline::planner
