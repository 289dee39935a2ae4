#pragma once

#include "geo/tracks/track.h"

#include <cstddef>
#include <optional>
#include <vector>

/// The way in a recording, without what a receiver adds to it. Its positions wander by metres, at
/// rest as well, so the plain sum of its steps is too long: docs/tracks.md.
namespace tumpline::geo {

/// A point with a time, its place the mean of those around it.
struct SteadyPoint {
    Position at;
    std::optional<double> height_m;
    double clock_s = 0.0;  ///< since 1970
    std::size_t point = 0; ///< its index in the part
    bool stands = false;   ///< from here to the next point
};

/// One part of a track; what it does within `step_s` is the receiver's doing, not the traveller's.
struct SteadyPart {
    std::vector<SteadyPoint> points;
    double step_s = 20.0;
};

/// The timed points of one part of a track. The step is the shortest of 2, 4, 8 and 20 s over which
/// the points bend from a straight line by little beside the way, so that a quiet receiver keeps
/// its hairpins; each place is the mean of those within three quarters of it before and after, as
/// many on either side. One stands where one stays within 20 m for two minutes, or within 50 m for
/// ten, and over steps of two minutes and more at less than 0.6 km/h.
/// Source: our own rule; docs/tracks.md.
[[nodiscard]] SteadyPart steadied(const std::vector<TrackPoint>& part);

/// Indices of the points between which the way is measured: where standing begins or ends, those
/// of `breaks` (by index, may be empty), and one every step between.
[[nodiscard]] std::vector<std::size_t> knots(const SteadyPart& part,
                                             const std::vector<bool>& breaks);

/// Seconds on the move in the track's parts: all time but that between parts and that in which one
/// stands. Empty without two time stamps in one part.
[[nodiscard]] std::optional<double> moving_time_s(const Track& track);

/// A line longer than the steadied way by more than this share is told of: winding paths without
/// any noise come to less.
inline constexpr double wander_counts = 0.05;

/// Length of the way from knot to knot, gaps between parts bridged as in the plain length; parts
/// without times keep theirs. Empty without two time stamps in one part.
[[nodiscard]] std::optional<double> steady_length_m(const Track& track);

} // namespace tumpline::geo
