#pragma once

#include "geo/ground/elevation.h"
#include "geo/lines/polyline.h"
#include "geo/tracks/track.h"

#include <cstddef>
#include <optional>
#include <vector>

namespace tumpline::geo {

/// Where the heights of a profile come from.
enum class HeightSource { raster, track, none };

/// What the ground under a line is.
enum class Surface {
    land,
    level_water,   ///< a lake or the sea: one height from end to end
    falling_river, ///< never rises in the direction of travel
    rising_river   ///< travelled upstream: never falls in the direction of travel
};

/// How a profile is made; the defaults are docs/models/elevation.md's.
struct ProfileOptions {
    double step_m = 25.0;              ///< even spacing of the samples
    double raster_threshold_m = 5.0;   ///< reversal threshold for heights from rasters
    double track_threshold_m = 10.0;   ///< the same for heights recorded with a track
    double raster_smoothing_m = 175.0; ///< length of ground whose heights are taken together
    double track_smoothing_m = 275.0;
    double longest_void_m = 500.0; ///< longer voids count as unknown ground
};

/// Reversal threshold for recorded heights of a barometer, whose errors are small and slow.
inline constexpr double barometer_threshold_m = 5.0;

/// The same where the recorded heights are those of a barometer: smoothed as those of a raster.
[[nodiscard]] ProfileOptions of_barometer(ProfileOptions options);

/// A stretch of a profile without heights of its own, filled by a straight line between the heights
/// on its two sides (level at the ends of the profile).
struct HeightGap {
    double from_m;
    double to_m;
    bool unknown; ///< too long to be filled in good faith: the least climb that it can have
};

/// Heights along a line at even steps, cleaned of noise: between the turning points that count the
/// ground only rises or only falls, so the plain sum of rises is the ascent.
struct Profile {
    double length_m = 0.0;
    double step_m = 0.0;           ///< length / (heights - 1)
    std::vector<double> heights_m; ///< empty if unknown; otherwise at least two
    HeightSource source = HeightSource::none;
    double ascent_m = 0.0;
    double descent_m = 0.0;
    std::size_t interpolated = 0; ///< samples filled in across voids
    std::size_t unknown = 0;     ///< samples in voids too long to fill (all, if no height is known)
    double threshold_m = 0.0;    ///< the one used; 0 on water
    std::vector<HeightGap> gaps; ///< in order along the line

    /// Height at a distance along, linear between samples; empty if heights are unknown.
    [[nodiscard]] std::optional<double> height_at(double along_m) const;
};

/// Ascent and descent between turning points that differ by at least a threshold.
struct Climb {
    double ascent_m;
    double descent_m;
};

/// Counts only swings of at least `threshold_m`, each with its full height; 0 is the naive sum.
/// Source: docs/models/elevation.md.
[[nodiscard]] Climb climb(const std::vector<double>& heights_m, double threshold_m);

/// Heights recorded with a line, point by point; sizes agree with the line's points.
using PointHeights = std::vector<std::optional<double>>;

/// Samples of all profiles of a trip at most: some 200 MB in memory; 50 000 km in steps of 20 m.
inline constexpr std::size_t most_samples = 2'500'000;

/// How many samples a profile has.
[[nodiscard]] std::size_t samples_in(double length_m, double step_m);

/// The profile of `line`: from `elevation` if it covers at least half of the line (may be null),
/// its holes filled with recorded heights shifted to meet it; else from `recorded` (may be empty);
/// else unknown. The step is fitted to the length so that steps are even.
[[nodiscard]] Profile make_profile(const Polyline& line,
                                   const PointHeights& recorded,
                                   Elevation* elevation,
                                   Surface surface,
                                   const ProfileOptions& options);

/// The part of a profile between two distances along, clamped to it. Ascent and descent of parts
/// add up to those of the whole: the threshold was applied to the whole line.
[[nodiscard]] Profile cut(const Profile& profile, double from_m, double to_m);

} // namespace tumpline::geo
