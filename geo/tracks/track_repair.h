#pragma once

#include "geo/input_error.h"
#include "geo/tracks/track.h"

#include <optional>
#include <vector>

namespace tumpline::geo {

/// What the rules of repair hang on; docs/tracks.md says why.
struct RepairRules {
    double highest_m = 9000.0;   ///< no ground is higher
    double lowest_m = -500.0;    ///< none is lower under the open sky
    double reachable_mps = 12.0; ///< faster than anybody walks, runs or paddles
    double timed_spike_m = 20.0; ///< shorter ways out and back may be noise of the receiver
    double plain_spike_m = 100.0;
    double spike_spacing = 10.0; ///< way out over the spacing of the points around
    double spike_return = 5.0;   ///< way out over the distance between the points before and after
};

/// Programs write 0 where they know no height. Between heights that are all 30 m and more a height
/// of exactly 0 is such a mark: a way down to the shore passes through what lies between.
[[nodiscard]] bool zero_means_unknown(const std::vector<double>& heights_m);

/// Mends `track` in place and adds to its count of repairs: void heights, times that run backward,
/// points doubled, spikes; counts missing heights, gaps and crossings of the antimeridian. Points
/// out of bounds must be gone already.
void repair(Track& track, const RepairRules& rules = {});

/// Repairs every track that a reader has read; moves those without two places to what is left out,
/// with a word why. `first_invalid` is the first point that the reader could not use, if any.
/// Throws: InputError if nothing usable is left.
void finish(TrackFile& tracks, const std::optional<Problem>& first_invalid);

} // namespace tumpline::geo
