#include "planner/recordings/travel_mode.h"

#include "geo/lines/geodesic.h"
#include "geo/tracks/steady_way.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <cstddef>

namespace tumpline::planner {

namespace {

constexpr double sample_m = 25.0;
constexpr double level_m = 0.3;            // a lake in a raster is one height, a meadow is not
constexpr double shortest_level_m = 300.0; // shorter ones are ponds beside a path, or chance
constexpr double reach_m = 150.0;          // who stays nearer than that rests, and goes nowhere
// What boats do on still water: 4 knots held by the trained, a raft into a headwind.
constexpr double fastest_boat_mps = 7.4 / 3.6;
constexpr double slowest_boat_mps = 1.0 / 3.6;
constexpr double shortest_river_m = 1000.0;
constexpr double bridge_m = 75.0;    // two waters nearer than that are one
constexpr double to_a_side_m = 30.0; // as far to both sides a water is level too
constexpr double shore_m = 300.0;    // within that of an end of a water lies a shore,
constexpr double shore_rise_m = 1.0; // which is at least so high or low

/// The way and the time on the move up to each point of the joined line, wander and halts left out;
/// empty where a part has no times.
struct MovingClock {
    std::vector<std::optional<double>> way_m;
    std::vector<std::optional<double>> moving_s;
};

MovingClock moving_clock(const geo::Track& track) {
    MovingClock clock;
    double way_m = 0.0;
    double moving_s = 0.0;
    for (const std::vector<geo::TrackPoint>& part : track.parts) {
        const std::size_t first = clock.way_m.size();
        clock.way_m.resize(first + part.size());
        clock.moving_s.resize(first + part.size());
        const geo::SteadyPart steady = geo::steadied(part);
        const std::vector<geo::SteadyPoint>& points = steady.points;
        if (points.size() < 2)
            continue;
        const std::vector<std::size_t> knots = geo::knots(steady, {});
        for (std::size_t k = 0; k < knots.size(); ++k) {
            if (k > 0 && !points[knots[k] - 1].stands) {
                way_m += geo::distance_m(points[knots[k - 1]].at, points[knots[k]].at);
                moving_s += points[knots[k]].clock_s - points[knots[k - 1]].clock_s;
            }
            clock.way_m[first + points[knots[k]].point] = way_m;
            clock.moving_s[first + points[knots[k]].point] = moving_s;
        }
    }
    return clock;
}

/// What time stamps tell of a part: nothing without two of them.
struct PartMotion {
    double way_m;
    double moving_s;
};

std::optional<PartMotion>
motion_over(const MovingClock& clock, const geo::Polyline& line, const GroundPart& part) {
    std::optional<std::size_t> first;
    std::optional<std::size_t> last;
    for (std::size_t i = 0; i < clock.way_m.size() && i < line.along_m().size(); ++i) {
        const double along_m = line.along_m()[i];
        if (!clock.way_m[i] || along_m < part.from_m || along_m > part.to_m)
            continue;
        first = first.value_or(i);
        last = i;
    }
    if (!first || first == last)
        return std::nullopt;
    return PartMotion{*clock.way_m[*last] - *clock.way_m[*first],
                      *clock.moving_s[*last] - *clock.moving_s[*first]};
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

/// The height of the ground every 25 m along, and whether rasters tell it.
struct Ground {
    std::vector<std::optional<double>> heights;
    bool of_raster;
};

Ground ground_along(const TracedLine& traced, geo::Elevation* elevation) {
    const double length_m = traced.line.length_m();
    const auto steps = static_cast<std::size_t>(std::max(1.0, std::round(length_m / sample_m)));
    Ground ground{.heights = std::vector<std::optional<double>>(steps + 1), .of_raster = false};
    std::vector<std::optional<double>>& heights = ground.heights;
    std::size_t known = 0;
    for (std::size_t i = 0; elevation != nullptr && i <= steps; ++i) {
        heights[i] = elevation->at(
            traced.line.at(static_cast<double>(i) * length_m / static_cast<double>(steps)));
        known += heights[i] ? 1U : 0U;
    }
    ground.of_raster = 2 * known >= heights.size();
    if (ground.of_raster || traced.heights.empty())
        return ground;
    // Some programs write 0 for a height that they do not know.
    if (std::all_of(traced.heights.begin(), traced.heights.end(), [](const auto& height_m) {
            return height_m.value_or(0.0) == 0.0;
        }))
        return ground;
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
    return ground;
}

/// The ground along a line, and where its heights come from.
struct GroundLine {
    const geo::Track& track;
    const TracedLine& traced;
    geo::Elevation* elevation;
    const Ground& ground;
    MovingClock clock;

    [[nodiscard]] double step_m() const {
        return traced.line.length_m() / static_cast<double>(ground.heights.size() - 1);
    }
};

/// Distances along the line at which a part is looked at: its start and each `sample_m` after it.
std::vector<double> samples_of(const GroundPart& part) {
    std::vector<double> samples_m;
    const double steps = std::floor(std::max(part.to_m - part.from_m, 0.0) / sample_m);
    for (std::size_t k = 0; k <= static_cast<std::size_t>(steps); ++k)
        samples_m.push_back(part.from_m + sample_m * static_cast<double>(k));
    return samples_m;
}

/// How far the line gets from the start of the part.
double reaches_m(const geo::Polyline& line, const GroundPart& part) {
    const geo::Position start = line.at(part.from_m);
    double far_m = geo::distance_m(start, line.at(part.to_m));
    for (const double along_m : samples_of(part))
        far_m = std::max(far_m, geo::distance_m(start, line.at(along_m)));
    return far_m;
}

/// Whether the raster is as level to both sides of the line, on most of the part.
bool level_beside(const GroundLine& here, const GroundPart& part) {
    std::size_t level = 0;
    std::size_t all = 0;
    for (const double along_m : samples_of(part)) {
        const geo::Position at = here.traced.line.at(along_m);
        const std::optional<double> here_m = here.elevation->at(at);
        bool both = here_m.has_value();
        for (const double side_deg : {-90.0, 90.0}) {
            const std::optional<double> side_m = here.elevation->at(geo::destination(
                at, here.traced.line.bearing_deg(along_m) + side_deg, to_a_side_m));
            both = both && side_m && std::abs(*side_m - *here_m) <= level_m;
        }
        level += both ? 1U : 0U;
        ++all;
    }
    return 2 * level >= all;
}

/// Whether the line leads up or down to the level part, or from it.
bool has_a_shore(const GroundLine& here, const GroundPart& part) {
    const std::vector<std::optional<double>>& heights = here.ground.heights;
    const auto index = [&](double along_m) {
        return std::min(heights.size() - 1,
                        static_cast<std::size_t>(std::lround(along_m / here.step_m())));
    };
    const std::size_t first = index(part.from_m);
    const std::size_t last = index(part.to_m);
    const auto reach = static_cast<std::size_t>(shore_m / here.step_m());
    const auto differs = [&](std::size_t at, std::size_t from) {
        return heights[at] && heights[from] &&
               std::abs(*heights[at] - *heights[from]) >= shore_rise_m;
    };
    for (std::size_t i = first > reach ? first - reach : 0; i < first; ++i)
        if (differs(i, first))
            return true;
    for (std::size_t i = last + 1; i < std::min(heights.size(), last + reach + 1); ++i)
        if (differs(i, last))
            return true;
    return false;
}

/// Whether a level part can be a water; its `why` says so or why not.
void judge(GroundPart& part, const GroundLine& here) {
    part.afloat = false;
    const std::string level = fmt::format("level over {:.0f} m", part.to_m - part.from_m);
    const std::optional<PartMotion> motion = motion_over(here.clock, here.traced.line, part);
    if (reaches_m(here.traced.line, part) < reach_m ||
        (motion && motion->way_m < shortest_level_m)) {
        part.why = "it stays about one place, at rest";
        return;
    }
    std::string passed;
    if (motion) {
        const double speed_mps = motion->moving_s > 0.0 ? motion->way_m / motion->moving_s : 0.0;
        passed = fmt::format(" at {}", speed_words(speed_mps));
        if (speed_mps > fastest_boat_mps || speed_mps < slowest_boat_mps) {
            part.why = fmt::format("{}{}, {}",
                                   level,
                                   passed,
                                   speed_mps > fastest_boat_mps ? "too fast for a boat there"
                                                                : "too slowly for a boat");
            return;
        }
    }
    if (here.ground.of_raster) {
        part.afloat = level_beside(here, part);
        part.why = part.afloat
                       ? fmt::format("{} and to both sides{}", level, passed)
                       : fmt::format("{}, but not to both sides: no water that is known", level);
        return;
    }
    part.afloat = part.guess = has_a_shore(here, part);
    part.why = part.afloat ? fmt::format("{}{}: a guess", level, passed)
                           : fmt::format("{}, and nothing tells of water or of a shore", level);
}

/// Level parts of the line, those that can be a water and those that cannot.
std::vector<GroundPart> level_parts(const GroundLine& here) {
    const std::vector<std::optional<double>>& heights = here.ground.heights;
    std::vector<GroundPart> parts;
    std::size_t first = 0;
    while (first < heights.size()) {
        const std::size_t end = level_end(heights, first);
        const double length_m =
            end > first ? static_cast<double>(end - 1 - first) * here.step_m() : 0.0;
        if (length_m < shortest_level_m) {
            ++first;
            continue;
        }
        GroundPart part{.from_m = static_cast<double>(first) * here.step_m(),
                        .to_m = static_cast<double>(end - 1) * here.step_m(),
                        .afloat = false,
                        .guess = false,
                        .why = {}};
        first = end;
        judge(part, here);
        if (part.afloat && !parts.empty() && parts.back().afloat &&
            part.from_m - parts.back().to_m < bridge_m)
            parts.back().to_m = part.to_m;
        else
            parts.push_back(std::move(part));
    }
    return parts;
}

/// What is said of a recorded track that never rises and is too fast for a walk; empty otherwise.
std::string river_or_ride(const GroundLine& here) {
    const std::optional<PartMotion> motion = motion_over(here.clock,
                                                         here.traced.line,
                                                         {.from_m = 0.0,
                                                          .to_m = here.traced.line.length_m(),
                                                          .afloat = false,
                                                          .guess = false,
                                                          .why = {}});
    if (!motion || motion->moving_s <= 0.0 || motion->way_m < shortest_river_m)
        return {};
    const double speed_mps = motion->way_m / motion->moving_s;
    if (speed_mps < fastest_walk_mps)
        return {};
    std::vector<double> known;
    for (const std::optional<double>& height_m : here.ground.heights)
        if (height_m)
            known.push_back(*height_m);
    if (known.size() < here.ground.heights.size() / 2 || geo::climb(known, 5.0).ascent_m > 0.0)
        return fmt::format("nothing tells of water, and {} is too fast for a walk: a run or a ride",
                           speed_words(speed_mps));
    return fmt::format("it never rises and was passed at {}: a river, a run or a ride, and nothing "
                       "in the file tells which",
                       speed_words(speed_mps));
}

} // namespace

std::vector<std::optional<double>> ground_heights(const TracedLine& traced,
                                                  geo::Elevation* elevation) {
    return ground_along(traced, elevation).heights;
}

std::vector<GroundPart>
afloat_or_on_foot(const geo::Track& track, const TracedLine& traced, geo::Elevation* elevation) {
    const Ground ground = ground_along(traced, elevation);
    const GroundLine here{.track = track,
                          .traced = traced,
                          .elevation = elevation,
                          .ground = ground,
                          .clock = moving_clock(track)};
    const double length_m = traced.line.length_m();
    std::vector<GroundPart> parts;
    std::string level_but; // of what lies between two waters
    const auto on_foot = [&](double from_m, double to_m) {
        parts.push_back({.from_m = from_m,
                         .to_m = to_m,
                         .afloat = false,
                         .guess = false,
                         .why = level_but.empty() ? "nothing tells of water" : level_but});
        level_but.clear();
    };
    double done_m = 0.0;
    for (GroundPart& level : level_parts(here)) {
        if (!level.afloat) {
            level_but = level_but.empty() ? level.why : level_but;
            continue;
        }
        if (level.from_m - done_m < bridge_m)
            level.from_m = done_m;
        else
            on_foot(done_m, level.from_m);
        level_but.clear();
        if (length_m - level.to_m < bridge_m)
            level.to_m = length_m;
        done_m = level.to_m;
        parts.push_back(std::move(level));
    }
    if (parts.empty() && level_but.empty())
        level_but = river_or_ride(here);
    if (done_m < length_m || parts.empty())
        on_foot(done_m, length_m);
    return parts;
}

} // namespace tumpline::planner
