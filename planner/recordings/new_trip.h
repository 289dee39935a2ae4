#pragma once

#include "geo/ground/elevation.h"
#include "geo/tracks/track.h"
#include "planner/trip/trip.h"

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

/// A first trip from nothing but tracks, for somebody to go on from: what is not in the files is
/// left open, and each guess says what it rests on.
namespace tumpline::planner {

struct FirstLeg {
    std::string name;
    Travel travel = Travel::walk;
    std::string track;    ///< its own name; empty: tracks are taken in order
    std::string from, to; ///< names of places where the track is cut; empty: its ends
    std::optional<Water> water;
    double length_m = 0.0;
    std::string why; ///< what the way of travel was read from, a clause
};

struct FirstPlace {
    std::string name;
    std::optional<PlaceKind> kind;   ///< empty: the file does not tell; the user has to
    std::optional<geo::Position> at; ///< empty: the waypoint of that name
    double along_m = 0.0;            ///< where it stands on the route
    double off_m = 0.0;              ///< how far from it
};

struct FirstTrip {
    std::string time_zone; ///< of the longitude alone: whole hours from UTC
    std::vector<FirstLeg> legs;
    std::vector<FirstPlace> places;   ///< along the route
    bool heights = false;             ///< whether any height is known
    std::vector<std::size_t> files;   ///< in which order the trip file is to name the track files
    std::vector<std::string> remarks; ///< on order and direction, and what nothing told: sentences
};

/// Reads legs and places out of tracks. They are laid end to end as `track_order` says; the way of
/// travel comes from a track's type, else from its name, else from waypoints at which boats go in
/// and out, else from the ground and the clock (planner/recordings/travel_mode.h). A walk of up to
/// 2 km between two waters, not told by the file, becomes a portage. `elevation` may be null.
/// Source: our own rules; docs/new.md says how they fail.
/// Throws: geo::InputError if no file holds a line.
[[nodiscard]] FirstTrip first_trip(const std::vector<geo::TrackFile>& files,
                                   geo::Elevation* elevation);

} // namespace tumpline::planner
