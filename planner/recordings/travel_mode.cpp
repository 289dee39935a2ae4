#include "planner/recordings/travel_mode.h"

#include "geo/profiles/track_summary.h"

#include <fmt/format.h>

#include <algorithm>
#include <chrono>
#include <cmath>
#include <cstddef>

namespace tumpline::planner {

namespace {

constexpr double sample_m = 25.0;
constexpr double level_m = 0.3;            // a lake in a raster is one height, a meadow is not
constexpr double shortest_level_m = 300.0; // shorter ones are ponds beside a path, or chance
constexpr double fastest_paddle_mps = 15.0 / 3.6; // nobody paddles so; a road or a ferry
constexpr double slowest_river_mps = 6.5 / 3.6;   // faster than anybody walks under a pack
constexpr double shortest_river_m = 1000.0;
constexpr double bridge_m = 75.0; // two waters nearer than that are one

/// Seconds since the first time stamp at each point of the joined line; empty where unknown.
std::vector<std::optional<double>> clock_s(const geo::Track& track) {
    std::vector<std::optional<double>> clock;
    std::optional<geo::Instant> first;
    for (const std::vector<geo::TrackPoint>& part : track.parts)
        for (const geo::TrackPoint& point : part) {
            if (point.time)
                first = first.value_or(*point.time);
            clock.push_back(
                point.time
                    ? std::optional(std::chrono::duration<double>(*point.time - *first).count())
                    : std::nullopt);
        }
    return clock;
}

/// Longest run of samples from `first` that stays level; its end, one past the last.
std::size_t level_end(const std::vector<std::optional<double>>& heights, std::size_t first) {
    if (!heights[first])
        return first;
    double low_m = *heights[first];
    double high_m = low_m;
    std::size_t end = first + 1;
    for (; end < heights.size() && heights[end]; ++end) {
        low_m = std::min(low_m, *heights[end]);
        high_m = std::max(high_m, *heights[end]);
        if (high_m - low_m > level_m)
            break;
    }
    return end;
}

std::string speed_words(double speed_mps) {
    return fmt::format("{:.1f} km/h", speed_mps * 3.6);
}

/// Level parts of the line, without those that the time stamps speak against.
std::vector<GroundPart> level_parts(const geo::Track& track,
                                    const geo::Polyline& line,
                                    const std::vector<std::optional<double>>& heights) {
    std::vector<GroundPart> waters;
    const double step_m = line.length_m() / static_cast<double>(heights.size() - 1);
    std::size_t first = 0;
    while (first < heights.size()) {
        const std::size_t end = level_end(heights, first);
        const double length_m = end > first ? static_cast<double>(end - 1 - first) * step_m : 0.0;
        if (length_m < shortest_level_m) {
            ++first;
            continue;
        }
        GroundPart part{.from_m = static_cast<double>(first) * step_m,
                        .to_m = static_cast<double>(end - 1) * step_m,
                        .afloat = true,
                        .why = fmt::format("the ground is level over {:.0f} m", length_m)};
        first = end;
        if (!waters.empty() && part.from_m - waters.back().to_m < bridge_m) {
            waters.back().to_m = part.to_m;
            continue;
        }
        const std::optional<double> speed_mps = recorded_speed_mps(track, line, part);
        if (speed_mps && *speed_mps > fastest_paddle_mps)
            continue;
        if (speed_mps)
            part.why += fmt::format(" and was passed at {}", speed_words(*speed_mps));
        waters.push_back(std::move(part));
    }
    return waters;
}

/// Whether a recorded track never rises and is too fast for feet.
std::optional<GroundPart> whole_river(const geo::Track& track,
                                      const geo::Polyline& line,
                                      const std::vector<std::optional<double>>& heights) {
    const std::optional<double> moving_s = geo::moving_time_s(track);
    if (!moving_s || *moving_s <= 0.0 || line.length_m() < shortest_river_m)
        return std::nullopt;
    const double speed_mps = line.length_m() / *moving_s;
    if (speed_mps < slowest_river_mps || speed_mps > fastest_paddle_mps)
        return std::nullopt;
    std::vector<double> known;
    for (const std::optional<double>& height_m : heights)
        if (height_m)
            known.push_back(*height_m);
    if (known.size() < heights.size() / 2)
        return std::nullopt;
    const geo::Climb climb = geo::climb(known, 5.0);
    if (climb.ascent_m > 0.0)
        return std::nullopt;
    return GroundPart{.from_m = 0.0,
                      .to_m = line.length_m(),
                      .afloat = true,
                      .why = fmt::format("it never rises and was passed at {}, too fast for feet",
                                         speed_words(speed_mps))};
}

} // namespace

std::optional<double>
recorded_speed_mps(const geo::Track& track, const geo::Polyline& line, const GroundPart& part) {
    const std::vector<std::optional<double>> clock = clock_s(track);
    std::optional<std::size_t> first;
    std::optional<std::size_t> last;
    for (std::size_t i = 0; i < clock.size() && i < line.along_m().size(); ++i) {
        const double along_m = line.along_m()[i];
        if (!clock[i] || along_m < part.from_m || along_m > part.to_m)
            continue;
        first = first.value_or(i);
        last = i;
    }
    if (!first || *clock[*last] - *clock[*first] <= 0.0)
        return std::nullopt;
    return (line.along_m()[*last] - line.along_m()[*first]) / (*clock[*last] - *clock[*first]);
}

std::vector<std::optional<double>> ground_heights(const TracedLine& traced,
                                                  geo::Elevation* elevation) {
    const double length_m = traced.line.length_m();
    const auto steps = static_cast<std::size_t>(std::max(1.0, std::round(length_m / sample_m)));
    std::vector<std::optional<double>> heights(steps + 1);
    std::size_t known = 0;
    for (std::size_t i = 0; elevation != nullptr && i <= steps; ++i) {
        heights[i] = elevation->at(
            traced.line.at(static_cast<double>(i) * length_m / static_cast<double>(steps)));
        known += heights[i] ? 1U : 0U;
    }
    if (2 * known >= heights.size() || traced.heights.empty())
        return heights;
    // Some programs write 0 for a height that they do not know.
    if (std::all_of(traced.heights.begin(), traced.heights.end(), [](const auto& height_m) {
            return height_m.value_or(0.0) == 0.0;
        }))
        return heights;
    const std::vector<double>& along = traced.line.along_m();
    std::size_t point = 0;
    for (std::size_t i = 0; i <= steps; ++i) {
        const double here_m = static_cast<double>(i) * length_m / static_cast<double>(steps);
        while (point + 2 < along.size() && along[point + 1] < here_m)
            ++point;
        const std::size_t next = std::min(point + 1, along.size() - 1);
        const double span_m = along[next] - along[point];
        if (!traced.heights[point] || !traced.heights[next]) {
            heights[i] = std::nullopt;
            continue;
        }
        const double share =
            span_m > 0.0 ? std::clamp((here_m - along[point]) / span_m, 0.0, 1.0) : 0.0;
        heights[i] = std::lerp(*traced.heights[point], *traced.heights[next], share);
    }
    return heights;
}

std::vector<GroundPart>
afloat_or_on_foot(const geo::Track& track, const TracedLine& traced, geo::Elevation* elevation) {
    const std::vector<std::optional<double>> heights = ground_heights(traced, elevation);
    const double length_m = traced.line.length_m();
    std::vector<GroundPart> parts;
    const auto on_foot = [&](double from_m, double to_m) {
        parts.push_back(
            {.from_m = from_m, .to_m = to_m, .afloat = false, .why = "nothing tells of water"});
    };
    double done_m = 0.0;
    for (GroundPart& water : level_parts(track, traced.line, heights)) {
        if (water.from_m - done_m < bridge_m)
            water.from_m = done_m;
        else
            on_foot(done_m, water.from_m);
        if (length_m - water.to_m < bridge_m)
            water.to_m = length_m;
        done_m = water.to_m;
        parts.push_back(std::move(water));
    }
    if (parts.empty())
        if (std::optional<GroundPart> river = whole_river(track, traced.line, heights))
            return {*std::move(river)};
    if (done_m < length_m || parts.empty())
        on_foot(done_m, length_m);
    return parts;
}

} // namespace tumpline::planner
