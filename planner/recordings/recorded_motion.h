#pragma once

#include "geo/ground/elevation.h"
#include "geo/profiles/profile.h"
#include "geo/tracks/track.h"

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

/// What a recording tells of moving and standing, with the receiver's noise taken out.
namespace tumpline::planner {

enum class Motion {
    on_foot,
    carrying, ///< over a portage
    still_water,
    flowing_water, ///< a river, or the sea with its tides
    unsure         ///< on foot or afloat, which nothing tells
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
    bool at_an_end = false; ///< before the first move of a track or after its last: no rest
};

/// What became of one track.
struct TrackReading {
    std::string name;
    std::string taken_as;  ///< "on foot", "left out", ...
    std::string why;       ///< a clause
    double moving_s = 0.0; ///< of it in runs
};

struct Recorded {
    std::vector<Run> runs;            ///< by time
    std::vector<Halt> halts;          ///< by time
    std::vector<TrackReading> tracks; ///< in the order of the files
    double too_fast_s = 0.0;          ///< set aside: faster than anybody walks or paddles
    double other_s = 0.0;             ///< set aside: runs, rides and the like
    double unsure_s = 0.0;            ///< set aside: level ground that may be a water
    std::size_t untimed = 0;          ///< tracks without times, of no use
};

/// Reads motion out of recorded tracks, their wander taken out (geo/tracks/steady_way.h). Faster
/// than 15 km/h is no motion of ours, and a track on foot that mostly goes faster than 7.2 km/h, or
/// whose type or name tells of a run or a ride, is left out. The way of travel comes as in
/// `first_trip`. `elevation` may be null: then heights are the recorded ones. Source: docs/pace.md.
[[nodiscard]] Recorded recorded_motion(const std::vector<geo::TrackFile>& files,
                                       geo::Elevation* elevation);

} // namespace tumpline::planner
