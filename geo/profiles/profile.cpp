#include "geo/profiles/profile.h"

#include "geo/profiles/height_cleaning.h"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <cstddef>
#include <optional>
#include <utility>
#include <vector>

namespace tumpline::geo {

namespace {

using Heights = std::vector<std::optional<double>>;

/// A straight line between two points, also beyond them.
struct Between {
    double from_m;
    double to_m;
    double share; ///< 0 at from, 1 at to
};

double interpolate(const Between& between) {
    return between.from_m + between.share * (between.to_m - between.from_m);
}

/// Recorded heights as a line through those points that have one.
class RecordedHeights {
  public:
    RecordedHeights(const Polyline& line, const PointHeights& recorded) {
        bool hole = false;
        for (std::size_t i = 0; i < recorded.size(); ++i) {
            if (!recorded[i]) {
                hole = true;
                continue;
            }
            const double along_m = line.along_m()[i];
            if (!along_m_.empty())
                areas_.push_back(areas_.back() + 0.5 * (along_m - along_m_.back()) *
                                                     (rise_m(*recorded[i]) + rises_m_.back()));
            else
                areas_.push_back(0.0);
            along_m_.push_back(along_m);
            origin_m_ = along_m_.size() == 1 ? *recorded[i] : origin_m_;
            rises_m_.push_back(rise_m(*recorded[i]));
            after_hole_.push_back(hole);
            hole = false;
        }
    }

    /// Mean over the `reach_m` on either side of a place, so that a point a second and a step of
    /// 25 m do not throw nine points out of ten away. Nearer than that to an end: the straight line
    /// through the means of two stretches on the inner side.
    [[nodiscard]] std::optional<double> around(double along_m, double reach_m) const {
        if (along_m_.empty() || along_m < along_m_.front() || along_m > along_m_.back())
            return std::nullopt;
        const std::size_t next = next_point(along_m);
        // Both points beside a hole have their heights; what lies between them has none.
        if (along_m > along_m_[next - 1] && along_m < along_m_[next] && after_hole_[next])
            return std::nullopt;
        const double before_m = along_m - along_m_.front();
        const double after_m = along_m_.back() - along_m;
        const double inner_m = std::min(reach_m, std::max(before_m, after_m));
        if (inner_m <= 0.0)
            return origin_m_ + rise_at(along_m);
        if (std::min(before_m, after_m) >= reach_m)
            return origin_m_ + mean(along_m - reach_m, along_m + reach_m);
        const double inwards_m = before_m < after_m ? 0.5 * inner_m : -0.5 * inner_m;
        return origin_m_ + 1.5 * mean(along_m, along_m + inwards_m) -
               0.5 * mean(along_m + inwards_m, along_m + 2.0 * inwards_m);
    }

  private:
    [[nodiscard]] double rise_m(double height_m) const {
        return along_m_.empty() ? 0.0 : height_m - origin_m_;
    }

    /// The point that ends the segment of a place; with one point only, that point.
    [[nodiscard]] std::size_t next_point(double along_m) const {
        const auto beyond = std::upper_bound(along_m_.begin(), along_m_.end(), along_m);
        const auto next = static_cast<std::size_t>(beyond - along_m_.begin());
        return std::clamp<std::size_t>(next, 1, std::max<std::size_t>(along_m_.size() - 1, 1));
    }

    [[nodiscard]] double rise_at(double along_m) const {
        const std::size_t next = next_point(along_m);
        if (next >= along_m_.size())
            return rises_m_.back();
        const double span_m = along_m_[next] - along_m_[next - 1];
        if (span_m <= 0.0)
            return rises_m_[next];
        return interpolate({.from_m = rises_m_[next - 1],
                            .to_m = rises_m_[next],
                            .share = (along_m - along_m_[next - 1]) / span_m});
    }

    /// Area under the line from its first point, for means over stretches.
    [[nodiscard]] double area_to(double along_m) const {
        const std::size_t before = next_point(along_m) - 1;
        return areas_[before] +
               0.5 * (along_m - along_m_[before]) * (rises_m_[before] + rise_at(along_m));
    }

    [[nodiscard]] double mean(double from_m, double to_m) const {
        return (area_to(to_m) - area_to(from_m)) / (to_m - from_m);
    }

