#include "geo/lines/polyline.h"

#include "geo/lines/geodesic.h"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <deque>
#include <numbers>
#include <stdexcept>
#include <utility>

namespace tumpline::geo {

namespace {

constexpr double radians(double degrees) {
    return degrees * std::numbers::pi / 180.0;
}

/// The end of the stretch of indices from `index` in which every point lies within `reach_m` of
/// line; always beyond `index`. Along a line the distance to a place changes by no more than the
/// way gone, so a reach of the distance less a bound leaps over nothing nearer than the bound.
std::size_t beyond(const std::vector<double>& along_m, std::size_t index, double reach_m) {
    // doubling steps first, since the stretch is mostly short
    const double limit_m = along_m[index] + reach_m;
    std::size_t low = index + 1;
    std::size_t step = 1;
    while (low + step < along_m.size() && along_m[low + step] < limit_m) {
        low += step;
        step *= 2;
    }
    const std::size_t high = std::min(low + step, along_m.size());
    const auto first = along_m.begin();
    return static_cast<std::size_t>(std::lower_bound(first + static_cast<std::ptrdiff_t>(low),
                                                     first + static_cast<std::ptrdiff_t>(high),
                                                     limit_m) -
                                    first);
}

/// What rounding may do to a sum of lengths and distances.
constexpr double rounding_m = 1e-6;
constexpr std::size_t block_segments = 32; ///< that share a bound
constexpr double radius_m = 6371008.8;     ///< mean radius, where only an estimate hangs on it

/// A segment seen from a place: how far its ends are, and how long it is.
struct Side {
    double start_m;
    double end_m;
    double length_m;
};

/// The nearest point of a segment as a plane triangle has it.
Snap nearest_sketch(const Side& side) {
    if (side.length_m <= 0.0)
        return {0.0, side.start_m};
    const double foot_m = 0.5 * (side.length_m + (side.start_m - side.end_m) *
                                                     (side.start_m + side.end_m) / side.length_m);
    if (foot_m <= 0.0)
        return {0.0, side.start_m};
    if (foot_m >= side.length_m)
        return {side.length_m, side.end_m};
    return {foot_m, std::sqrt(std::max(0.0, (side.start_m - foot_m) * (side.start_m + foot_m)))};
}

/// How far off the sketch can be: the excess of the spherical triangle, generously.
double blur_m(const Side& side) {
    const double size_m = std::max(side.start_m, side.end_m) + side.length_m;
    const double share = size_m / radius_m;
    return rounding_m + size_m * share * share;
}

/// Indices of the snaps with no nearer one within `apart_m` of line on either side (of equals the
/// first), in order.
std::vector<std::size_t> nearest_around(const std::vector<Snap>& snaps, double apart_m) {
    std::vector<std::size_t> kept;
    std::deque<std::size_t> window; // of the snaps in reach, those not undercut by a later one
    std::size_t next = 0;
    for (std::size_t index = 0; index < snaps.size(); ++index) {
        while (next < snaps.size() && snaps[next].along_m < snaps[index].along_m + apart_m) {
            while (!window.empty() && snaps[window.back()].off_m > snaps[next].off_m)
                window.pop_back();
            window.push_back(next++);
        }
        while (snaps[window.front()].along_m <= snaps[index].along_m - apart_m)
            window.pop_front();
        if (window.front() == index)
            kept.push_back(index);
    }
    return kept;
}

/// One geodesic between two neighbouring points and the stretch of it that is asked for.
struct Stretch {
    Position start;
    Position end;
    double length_m;
    double from_m; ///< only at or beyond this
};

/// Where `stretch` comes nearest to `place`. Steps along the geodesic by the projection of the way
/// to the place, exact on a sphere, so that on the ellipsoid two or three steps settle it.
Snap nearest_of(const Stretch& stretch, const Position& place) {
    constexpr double settled_m = 1e-7;
    const double azimuth_deg = geodesic(stretch.start, stretch.end).start_azimuth_deg;
    const auto off_m = [&](double along_m) {
        return distance_m(destination(stretch.start, azimuth_deg, along_m), place);
    };
    const double middle_m = 0.5 * (stretch.from_m + stretch.length_m);
    Snap best{stretch.from_m, off_m(stretch.from_m)};
    for (const double along_m : {middle_m, stretch.length_m})
        if (const double away_m = off_m(along_m); away_m < best.off_m)
            best = {along_m, away_m};
    double along_m = best.along_m;
    for (int step = 0; step < 16; ++step) {
        const Position here = destination(stretch.start, azimuth_deg, along_m);
        const Geodesic away = geodesic(here, place);
        if (away.length_m < best.off_m)
            best = {along_m, away.length_m};
        const double ahead_deg = 2.0 * along_m < stretch.length_m
                                     ? geodesic(here, stretch.end).start_azimuth_deg
                                     : geodesic(stretch.start, here).end_azimuth_deg;
        const double turn = radians(away.start_azimuth_deg - ahead_deg);
        const double angle = away.length_m / radius_m;
        const double forward_m =
            radius_m * std::atan2(std::sin(angle) * std::cos(turn), std::cos(angle));
        const double next_m = std::clamp(along_m + forward_m, stretch.from_m, stretch.length_m);
        if (std::abs(next_m - along_m) < settled_m)
            break;
        along_m = next_m;
    }
    return best;
}

} // namespace

Polyline::Polyline(std::vector<Position> points) : points_(std::move(points)) {
    if (points_.empty())
        throw std::invalid_argument("a line needs a point");
    along_m_.reserve(points_.size());
    along_m_.push_back(0.0);
    for (std::size_t index = 1; index < points_.size(); ++index)
        along_m_.push_back(along_m_.back() + distance_m(points_[index - 1], points_[index]));
    gather_blocks();
}

Polyline::Polyline(std::vector<Position> points, std::vector<double> along_m)
    : points_(std::move(points)), along_m_(std::move(along_m)) {
    assert(!points_.empty() && points_.size() == along_m_.size() && along_m_.front() == 0.0);
    gather_blocks();
}

void Polyline::gather_blocks() {
    const std::size_t last = points_.size() - 1;
    blocks_.reserve(last / block_segments + 1);
    for (std::size_t start = 0; start == 0 || start < last; start += block_segments) {
        const std::size_t end = std::min(start + block_segments, last);
        const std::size_t middle = start + (end - start) / 2;
        blocks_.push_back(
            {straight(points_[middle]),
             std::max(along_m_[middle] - along_m_[start], along_m_[end] - along_m_[middle])});
    }
}

double Polyline::no_nearer_m(std::size_t block, const Straight& place) const {
    return chord_m(blocks_[block].middle, place) - blocks_[block].reach_m - rounding_m;
}

double Polyline::no_nearer_m(const Position& place) const {
    const Straight there = straight(place);
    double least_m = HUGE_VAL;
    for (std::size_t block = 0; block < blocks_.size(); ++block)
        least_m = std::min(least_m, no_nearer_m(block, there));
    return least_m;
}

std::size_t Polyline::next_near(std::size_t segment, const Straight& place, double within_m) const {
    std::size_t block = segment / block_segments;
    while (block < blocks_.size() && no_nearer_m(block, place) > within_m)
        ++block;
    return std::max(segment, block * block_segments);
}

double Polyline::near_enough_m(std::size_t first, const Position& place) const {
    const Straight there = straight(place);
    std::size_t best = first / block_segments;
    double least_m = HUGE_VAL;
    for (std::size_t block = best; block < blocks_.size(); ++block) // a long one may reach anywhere
        if (const double middle_m = chord_m(blocks_[block].middle, there); middle_m < least_m) {
            least_m = middle_m;
            best = block;
        }
    const std::size_t end = std::min((best + 1) * block_segments, points_.size() - 1);
    std::size_t nearest = end;
    double chord = HUGE_VAL;
    for (std::size_t index = std::max(first + 1, best * block_segments); index <= end; ++index)
        if (const double one_m = chord_m(straight(points_[index]), there); one_m < chord) {
            chord = one_m;
            nearest = index;
        }
    return distance_m(points_[nearest], place);
}

std::size_t Polyline::segment_at(double along_m) const {
    assert(points_.size() > 1);
    const auto after = std::upper_bound(along_m_.begin(), along_m_.end(), along_m);
    if (after != along_m_.end())
        return static_cast<std::size_t>(after - along_m_.begin()) - 1;
    // At the end: the last segment that has a length.
    const auto end = std::lower_bound(along_m_.begin(), along_m_.end(), along_m_.back());
    return end == along_m_.begin() ? 0 : static_cast<std::size_t>(end - along_m_.begin()) - 1;
}

Position Polyline::at(double along_m) const {
    if (along_m <= 0.0 || points_.size() == 1)
        return points_.front();
    if (along_m >= length_m())
        return points_.back();
    const std::size_t segment = segment_at(along_m);
    return towards(points_[segment], points_[segment + 1], along_m - along_m_[segment]);
}

double Polyline::bearing_deg(double along_m) const {
    if (length_m() == 0.0)
        return 0.0;
    const double clamped_m = std::clamp(along_m, 0.0, length_m());
    const std::size_t segment = segment_at(clamped_m);
    const double azimuth_deg =
        azimuth_deg_on(points_[segment], points_[segment + 1], clamped_m - along_m_[segment]);
    const double bearing_deg = azimuth_deg < 0.0 ? azimuth_deg + 360.0 : azimuth_deg;
    return bearing_deg < 360.0 ? bearing_deg : 0.0;
}

Polyline Polyline::cut(double from_m, double to_m) const {
    const double first_m = std::clamp(from_m, 0.0, length_m());
    const double last_m = std::clamp(to_m, first_m, length_m());
    std::vector<Position> points{at(first_m)};
    std::vector<double> along_m{0.0};
    if (last_m > first_m) {
        const auto begin = std::upper_bound(along_m_.begin(), along_m_.end(), first_m);
        const auto end = std::lower_bound(begin, along_m_.end(), last_m);
        const auto count = static_cast<std::size_t>(end - begin);
        points.reserve(count + 2);
        along_m.reserve(count + 2);
        for (auto along = begin; along != end; ++along) {
            points.push_back(points_[static_cast<std::size_t>(along - along_m_.begin())]);
            along_m.push_back(*along - first_m);
        }
        points.push_back(at(last_m));
        along_m.push_back(last_m - first_m);
    }
    return {std::move(points), std::move(along_m)};
}

Polyline Polyline::reversed() const {
    std::vector<Position> points(points_.rbegin(), points_.rend());
    std::vector<double> along_m(along_m_.rbegin(), along_m_.rend());
    for (double& along : along_m)
        along = length_m() - along;
    return {std::move(points), std::move(along_m)};
}

Snap Polyline::nearest(const Position& place, double from_m) const {
    const double first_m = std::clamp(from_m, 0.0, length_m());
    Snap best{first_m, distance_m(at(first_m), place)};
    if (points_.size() == 1 || first_m == length_m())
        return best;
    const std::size_t first = segment_at(first_m);
    const auto keep = [&](const Snap& snap) {
        if (snap.off_m < best.off_m)
            best = snap;
    };

    // A good bound, then one pass that leaps over whatever cannot undercut it.
    const Straight there = straight(place);
    double bound_m = std::min(best.off_m, near_enough_m(first, place));
    std::size_t index = first;
    Side side{.start_m = distance_m(points_[first], place), .end_m = 0.0, .length_m = 0.0};
    while (index + 1 < points_.size()) {
        if (const std::size_t near = next_near(index, there, bound_m); near != index) {
            index = near;
            if (index + 1 < points_.size())
                side.start_m = distance_m(points_[index], place);
            continue;
        }
        side.length_m = along_m_[index + 1] - along_m_[index];
        if (const double spare_m = side.start_m - bound_m - rounding_m; spare_m > side.length_m) {
            index = beyond(along_m_, index, spare_m) - 1;
            side.start_m = distance_m(points_[index], place);
            continue;
        }
        side.end_m = distance_m(points_[index + 1], place);
        bound_m = std::min(bound_m, side.end_m);
        if (nearest_sketch(side).off_m - blur_m(side) <= bound_m) {
            const double skip_m = index == first ? first_m - along_m_[first] : 0.0;
            const Snap snap = nearest_of({.start = points_[index],
                                          .end = points_[index + 1],
                                          .length_m = side.length_m,
                                          .from_m = skip_m},
                                         place);
            keep({along_m_[index] + snap.along_m, snap.off_m});
            bound_m = std::min(bound_m, best.off_m);
        }
        side.start_m = side.end_m;
        ++index;
    }
    return best;
}

std::vector<Snap> Polyline::passes(const Position& place, double within_m, double apart_m) const {
    if (points_.size() == 1) {
        const double off_m = distance_m(points_.front(), place);
        return off_m <= within_m ? std::vector{Snap{0.0, off_m}} : std::vector<Snap>{};
    }
    // The nearest point of each segment that comes near enough, roughly where that will do.
    const Straight there = straight(place);
    std::size_t index = next_near(0, there, within_m);
    if (index + 1 >= points_.size())
        return {};
    std::vector<Snap> near_snaps;
    std::vector<std::size_t> segments;
    Side side{.start_m = distance_m(points_[index], place), .end_m = 0.0, .length_m = 0.0};
    while (index + 1 < points_.size()) {
        if (const std::size_t near = next_near(index, there, within_m); near != index) {
            index = near;
            if (index + 1 < points_.size())
                side.start_m = distance_m(points_[index], place);
            continue;
        }
        side.length_m = along_m_[index + 1] - along_m_[index];
        if (const double spare_m = side.start_m - within_m - rounding_m; spare_m > side.length_m) {
            index = beyond(along_m_, index, spare_m) - 1;
            side.start_m = distance_m(points_[index], place);
            continue;
        }
        side.end_m = distance_m(points_[index + 1], place);
        if (const Snap sketch = nearest_sketch(side); sketch.off_m - blur_m(side) <= within_m) {
            near_snaps.push_back({along_m_[index] + sketch.along_m, sketch.off_m});
            segments.push_back(index);
        }
        side.start_m = side.end_m;
        ++index;
    }

    // A pass is nearer than everything within `apart_m` of line before and after it.
    std::vector<Snap> passes;
    for (const std::size_t kept : nearest_around(near_snaps, apart_m)) {
        const std::size_t segment = segments[kept];
        const Snap snap = nearest_of({.start = points_[segment],
                                      .end = points_[segment + 1],
                                      .length_m = along_m_[segment + 1] - along_m_[segment],
                                      .from_m = 0.0},
                                     place);
        if (snap.off_m <= within_m)
            passes.push_back({along_m_[segment] + snap.along_m, snap.off_m});
    }
    return passes;
}

} // namespace tumpline::geo
