#include "geo/tracks/track_repair.h"

#include "geo/lines/geodesic.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <numbers>
#include <string>
#include <utility>

namespace tumpline::geo {

namespace {

using Points = std::vector<TrackPoint>;

/// Difference of longitudes the short way round, in [-180, 180].
double turn_deg(const Position& from, const Position& to) {
    return std::remainder(to.lon_deg - from.lon_deg, 360.0);
}

bool same_place(const Position& one, const Position& other) {
    constexpr double apart_deg = 1e-9; // a tenth of a millimetre
    if (std::abs(one.lat_deg - other.lat_deg) > apart_deg)
        return false;
    return std::abs(turn_deg(one, other)) <= apart_deg ||
           std::abs(one.lat_deg) >= 90.0 - apart_deg; // every meridian ends at the pole
}

/// Never shorter than the geodesic by more than some percent where the two are not far apart, and
/// cheap: to look for suspects.
double rough_m(const Position& from, const Position& to) {
    constexpr double degree_m = 111320.0;
    const double north_m = degree_m * (to.lat_deg - from.lat_deg);
    const double cosine = std::cos(0.5 * (from.lat_deg + to.lat_deg) * std::numbers::pi / 180.0);
    const double east_m = degree_m * cosine * turn_deg(from, to);
    return std::sqrt(north_m * north_m + east_m * east_m);
}

/// Seconds from one point to the next; empty if a time is missing or none passes.
std::optional<double> seconds_between(const TrackPoint& from, const TrackPoint& to) {
    if (!from.time || !to.time || *to.time <= *from.time)
        return std::nullopt;
    return std::chrono::duration<double>(*to.time - *from.time).count();
}

std::size_t drop_void_heights(Points& points, const RepairRules& rules) {
    std::size_t dropped = 0;
    for (TrackPoint& point : points) {
        if (point.height_m &&
            (*point.height_m > rules.highest_m || *point.height_m < rules.lowest_m)) {
            point.height_m.reset(); // -32768, -9999 and their like are beyond the bounds too
            ++dropped;
        }
    }
    return dropped;
}

std::size_t drop_zeros(Points& points) {
    std::vector<double> heights_m;
    for (const TrackPoint& point : points)
        if (point.height_m)
            heights_m.push_back(*point.height_m);
    if (!zero_means_unknown(heights_m))
        return 0;
    std::size_t dropped = 0;
    for (TrackPoint& point : points)
        if (point.height_m == 0.0) {
            point.height_m.reset();
            ++dropped;
        }
    return dropped;
}

/// A stamp that jumps ahead of the two that follow it, while these go on from what was before.
bool jumps_ahead(const std::array<Instant, 3>& coming, const std::optional<Instant>& latest) {
    return coming[1] < coming[0] && coming[2] < coming[0] && coming[1] <= coming[2] &&
           (!latest || *latest <= coming[1]);
}

std::size_t drop_backward_times(Points& points, std::optional<Instant>& latest) {
    std::size_t dropped = 0;
    for (std::size_t index = 0; index < points.size(); ++index) {
        std::optional<Instant>& time = points[index].time;
        if (!time)
            continue;
        const bool ahead =
            index + 2 < points.size() && points[index + 1].time && points[index + 2].time &&
            jumps_ahead({*time, *points[index + 1].time, *points[index + 2].time}, latest);
        if (ahead || (latest && *time < *latest)) {
            time.reset();
            ++dropped;
        } else {
            latest = time;
        }
    }
    return dropped;
}

/// Leaves one of points at the same place, the first, with what only the others know.
std::size_t drop_duplicates(Points& points) {
    std::size_t kept = 0;
    for (std::size_t index = 1; index < points.size(); ++index) {
        if (!same_place(points[kept].at, points[index].at)) {
            points[++kept] = points[index];
            continue;
        }
        if (!points[kept].height_m)
            points[kept].height_m = points[index].height_m;
        if (!points[kept].time)
            points[kept].time = points[index].time;
    }
    const std::size_t left = points.empty() ? 0 : kept + 1;
    const std::size_t dropped = points.size() - left;
    points.resize(left);
    return dropped;
}

/// A point with its neighbours: the way out to it, the way back, and the way that leaves it out.
struct Detour {
    double out_m;
    double back_m;
    double straight_m;
};

/// The typical step around point `index` of `points`, without the two that touch it: the upper
/// median of four on each side. Empty at the ends of short lines.
std::optional<double> spacing_m(const Points& points, std::size_t index) {
    std::array<double, 8> steps{};
    std::size_t count = 0;
    const auto add = [&](std::size_t step) {
        steps[count++] = distance_m(points[step].at, points[step + 1].at);
    };
    for (std::size_t back = 2; back <= 5 && back <= index; ++back)
        add(index - back);
    for (std::size_t step = index + 1; step < index + 5 && step + 1 < points.size(); ++step)
        add(step);
    if (count < 2)
        return std::nullopt;
    double* const middle = steps.data() + count / 2;
    std::nth_element(steps.data(), middle, steps.data() + count);
    return *middle;
}

/// Whether point `index`, reached from `before`, is a spike; `points` from `index` on are as read.
bool is_spike(const Points& points,
              std::size_t index,
              const TrackPoint& before,
              const RepairRules& rules) {
    const TrackPoint& point = points[index];
    const TrackPoint& after = points[index + 1];
    const std::optional<double> out_s = seconds_between(before, point);
    const std::optional<double> back_s = seconds_between(point, after);
    const bool timed = out_s && back_s;
    const double least_m =
        timed ? std::max(rules.timed_spike_m, rules.reachable_mps * *out_s) : rules.plain_spike_m;
    if (rough_m(before.at, point.at) < 0.9 * least_m) // most points end here
        return false;
    const Detour way{.out_m = distance_m(before.at, point.at),
                     .back_m = distance_m(point.at, after.at),
                     .straight_m = distance_m(before.at, after.at)};
    if (timed)
        return way.out_m > least_m && way.back_m > rules.timed_spike_m &&
               way.back_m > rules.reachable_mps * *back_s &&
               way.straight_m <= rules.reachable_mps * (*out_s + *back_s) &&
               2.0 * way.straight_m < way.out_m + way.back_m;
    const double shorter_m = std::min(way.out_m, way.back_m);
    if (shorter_m <= least_m || shorter_m < rules.spike_return * way.straight_m)
        return false;
    const std::optional<double> usual_m = spacing_m(points, index);
    return usual_m && shorter_m > rules.spike_spacing * *usual_m;
}

std::size_t drop_spikes(Points& points, const RepairRules& rules) {
    std::vector<std::size_t> spikes; // rare: found first, so that the neighbours are as read
    std::size_t before = 0;
    for (std::size_t index = 1; index + 1 < points.size(); ++index) {
        if (is_spike(points, index, points[before], rules))
            spikes.push_back(index);
        else
            before = index;
    }
    if (spikes.empty())
        return 0;
    std::size_t kept = spikes.front();
    auto next = spikes.begin();
    for (std::size_t index = spikes.front(); index < points.size(); ++index) {
        if (next != spikes.end() && *next == index)
            ++next;
        else
            points[kept++] = points[index];
    }
    points.resize(kept);
    return spikes.size();
}

/// Where the last point of a part and the first of the next are counted too.
struct Seen {
    std::optional<Position> last;
    bool new_part = true;
};

void count_crossings(const Points& points, Seen& seen, Repairs& repairs) {
    constexpr double gap_m = 1.0; // parts whose ends meet were only written apart
    for (const TrackPoint& point : points) {
        if (seen.last) {
            if (std::abs(point.at.lon_deg - seen.last->lon_deg) > 180.0)
                ++repairs.antimeridian;
            if (seen.new_part && distance_m(*seen.last, point.at) > gap_m)
                ++repairs.joined_parts;
        }
        seen = {.last = point.at, .new_part = false};
    }
    seen.new_part = true;
}

/// Length of a track, gaps included; rough, but never less than what is sampled by more than some
/// percent. Most tracks need no more than the sums of their differences, which are never less.
double rough_length_m(const Track& track) {
    constexpr double degree_m = 111700.0; // of a meridian at the pole, the longest there is
    constexpr double short_m = 1e6;
    double sum_deg = 0.0;
    double sum_m = 0.0;
    const TrackPoint* last = nullptr;
    for (const Points& part : track.parts)
        for (const TrackPoint& point : part) {
            if (last != nullptr)
                sum_deg += std::abs(point.at.lat_deg - last->at.lat_deg) +
                           std::abs(point.at.lon_deg - last->at.lon_deg);
            last = &point;
        }
    if (sum_deg * degree_m < short_m)
        return sum_deg * degree_m;
    last = nullptr;
    for (const Points& part : track.parts)
        for (const TrackPoint& point : part) {
            if (last != nullptr)
                sum_m += rough_m(last->at, point.at);
            last = &point;
        }
    return sum_m;
}

void refuse_too_long(const TrackFile& tracks) {
    double sum_m = 0.0;
    for (const Track& track : tracks.tracks)
        sum_m += rough_length_m(track);
    if (sum_m > most_length_m)
        throw InputError({{.file = tracks.file.string(),
                           .place = "",
                           .found = fmt::format("lines of {:.0f} km together", 1e-3 * sum_m),
                           .expected = fmt::format("{:.0f} km at most", 1e-3 * most_length_m),
                           .advice = "look for points far from the way, or split the file"}});
}

std::size_t places(const Track& track) {
    std::size_t count = 0;
    const TrackPoint* last = nullptr;
    for (const Points& part : track.parts) {
        for (const TrackPoint& point : part) {
            if (last == nullptr || !same_place(last->at, point.at))
                ++count;
            last = &point;
            if (count > 1)
                return count;
        }
    }
    return count;
}

constexpr std::size_t most_left_out = 100;

/// Heights of named points that no ground has go, as those of tracks do.
void drop_impossible_heights(TrackFile& tracks) {
    const RepairRules rules;
    for (Waypoint& waypoint : tracks.waypoints) {
        const std::optional<double> height_m = waypoint.height_m;
        if (!height_m || (*height_m <= rules.highest_m && *height_m >= rules.lowest_m))
            continue;
        waypoint.height_m.reset();
        if (tracks.left_out.size() < most_left_out)
            tracks.left_out.push_back(
                fmt::format("the height {:.6g} m of the named point {}", *height_m, waypoint.name));
    }
}

} // namespace

bool zero_means_unknown(const std::vector<double>& heights_m) {
    constexpr double inland_m = 30.0;
    const auto zeros = std::count(heights_m.begin(), heights_m.end(), 0.0);
    const auto inland = std::count_if(
        heights_m.begin(), heights_m.end(), [](double height_m) { return height_m >= inland_m; });
    return zeros > 0 && inland > 0 && static_cast<std::size_t>(zeros + inland) == heights_m.size();
}

void repair(Track& track, const RepairRules& rules) {
    Repairs& repairs = track.repairs;
    std::size_t heights = 0;
    std::size_t missing = 0;
    std::optional<Instant> latest;
    for (Points& part : track.parts) {
        for (const TrackPoint& point : part)
            ++(point.height_m ? heights : missing);
        repairs.void_heights += drop_void_heights(part, rules) + drop_zeros(part);
        repairs.backward_times += drop_backward_times(part, latest);
        repairs.duplicates += drop_duplicates(part);
        repairs.spikes += drop_spikes(part, rules);
        repairs.duplicates += drop_duplicates(part); // a spike left out may have stood between two
    }
    if (heights > 0)
        repairs.missing_heights += missing;
    std::erase_if(track.parts, [](const Points& part) { return part.empty(); });
    Seen seen;
    for (const Points& part : track.parts)
        count_crossings(part, seen, repairs);
}

void finish(TrackFile& tracks, const std::optional<Problem>& first_invalid) {
    std::size_t number = 0;
    std::optional<std::string> short_track;
    std::erase_if(tracks.tracks, [&](Track& track) {
        ++number;
        repair(track);
        const std::size_t count = places(track);
        if (count > 1)
            return false;
        const std::string what = fmt::format("track {}{}{} with {}",
                                             number,
                                             track.name.empty() ? "" : " ",
                                             track.name,
                                             count == 0 ? "no usable point" : "only one place");
        if (!short_track)
            short_track = what;
        if (tracks.left_out.size() < most_left_out)
            tracks.left_out.push_back(what);
        return true;
    });
    refuse_too_long(tracks);
    drop_impossible_heights(tracks);
    if (!tracks.tracks.empty() || !tracks.waypoints.empty())
        return;
    if (first_invalid)
        throw InputError({*first_invalid});
    throw InputError({{.file = tracks.file.string(),
                       .place = "",
                       .found = short_track.value_or("no line and no point"),
                       .expected = "a line with at least two different places, or a named point",
                       .advice = "check that the whole track was exported"}});
}

} // namespace tumpline::geo