    double origin_m_ = 0.0; ///< the first height; the rest count from it, to keep sums small
    std::vector<double> along_m_;
    std::vector<double> rises_m_;
    std::vector<double> areas_;
    std::vector<bool> after_hole_; ///< points without a height stand before this one
};

std::size_t known(const Heights& heights) {
    return static_cast<std::size_t>(std::count_if(
        heights.begin(), heights.end(), [](const auto& height) { return height.has_value(); }));
}

/// A run of samples without heights, [first, end).
struct Run {
    std::size_t first;
    std::size_t end;
};

std::vector<Run> runs_without(const Heights& heights) {
    std::vector<Run> runs;
    for (std::size_t i = 0; i < heights.size(); ++i) {
        if (heights[i])
            continue;
        if (runs.empty() || runs.back().end != i)
            runs.push_back({.first = i, .end = i});
        runs.back().end = i + 1;
    }
    return runs;
}

/// Fills the holes of `heights` with those of `other`, shifted so that they meet at both edges: two
/// sources may stand metres apart, and their seam is not a climb.
void fill_from(const Heights& other, Heights& heights) {
    for (const Run& run : runs_without(heights)) {
        const auto shift = [&](bool inside, std::size_t edge) -> std::optional<double> {
            if (!inside || !other[edge])
                return std::nullopt;
            return *heights[edge] - *other[edge];
        };
        const auto before_m = shift(run.first > 0, run.first - 1);
        const auto after_m = shift(run.end < heights.size(), run.end);
        const double from_m = before_m.value_or(after_m.value_or(0.0));
        const double to_m = after_m.value_or(from_m);
        const auto span = static_cast<double>(run.end - run.first + 1);
        for (std::size_t i = run.first; i < run.end; ++i)
            if (other[i])
                heights[i] = *other[i] +
                             interpolate({.from_m = from_m,
                                          .to_m = to_m,
                                          .share = static_cast<double>(i - run.first + 1) / span});
    }
}

/// Straight lines across what is still void; says how much, and where, in `profile`.
std::vector<double> filled(const Heights& heights, double longest_void_m, Profile& profile) {
    std::vector<double> all_m(heights.size());
    for (std::size_t i = 0; i < heights.size(); ++i)
        all_m[i] = heights[i].value_or(0.0);
    for (const Run& run : runs_without(heights)) {
        const bool at_start = run.first == 0;
        const bool at_end = run.end == heights.size();
        const std::size_t before = at_start ? run.first : run.first - 1;
        const std::size_t after = at_end ? run.end - 1 : run.end;
        const double length_m = static_cast<double>(after - before) * profile.step_m;
        const bool unknown = length_m > longest_void_m;
        (unknown ? profile.unknown : profile.interpolated) += run.end - run.first;
        profile.gaps.push_back({.from_m = static_cast<double>(before) * profile.step_m,
                                .to_m = static_cast<double>(after) * profile.step_m,
                                .unknown = unknown});
        const double from_m = at_start ? all_m[after] : all_m[before];
        const double to_m = at_end ? from_m : all_m[after];
        for (std::size_t i = run.first; i < run.end; ++i)
            all_m[i] = interpolate(
                {.from_m = from_m,
                 .to_m = to_m,
                 .share = static_cast<double>(i - before) /
                          static_cast<double>(std::max<std::size_t>(after - before, 1))});
    }
    return all_m;
}

/// Plain sums of the differences, which cleaned heights allow.
Climb steps_of(const std::vector<double>& heights_m) {
    Climb sum{.ascent_m = 0.0, .descent_m = 0.0};
    for (std::size_t i = 1; i < heights_m.size(); ++i) {
        const double rise_m = heights_m[i] - heights_m[i - 1];
        (rise_m > 0.0 ? sum.ascent_m : sum.descent_m) += std::abs(rise_m);
    }
    return sum;
}

constexpr double river_smoothing = 3.0; // times the ground's: a river falls gently

/// Samples on each side of one that together make up a length of ground.
std::size_t radius_of(double length_m, double step_m) {
    if (step_m <= 0.0)
        return 0;
    return static_cast<std::size_t>(std::max(0.0, std::round(0.5 * (length_m / step_m - 1.0))));
}

std::vector<double>
cleaned(std::vector<double> heights_m, Surface surface, const Cleaning& cleaning) {
    const auto river_radius = static_cast<std::size_t>(
        std::lround(river_smoothing * static_cast<double>(cleaning.radius)));
    switch (surface) {
    case Surface::land:
        return cleaned_land(heights_m, cleaning);
    case Surface::level_water:
        return cleaned_lake(heights_m);
    case Surface::falling_river:
        return cleaned_river(heights_m, river_radius);
    case Surface::rising_river:
        break;
    }
    std::reverse(heights_m.begin(), heights_m.end());
    std::vector<double> upstream_m = cleaned_river(heights_m, river_radius);
    std::reverse(upstream_m.begin(), upstream_m.end());
    return upstream_m;
}

/// The number of even steps nearest to the wanted one, at least one.
std::size_t steps_in(double length_m, double step_m) {
    return static_cast<std::size_t>(std::max(1.0, std::round(length_m / step_m)));
}

} // namespace

ProfileOptions of_barometer(ProfileOptions options) {
    options.track_threshold_m = barometer_threshold_m;
    options.track_smoothing_m = options.raster_smoothing_m;
    return options;
}

std::optional<double> Profile::height_at(double along_m) const {
    if (heights_m.empty())
        return std::nullopt;
    if (heights_m.size() == 1 || step_m <= 0.0)
        return heights_m.front();
    const double place = std::clamp(along_m, 0.0, length_m) / step_m;
    const std::size_t before =
        std::min(static_cast<std::size_t>(std::floor(place)), heights_m.size() - 2);
    return interpolate({.from_m = heights_m[before],
                        .to_m = heights_m[before + 1],
                        .share = std::min(place - static_cast<double>(before), 1.0)});
}

Climb climb(const std::vector<double>& heights_m, double threshold_m) {
    if (threshold_m <= 0.0)
        return steps_of(heights_m);
    std::vector<double> turns_m;
    for (const std::size_t turn : turning_points(heights_m, threshold_m))
        turns_m.push_back(heights_m[turn]);
    return steps_of(turns_m);
}

std::size_t samples_in(double length_m, double step_m) {
    return steps_in(length_m, step_m) + 1;
}

Profile make_profile(const Polyline& line,
                     const PointHeights& recorded,
                     Elevation* elevation,
                     Surface surface,
                     const ProfileOptions& options) {
    assert(options.step_m > 0.0);
    assert(recorded.empty() || recorded.size() == line.points().size());
    Profile profile;
    profile.length_m = line.length_m();
    const std::size_t steps = steps_in(profile.length_m, options.step_m);
    profile.step_m = profile.length_m / static_cast<double>(steps);
    const auto along_m = [&](std::size_t sample) {
        return sample == steps ? profile.length_m : static_cast<double>(sample) * profile.step_m;
    };

    Heights from_raster(steps + 1);
    if (elevation != nullptr)
        for (std::size_t i = 0; i <= steps; ++i)
            from_raster[i] = elevation->at(line.at(along_m(i)));
    Heights from_track(steps + 1);
    if (!recorded.empty()) {
        const RecordedHeights heights(line, recorded);
        for (std::size_t i = 0; i <= steps; ++i)
            from_track[i] = heights.around(along_m(i), 0.5 * profile.step_m);
    }

    const std::size_t raster_samples = known(from_raster);
    const std::size_t track_samples = known(from_track);
    if (raster_samples == 0 && track_samples == 0) {
        profile.unknown = steps + 1;
        profile.gaps.push_back({.from_m = 0.0, .to_m = profile.length_m, .unknown = true});
        return profile;
    }
    const bool by_raster = track_samples == 0 || 2 * raster_samples >= steps + 1;
    profile.source = by_raster ? HeightSource::raster : HeightSource::track;
    Heights& heights = by_raster ? from_raster : from_track;
    fill_from(by_raster ? from_track : from_raster, heights);

    const double smoothing_m = by_raster ? options.raster_smoothing_m : options.track_smoothing_m;
    const Cleaning cleaning{.radius = radius_of(smoothing_m, profile.step_m),
                            .threshold_m =
                                by_raster ? options.raster_threshold_m : options.track_threshold_m};
    profile.threshold_m = surface == Surface::land ? cleaning.threshold_m : 0.0;
    profile.heights_m =
        cleaned(filled(heights, options.longest_void_m, profile), surface, cleaning);
    const Climb sum = steps_of(profile.heights_m);
    profile.ascent_m = sum.ascent_m;
    profile.descent_m = sum.descent_m;
    return profile;
}

Profile cut(const Profile& profile, double from_m, double to_m) {
    from_m = std::clamp(from_m, 0.0, profile.length_m);
    to_m = std::clamp(to_m, from_m, profile.length_m);
    Profile part;
    part.length_m = to_m - from_m;
    part.source = profile.source;
    part.threshold_m = profile.threshold_m;
    const std::size_t steps =
        profile.step_m > 0.0 ? steps_in(part.length_m, profile.step_m) : std::size_t{1};
    part.step_m = part.length_m / static_cast<double>(steps);

    for (const HeightGap& gap : profile.gaps) {
        const HeightGap rest{.from_m = std::max(gap.from_m, from_m) - from_m,
                             .to_m = std::min(gap.to_m, to_m) - from_m,
                             .unknown = gap.unknown};
        if (rest.from_m < rest.to_m)
            part.gaps.push_back(rest);
    }
    for (const HeightGap& gap : part.gaps) {
        const double first = std::ceil(gap.from_m / part.step_m - 1e-9);
        const double last = std::floor(gap.to_m / part.step_m + 1e-9);
        const auto samples = static_cast<std::size_t>(std::max(0.0, last - first + 1.0));
        (gap.unknown ? part.unknown : part.interpolated) += samples;
    }
    if (profile.heights_m.empty())
        return part;

    for (std::size_t i = 0; i <= steps; ++i)
        part.heights_m.push_back(*profile.height_at(from_m + static_cast<double>(i) * part.step_m));

    // Counted on the samples of the whole, not on those of the part, which may miss its summits.
    std::vector<double> passed_m{*profile.height_at(from_m)};
    if (profile.step_m > 0.0) {
        const auto first = static_cast<std::size_t>(std::floor(from_m / profile.step_m)) + 1;
        for (std::size_t i = first;
             i < profile.heights_m.size() && static_cast<double>(i) * profile.step_m < to_m;
             ++i)
            passed_m.push_back(profile.heights_m[i]);
    }
    passed_m.push_back(*profile.height_at(to_m));
    const Climb sum = steps_of(passed_m);
    part.ascent_m = sum.ascent_m;
    part.descent_m = sum.descent_m;
    return part;
}

} // namespace tumpline::geo
