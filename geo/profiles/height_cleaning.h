#pragma once

#include <cstddef>
#include <vector>

namespace tumpline::geo {

/// Heights at even steps cleaned of noise, for geo/profiles/profile.h. The methods and how well
/// they do: docs/models/elevation.md. All of them keep an even ramp as it is, and give the mirror
/// image for the mirror image; cleaned heights add up to ascent and descent by their plain
/// differences.

/// What cleaning needs to know of the noise.
struct Cleaning {
    std::size_t radius; ///< samples on each side that the smoothing takes in
    double threshold_m; ///< the least swing that counts
};

/// Indices of the turning points between which heights swing by at least `threshold_m`, from the
/// first foot or summit to the last; empty if no swing is that large.
[[nodiscard]] std::vector<std::size_t> turning_points(const std::vector<double>& heights_m,
                                                      double threshold_m);

/// Each height replaced by that of the straight line fitted to the heights around it: a moving mean
/// within, and near the ends a line through what there is.
[[nodiscard]] std::vector<double> smoothed(const std::vector<double>& heights_m,
                                           std::size_t radius);

/// The same with a parabola, which lets summits and hollows keep their heights; near the ends,
/// where a parabola swings with the noise, the straight line again. Source: [SavitzkyGolay1964].
[[nodiscard]] std::vector<double> smoothed_by_parabolas(const std::vector<double>& heights_m,
                                                        std::size_t radius);

/// Ground: monotone between the turning points that count, level beyond the outer ones. Turning
/// points are sought on a line smoothed twice, where noise does not pass for a swing, and take
/// their heights from the parabolas.
[[nodiscard]] std::vector<double> cleaned_land(const std::vector<double>& heights_m,
                                               const Cleaning& cleaning);

/// A lake: the median height throughout.
[[nodiscard]] std::vector<double> cleaned_lake(const std::vector<double>& heights_m);

/// A river travelled downstream: smoothed, then the nearest line that never rises.
[[nodiscard]] std::vector<double> cleaned_river(const std::vector<double>& heights_m,
                                                std::size_t radius);

} // namespace tumpline::geo
