#pragma once

#include "geo/ground/elevation.h"
#include "geo/profiles/profile.h"
#include "geo/tracks/track.h"

#include <cstddef>
#include <optional>
#include <vector>

/// What a recording tells of moving and standing, with the receiver's noise taken out.
namespace tumpline::planner {

enum class Motion {
    on_foot,
    carrying, ///< over a portage
    still_water,
    flowing_water ///< a river, or the sea with its tides
};

/// About a minute on the move.
struct Window {
    Motion motion = Motion::on_foot;
    geo::Instant start{};
    double lasts_s = 0.0;
    double from_m = 0.0; ///< along the profile of its run
    double to_m = 0.0;
};

/// A part of a track; halts are what lies between its windows.
struct Run {
    geo::Profile profile;
    std::vector<geo::Position> line; ///< smoothed, a point every 20 s or more
    std::vector<double> along_m;     ///< of each of them
    std::vector<geo::Instant> clock; ///< likewise
    std::vector<Window> windows;     ///< in order of time
};

struct Halt {
    geo::Instant start{};
    double lasts_s = 0.0;
};

struct Recorded {
    std::vector<Run> runs;   ///< by time
    std::vector<Halt> halts; ///< by time
    double too_fast_s = 0.0; ///< set aside: faster than anybody walks or paddles
    std::size_t untimed = 0; ///< tracks without times, of no use
};

/// Reads motion out of recorded tracks. A position is the mean over 15 s before and after, so that
/// the wandering of a receiver adds little to the way (docs/pace.md). Standing is staying within
/// 20 m for two minutes, or a step of two minutes and more at less than 0.6 km/h; faster than
/// 15 km/h is no motion of ours. The way of travel comes as in `first_trip`. `elevation` may be
/// null: then heights are the recorded ones.
[[nodiscard]] Recorded recorded_motion(const std::vector<geo::TrackFile>& files,
                                       geo::Elevation* elevation);

} // namespace tumpline::planner
