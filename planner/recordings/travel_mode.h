#pragma once

#include "geo/ground/elevation.h"
#include "geo/tracks/track.h"
#include "planner/route/traced_line.h"

#include <optional>
#include <string>
#include <vector>

namespace tumpline::planner {

/// A part of one track, on foot or afloat.
struct GroundPart {
    double from_m = 0.0;
    double to_m = 0.0;
    bool afloat = false;
    std::string why; ///< a clause
};

/// Metres per second over a part of a track by its time stamps, halts included; empty without them.
[[nodiscard]] std::optional<double>
recorded_speed_mps(const geo::Track& track, const geo::Polyline& line, const GroundPart& part);

/// The height of the ground every 25 m along, from `elevation` (may be null) or else as recorded.
[[nodiscard]] std::vector<std::optional<double>> ground_heights(const TracedLine& traced,
                                                                geo::Elevation* elevation);

/// What the ground and the time stamps tell of a track, as `first_trip` says; one stretch at least,
/// each beginning where the one before ends.
[[nodiscard]] std::vector<GroundPart>
afloat_or_on_foot(const geo::Track& track, const TracedLine& traced, geo::Elevation* elevation);

} // namespace tumpline::planner
