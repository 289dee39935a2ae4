#include "geo/profiles/track_summary.h"

#include "geo/lines/geodesic.h"
#include "geo/tracks/steady_way.h"

#include <algorithm>
#include <chrono>
#include <cmath>

namespace tumpline::geo {

namespace {

constexpr double steep_run_m = 100.0; ///< shorter slopes are noise on most rasters

double seconds_between(const Instant& from, const Instant& to) {
    return std::chrono::duration<double>(to - from).count();
}

std::vector<Position> positions(const std::vector<TrackPoint>& points) {
    std::vector<Position> positions;
    positions.reserve(points.size());
    for (const TrackPoint& point : points)
        positions.push_back(point.at);
    return positions;
}

PointHeights point_heights(const std::vector<TrackPoint>& points) {
    PointHeights heights;
    heights.reserve(points.size());
    for (const TrackPoint& point : points)
        heights.push_back(point.height_m);
    return heights;
}

void measure_parts(TrackSummary& sum, const Track& track) {
    double along_m = 0.0;
    const TrackPoint* last = nullptr;
    for (const std::vector<TrackPoint>& part : track.parts) {
        if (part.empty())
            continue;
        ++sum.parts;
        sum.points += part.size();
        if (last != nullptr) {
            const double length_m = distance_m(last->at, part.front().at);
            std::optional<double> lasts_s;
            if (last->time && part.front().time)
                lasts_s = seconds_between(*last->time, *part.front().time);
            sum.gaps.push_back({along_m, length_m, lasts_s});
            along_m += length_m;
        }
        for (std::size_t i = 1; i < part.size(); ++i) {
            const double step_m = distance_m(part[i - 1].at, part[i].at);
            sum.longest_step_m = std::max(sum.longest_step_m, step_m);
            along_m += step_m;
        }
        last = &part.back();
    }
    sum.length_m = along_m;
}

void time(TrackSummary& sum, const Track& track) {
    std::optional<Instant> first;
    std::optional<Instant> last;
    for (const std::vector<TrackPoint>& part : track.parts)
        for (const TrackPoint& point : part)
            if (point.time) {
                first = first.value_or(*point.time);
                last = point.time;
            }
    sum.started = first;
    if (first)
        sum.duration_s = seconds_between(*first, *last);
    sum.moving_s = moving_time_s(track);
    sum.cleaned_length_m = steady_length_m(track);
}

/// Steepest rise and fall over runs of `steep_run_m` (or the whole line, if that is shorter).
void find_steepest(TrackSummary& sum, const Profile& profile) {
    const std::vector<double>& heights_m = profile.heights_m;
    if (heights_m.size() < 2 || profile.step_m <= 0.0)
        return;
    const auto run =
        std::min(heights_m.size() - 1,
                 std::max<std::size_t>(
                     1, static_cast<std::size_t>(std::lround(steep_run_m / profile.step_m))));
    const double run_m = static_cast<double>(run) * profile.step_m;
    for (std::size_t i = run; i < heights_m.size(); ++i) {
        const double slope = (heights_m[i] - heights_m[i - run]) / run_m;
        if (slope > sum.steepest_up.value_or(0.0))
            sum.steepest_up = slope;
        if (-slope > sum.steepest_down.value_or(0.0))
            sum.steepest_down = -slope;
    }
}

} // namespace

TrackSummary summary(const Track& track, Elevation* elevation, const ProfileOptions& options) {
    TrackSummary sum;
    sum.name = track.name;
    sum.type = track.type;
    sum.kind = track.kind;
    sum.repairs = track.repairs;
    measure_parts(sum, track);
    time(sum, track);
    const std::vector<TrackPoint> points = joined(track);
    if (points.empty())
        return sum;
    const Profile profile = make_profile(
        Polyline(positions(points)), point_heights(points), elevation, Surface::land, options);
    sum.heights = profile.source;
    sum.ascent_m = profile.ascent_m;
    sum.descent_m = profile.descent_m;
    if (!profile.heights_m.empty()) {
        const auto [lowest, highest] =
            std::minmax_element(profile.heights_m.begin(), profile.heights_m.end());
        sum.lowest_m = *lowest;
        sum.highest_m = *highest;
    }
    find_steepest(sum, profile);
    return sum;
}

} // namespace tumpline::geo
