#include "geo/tracks/steady_way.h"

#include "geo/lines/geodesic.h"

#include <algorithm>
#include <array>
#include <chrono>
#include <cmath>
#include <numbers>
#include <utility>

namespace tumpline::geo {

namespace {

constexpr std::array steps_s{2.0, 4.0, 8.0};
constexpr double longest_step_s = 20.0;
constexpr double smoothing = 0.75;      // of a step, to each side
constexpr double largest_bend = 0.04;   // mean square of noise over the square of the step's way
constexpr double slowest_mps = 0.25;    // slower steps are halts and tell nothing of noise
constexpr std::size_t least_steps = 20; // from fewer no noise is told

/// Who stays this near for that long stands.
struct Stay {
    double within_m;
    double for_s;
};

constexpr Stay standing{20.0, 120.0}; // as far as a receiver wanders that lies still
constexpr double at_rest_m = 10.0;    // of the middle of a stay; what lies further out leads there
constexpr Stay in_camp{50.0, 600.0};  // and further among walls and trees; nobody travels so slowly

/// Difference of two longitudes, the short way round.
double eastward_deg(double from_deg, double to_deg) {
    const double east_deg = to_deg - from_deg;
    return std::abs(east_deg) <= 180.0 ? east_deg : std::remainder(east_deg, 360.0);
}

/// East and north of `to` from `from`, near enough for points that lie together.
std::array<double, 2> offset_m(const Position& from, const Position& to) {
    constexpr double m_per_deg = 111'320.0;
    const double east_deg = eastward_deg(from.lon_deg, to.lon_deg);
    return {east_deg * m_per_deg * std::cos(from.lat_deg * std::numbers::pi / 180.0),
            (to.lat_deg - from.lat_deg) * m_per_deg};
}

std::vector<SteadyPoint> timed(const std::vector<TrackPoint>& part) {
    std::vector<SteadyPoint> points;
    points.reserve(part.size());
    for (std::size_t i = 0; i < part.size(); ++i) {
        if (!part[i].time)
            continue;
        const double clock_s =
            std::chrono::duration<double>(part[i].time->time_since_epoch()).count();
        if (points.empty() || clock_s > points.back().clock_s)
            points.push_back({.at = part[i].at,
                              .height_m = part[i].height_m,
                              .clock_s = clock_s,
                              .point = i,
                              .stands = false});
    }
    return points;
}

double median(std::vector<double>& values) {
    const auto middle = values.begin() + static_cast<std::ptrdiff_t>(values.size() / 2);
    std::nth_element(values.begin(), middle, values.end());
    return *middle;
}

/// Whether points `step_s` apart bend from a straight line by little beside the way between them:
/// of two steps in a row the difference, which is noise on straight ground, by its median.
bool is_quiet(const std::vector<SteadyPoint>& points, double step_s) {
    std::vector<double> bends_m;
    std::vector<double> ways_m;
    const auto after = [&](std::size_t from, std::size_t start) {
        while (start < points.size() && points[start].clock_s - points[from].clock_s < step_s)
            ++start;
        return start;
    };
    std::size_t second = 0;
    std::size_t third = 0;
    for (std::size_t first = 0; first < points.size(); ++first) {
        second = after(first, second);
        if (second == points.size())
            break;
        third = after(second, std::max(third, second));
        if (third == points.size())
            break;
        if (points[third].clock_s - points[first].clock_s > 3.0 * step_s)
            continue;
        const std::array<double, 2> one = offset_m(points[first].at, points[second].at);
        const std::array<double, 2> two = offset_m(points[second].at, points[third].at);
        const double way_m = std::hypot(one[0], one[1]);
        if (way_m < slowest_mps * step_s)
            continue;
        ways_m.push_back(way_m);
        for (std::size_t axis = 0; axis < 2; ++axis)
            bends_m.push_back(std::abs(two.at(axis) - one.at(axis)));
    }
    if (ways_m.size() < least_steps)
        return false;
    constexpr double spread = 1.0 / 0.6745; // of normal noise, over the median of its size
    const double bend_m = spread * median(bends_m);
    const double way_m = median(ways_m);
    return 0.5 * bend_m * bend_m <= largest_bend * way_m * way_m;
}

double step_of(const std::vector<SteadyPoint>& points) {
    for (const double step_s : steps_s)
        if (is_quiet(points, step_s))
            return step_s;
    return longest_step_s;
}

/// Longitudes are averaged as differences, so that the 180th meridian does no harm.
std::vector<SteadyPoint> smoothed(const std::vector<SteadyPoint>& fixes, double smoothing_s) {
    std::vector<SteadyPoint> result = fixes;
    std::size_t first = 0;
    std::size_t end = 0;
    for (std::size_t i = 0; i < fixes.size(); ++i) {
        while (fixes[i].clock_s - fixes[first].clock_s > smoothing_s)
            ++first;
        while (end < fixes.size() && fixes[end].clock_s - fixes[i].clock_s <= smoothing_s)
            ++end;
        // As many on either side: at the ends the mean would run ahead or lag behind.
        const std::size_t reach = std::min(i - first, end - 1 - i);
        double lat_deg = 0.0;
        double lon_deg = 0.0;
        double height_m = 0.0;
        std::size_t heights = 0;
        for (std::size_t k = i - reach; k <= i + reach; ++k) {
            lat_deg += fixes[k].at.lat_deg - fixes[i].at.lat_deg;
            lon_deg += eastward_deg(fixes[i].at.lon_deg, fixes[k].at.lon_deg);
            height_m += fixes[k].height_m.value_or(0.0);
            heights += fixes[k].height_m ? 1U : 0U;
        }
        const auto count = static_cast<double>(2 * reach + 1);
        result[i].at.lat_deg = fixes[i].at.lat_deg + lat_deg / count;
        result[i].at.lon_deg = std::remainder(fixes[i].at.lon_deg + lon_deg / count, 360.0);
        if (heights > 0)
            result[i].height_m = height_m / static_cast<double>(heights);
    }
    return result;
}

/// Marks the points from `first` to before `end` among which somebody stays as standing, but for
/// those at both ends that lead to the place and away from it.
void mark_stay(std::vector<SteadyPoint>& points, const std::pair<std::size_t, std::size_t>& part) {
    auto [first, end] = part;
    const Position& start = points[first].at;
    std::array<double, 2> mean_m{0.0, 0.0};
    for (std::size_t i = first; i < end; ++i)
        for (std::size_t axis = 0; axis < 2; ++axis)
            mean_m.at(axis) +=
                offset_m(start, points[i].at).at(axis) / static_cast<double>(end - first);
    const auto leads = [&](std::size_t i) {
        const std::array<double, 2> here_m = offset_m(start, points[i].at);
        return std::hypot(here_m[0] - mean_m[0], here_m[1] - mean_m[1]) > at_rest_m;
    };
    while (first + 1 < end && leads(first))
        ++first;
    while (first + 1 < end && leads(end - 1))
        --end;
    for (std::size_t i = first; i + 1 < end; ++i)
        points[i].stands = true;
}

void mark(std::vector<SteadyPoint>& points, const Stay& stay) {
    std::size_t anchor = 0;
    for (std::size_t i = 1; i <= points.size(); ++i) {
        if (i < points.size() && distance_m(points[anchor].at, points[i].at) <= stay.within_m)
            continue;
        if (points[i - 1].clock_s - points[anchor].clock_s >= stay.for_s)
            mark_stay(points, {anchor, i});
        anchor = i;
    }
    for (std::size_t i = 1; i < points.size(); ++i) {
        // A receiver that pauses by itself leaves one long step.
        const double lasts_s = points[i].clock_s - points[i - 1].clock_s;
        const double step_m = distance_m(points[i - 1].at, points[i].at);
        if (lasts_s >= stay.for_s && step_m * stay.for_s < stay.within_m * lasts_s)
            points[i - 1].stands = true;
    }
}

double plain_length_m(const std::vector<TrackPoint>& part) {
    double sum_m = 0.0;
    for (std::size_t i = 1; i < part.size(); ++i)
        sum_m += distance_m(part[i - 1].at, part[i].at);
    return sum_m;
}

} // namespace

SteadyPart steadied(const std::vector<TrackPoint>& part) {
    std::vector<SteadyPoint> points = timed(part);
    const double step_s = step_of(points);
    points = smoothed(points, smoothing * step_s);
    mark(points, standing);
    mark(points, in_camp);
    return {.points = std::move(points), .step_s = step_s};
}

std::vector<std::size_t> knots(const SteadyPart& part, const std::vector<bool>& breaks) {
    const std::vector<SteadyPoint>& points = part.points;
    std::vector<std::size_t> knots;
    if (points.empty())
        return knots;
    knots.push_back(0);
    for (std::size_t i = 1; i < points.size(); ++i) {
        const bool changes = i + 1 == points.size() || points[i].stands != points[i - 1].stands ||
                             (!breaks.empty() && breaks[i]);
        const bool due = points[i].clock_s - points[knots.back()].clock_s >= part.step_s;
        if (changes || (due && !points[i - 1].stands))
            knots.push_back(i);
    }
    return knots;
}

std::optional<double> moving_time_s(const Track& track) {
    std::optional<double> sum_s;
    for (const std::vector<TrackPoint>& part : track.parts) {
        const std::vector<SteadyPoint> points = steadied(part).points;
        for (std::size_t i = 1; i < points.size(); ++i)
            sum_s = sum_s.value_or(0.0) +
                    (points[i - 1].stands ? 0.0 : points[i].clock_s - points[i - 1].clock_s);
    }
    return sum_s;
}

std::optional<double> steady_length_m(const Track& track) {
    double sum_m = 0.0;
    bool known = false;
    const TrackPoint* last = nullptr;
    for (const std::vector<TrackPoint>& part : track.parts) {
        if (part.empty())
            continue;
        if (last != nullptr)
            sum_m += distance_m(last->at, part.front().at);
        last = &part.back();
        const SteadyPart steady = steadied(part);
        const std::vector<SteadyPoint>& points = steady.points;
        if (points.size() < 2) {
            sum_m += plain_length_m(part);
            continue;
        }
        known = true;
        const std::vector<std::size_t> at = knots(steady, {});
        for (std::size_t i = 1; i < at.size(); ++i)
            sum_m += distance_m(points[at[i - 1]].at, points[at[i]].at);
    }
    return known ? std::optional(sum_m) : std::nullopt;
}

} // namespace tumpline::geo
