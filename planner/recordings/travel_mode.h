#pragma once

#include "geo/ground/elevation.h"
#include "geo/tracks/track.h"
#include "planner/route/traced_line.h"

#include <optional>
#include <string>
#include <vector>

namespace tumpline::planner {

/// People change from a walk to a run at about that. Common practice, no source.
inline constexpr double fastest_walk_mps = 7.2 / 3.6;

/// A part of one track, on foot or afloat.
struct GroundPart {
    double from_m = 0.0;
    double to_m = 0.0;
    bool afloat = false;
    bool guess = false; ///< level as a water, on which nothing else than its ends bears it out
    std::string why;    ///< a clause
};

/// The height of the ground every 25 m along, from `elevation` (may be null) or else as recorded.
[[nodiscard]] std::vector<std::optional<double>> ground_heights(const TracedLine& traced,
                                                                geo::Elevation* elevation);

/// What the ground and the time stamps tell of a track, as `first_trip` says; one stretch at least,
/// each beginning where the one before ends. Level ground is taken as water only where somebody
/// moves on it, at a speed of boats on still water, and the ground to both sides (of rasters) or at
/// an end (of heights in the track, a guess) is that of a water. Source: docs/new.md.
[[nodiscard]] std::vector<GroundPart>
afloat_or_on_foot(const geo::Track& track, const TracedLine& traced, geo::Elevation* elevation);

} // namespace tumpline::planner
