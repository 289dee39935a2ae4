#pragma once

#include "geo/ground/elevation.h"
#include "geo/profiles/profile.h"
#include "geo/tracks/track.h"

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace tumpline::geo {

/// A break between two parts of a track, bridged by a straight line.
struct TrackGap {
    double along_m = 0.0;  ///< where the first part ends
    double length_m = 0.0; ///< of the bridge
    std::optional<double> lasts_s;
};

/// What one recorded or drawn track holds, repaired as for a plan.
struct TrackSummary {
    std::string name;
    std::string type;
    TrackKind kind = TrackKind::track;
    std::size_t points = 0;
    std::size_t parts = 0;
    double length_m = 0.0; ///< of all parts joined, as one would travel them; bridges included
    std::optional<double> cleaned_length_m; ///< see steady_length_m; empty without times
    std::vector<TrackGap> gaps;
    double longest_step_m = 0.0; ///< between consecutive points of one part
    HeightSource heights = HeightSource::none;
    double ascent_m = 0.0;  ///< 0 if no height is known
    double descent_m = 0.0; ///< likewise
    std::optional<double> lowest_m;
    std::optional<double> highest_m;
    std::optional<double> steepest_up;   ///< rise over run of the steepest 100 m; none on the level
    std::optional<double> steepest_down; ///< fall over run, positive
    std::optional<Instant> started;
    std::optional<double> duration_s; ///< from the first time stamp to the last
    std::optional<double> moving_s;   ///< see geo/tracks/steady_way.h
    Repairs repairs;
};

/// Sums up a track; heights from `elevation` (may be null) where it covers, else its own. Every
/// track is taken as land: on water the noise of the heights may count as climb.
[[nodiscard]] TrackSummary
summary(const Track& track, Elevation* elevation, const ProfileOptions& options = {});

} // namespace tumpline::geo
