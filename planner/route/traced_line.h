#pragma once

#include "geo/lines/polyline.h"
#include "geo/profiles/profile.h"
#include "geo/tracks/track.h"
#include "planner/trip/trip.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace tumpline::planner {

/// A line with the heights recorded along it, point by point.
struct TracedLine {
    geo::Polyline line;
    geo::PointHeights heights; ///< empty if none was recorded
};

/// All lines and points of a trip's track files, in the order of the trip file.
struct TrackShelf {
    std::vector<geo::TrackFile> files;

    /// The tracks of all files in order.
    [[nodiscard]] std::vector<const geo::Track*> tracks() const;
    /// A track by its own name; null if there is none.
    [[nodiscard]] const geo::Track* find(std::string_view name) const;
    /// The waypoint of that name, or the nearest spelling's position; empty if there is none.
    [[nodiscard]] const geo::Waypoint* waypoint(std::string_view name) const;
};

/// One track as one line, its parts joined.
[[nodiscard]] TracedLine traced(const geo::Track& track);

/// Length of that line.
[[nodiscard]] double traced_length_m(const geo::Track& track);

/// All tracks as one line in order.
[[nodiscard]] TracedLine traced_all(const TrackShelf& shelf);

[[nodiscard]] TracedLine cut(const TracedLine& whole, double from_m, double to_m);
[[nodiscard]] TracedLine reversed(const TracedLine& forward);

/// The way of travel that a track's type names in words of the trade; empty if it names none.
[[nodiscard]] std::optional<Travel> travel_from_type(std::string_view type);

} // namespace tumpline::planner
