#include "planner/recordings/recorded_motion.h"

#include "geo/tracks/steady_way.h"
#include "planner/recordings/travel_mode.h"
#include "planner/route/place_words.h"
#include "planner/route/traced_line.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <chrono>
#include <cmath>
#include <iterator>
#include <string_view>
#include <utility>

namespace tumpline::planner {

namespace {

constexpr double window_s = 60.0;
constexpr double shortest_window_s = 15.0;
constexpr double fastest_mps = 15.0 / 3.6;
constexpr double river_falls_m = 3.0; // more than heights of a receiver, averaged, wander

geo::Instant instant_of(double clock_s) {
    return geo::Instant(std::chrono::milliseconds(std::llround(clock_s * 1000.0)));
}

/// The steadied points of a part, with the way of travel at each.
struct MotionPart {
    geo::SteadyPart steady;
    std::vector<Motion> motions;
};

bool on_foot(Motion motion) {
    return motion == Motion::on_foot || motion == Motion::carrying;
}

/// Speeds with how long they lasted, the slowest first.
double median_speed_mps(std::vector<std::pair<double, double>> speeds) {
    std::sort(speeds.begin(), speeds.end());
    double half_s = 0.0;
    for (const auto& [speed_mps, lasts_s] : speeds)
        half_s += 0.5 * lasts_s;
    for (const auto& [speed_mps, lasts_s] : speeds)
        if ((half_s -= lasts_s) <= 0.0)
            return speed_mps;
    return 0.0;
}

/// Makes runs of the timed parts of one track.
class Reader {
  public:
    Reader(Recorded& recorded, geo::Elevation* elevation)
        : recorded_(recorded), elevation_(elevation) {}

    void read(const geo::Track& track);

  private:
    [[nodiscard]] std::vector<GroundPart> ways(const geo::Track& track,
                                               const TracedLine& traced) const;
    [[nodiscard]] Motion
    motion_on(const geo::Track& track, const TracedLine& traced, const GroundPart& part);
    [[nodiscard]] std::vector<MotionPart> timed_parts(const geo::Track& track,
                                                      const TracedLine& traced,
                                                      const std::vector<GroundPart>& parts);
    void read_part(const MotionPart& part);
    void lay_line(Run& run, const MotionPart& part, const std::vector<std::size_t>& knots) const;
    void mark_ends();
    [[nodiscard]] std::string no_walk(const geo::Track& track) const;
    [[nodiscard]] TrackReading reading(const geo::Track& track,
                                       const std::vector<GroundPart>& parts) const;
    void leave_out(const geo::Track& track, std::string why);
    void keep();

    Recorded& recorded_;
    geo::Elevation* elevation_;
    // of the track that is being read
    std::vector<Run> runs_;
    std::vector<Halt> halts_;
    std::vector<std::pair<double, double>> foot_speeds_; ///< with how long each lasted
    double too_fast_s_ = 0.0;
    double unsure_s_ = 0.0;
};

std::vector<GroundPart> Reader::ways(const geo::Track& track, const TracedLine& traced) const {
    std::optional<Travel> travel = travel_from_type(track.type);
    if (!travel)
        travel = travel_from_name(track.name);
    if (!travel)
        return afloat_or_on_foot(track, traced, elevation_);
    return {{.from_m = 0.0,
             .to_m = traced.line.length_m(),
             .afloat = *travel == Travel::paddle,
             .guess = false,
             .why = travel_from_type(track.type) ? "its type tells so" : "its name tells so"}};
}

Motion
Reader::motion_on(const geo::Track& track, const TracedLine& traced, const GroundPart& part) {
    const std::optional<Travel> reported = travel_from_type(track.type);
    if (part.guess)
        return Motion::unsure;
    if (!part.afloat)
        return reported.value_or(travel_from_name(track.name).value_or(Travel::walk)) ==
                       Travel::portage
                   ? Motion::carrying
                   : Motion::on_foot;
    for (const std::string& text : {track.type, track.name})
        if (const std::optional<Water> water = water_from_name(text))
            return *water == Water::lake ? Motion::still_water : Motion::flowing_water;
    if (!reported && !travel_from_name(track.name)) // found by its level ground
        return Motion::still_water;
    const auto heights = ground_heights(traced, elevation_);
    const std::size_t tenth = std::max<std::size_t>(1, heights.size() / 10);
    const auto mean = [&](std::size_t first) {
        double sum_m = 0.0;
        double count = 0.0;
        for (std::size_t i = first; i < std::min(first + tenth, heights.size()); ++i)
            if (heights[i]) {
                sum_m += *heights[i];
                count += 1.0;
            }
        return count > 0.0 ? std::optional(sum_m / count) : std::nullopt;
    };
    const std::optional<double> start_m = mean(0);
    const std::optional<double> end_m = mean(heights.size() - tenth);
    const bool falls = start_m && end_m && std::abs(*start_m - *end_m) > river_falls_m;
    return falls ? Motion::flowing_water : Motion::still_water;
}

std::vector<MotionPart> Reader::timed_parts(const geo::Track& track,
                                            const TracedLine& traced,
                                            const std::vector<GroundPart>& parts) {
    std::vector<Motion> motions;
    motions.reserve(parts.size());
    for (const GroundPart& part : parts)
        motions.push_back(motion_on(track, traced, part));
    std::vector<MotionPart> timed;
    std::size_t first = 0; // of this stretch, among all points
    std::size_t part = 0;
    for (const std::vector<geo::TrackPoint>& stretch : track.parts) {
        MotionPart one{.steady = geo::steadied(stretch), .motions = {}};
        for (const geo::SteadyPoint& point : one.steady.points) {
            const double along_m = traced.line.along_m()[first + point.point];
            while (part + 1 < parts.size() && along_m > parts[part].to_m)
                ++part;
            one.motions.push_back(motions[part]);
        }
        first += stretch.size();
        if (one.steady.points.size() >= 2)
            timed.push_back(std::move(one));
    }
    return timed;
}

void Reader::lay_line(Run& run,
                      const MotionPart& part,
                      const std::vector<std::size_t>& knots) const {
    geo::PointHeights heights;
    for (const std::size_t knot : knots) {
        run.line.push_back(part.steady.points[knot].at);
        run.clock.push_back(instant_of(part.steady.points[knot].clock_s));
        heights.push_back(part.steady.points[knot].height_m);
    }
    const geo::Polyline line(run.line);
    run.along_m = line.along_m();
    run.profile = geo::make_profile(line, heights, elevation_, geo::Surface::land, {});
}

void Reader::read_part(const MotionPart& part) {
    std::vector<bool> breaks(part.steady.points.size(), false); // where the way of travel changes
    for (std::size_t i = 1; i < breaks.size(); ++i)
        breaks[i] = part.motions[i] != part.motions[i - 1];
    const std::vector<std::size_t> knots = geo::knots(part.steady, breaks);
    const auto clock_s = [&](std::size_t knot) { return part.steady.points[knots[knot]].clock_s; };
    const auto stands_before = [&](std::size_t knot) {
        return part.steady.points[knots[knot] - 1].stands;
    };
    Run run;
    lay_line(run, part, knots);
    std::size_t first = 0;
    for (std::size_t i = 1; i < knots.size(); ++i) {
        if (stands_before(i)) {
            halts_.push_back({instant_of(clock_s(i - 1)), clock_s(i) - clock_s(i - 1)});
            first = i;
            continue;
        }
        const Motion motion = part.motions[knots[first]];
        const double lasts_s = clock_s(i) - clock_s(first);
        const bool ends =
            i + 1 == knots.size() || stands_before(i + 1) || part.motions[knots[i]] != motion;
        if (!ends && lasts_s < window_s)
            continue;
        const Window window{.motion = motion,
                            .start = instant_of(clock_s(first)),
                            .lasts_s = lasts_s,
                            .from_m = run.along_m[first],
                            .to_m = run.along_m[i]};
        const double speed_mps = (window.to_m - window.from_m) / lasts_s;
        if (on_foot(motion))
            foot_speeds_.emplace_back(speed_mps, lasts_s);
        if (speed_mps > fastest_mps)
            too_fast_s_ += lasts_s;
        else if (motion == Motion::unsure)
            unsure_s_ += lasts_s;
        else if (lasts_s >= shortest_window_s)
            run.windows.push_back(window);
        first = i;
    }
    if (!run.windows.empty())
        runs_.push_back(std::move(run));
}

/// Marks the halts before the first move of the track and after its last.
void Reader::mark_ends() {
    for (Halt& halt : halts_) {
        const auto moves = [&](bool before) {
            return std::any_of(runs_.begin(), runs_.end(), [&](const Run& run) {
                return before ? run.windows.front().start < halt.start
                              : run.windows.back().start > halt.start;
            });
        };
        halt.at_an_end = !moves(true) || !moves(false);
    }
}

/// Why a track on foot is no walk, a clause; empty if it may be one.
std::string Reader::no_walk(const geo::Track& track) const {
    if (const std::string_view other = other_than_walking(track); !other.empty())
        return fmt::format("its type or name tells of {}", other);
    const double speed_mps = median_speed_mps(foot_speeds_);
    if (speed_mps > fastest_walk_mps)
        return fmt::format("half of its time is faster than {:.1f} km/h: a run or a ride",
                           speed_mps * 3.6);
    return {};
}

TrackReading Reader::reading(const geo::Track& track, const std::vector<GroundPart>& parts) const {
    TrackReading reading{.name = track.name, .taken_as = {}, .why = {}, .moving_s = 0.0};
    bool foot = false;
    bool water = false;
    for (const Run& run : runs_)
        for (const Window& window : run.windows) {
            (on_foot(window.motion) ? foot : water) = true;
            reading.moving_s += window.lasts_s;
        }
    reading.taken_as = foot && water ? "on foot and afloat"
                       : foot        ? "on foot"
                       : water       ? "afloat"
                                     : "left out";
    std::vector<std::string> reasons;
    for (const GroundPart& part : parts)
        if (std::find(reasons.begin(), reasons.end(), part.why) == reasons.end())
            reasons.push_back(part.why);
    constexpr std::size_t most = 3;
    if (reasons.size() > most)
        reasons.resize(most);
    reading.why = runs_.empty() && unsure_s_ <= 0.0
                      ? std::string("nobody moves as on foot or afloat")
                      : fmt::format("{}", fmt::join(reasons, "; "));
    return reading;
}

void Reader::leave_out(const geo::Track& track, std::string why) {
    recorded_.tracks.push_back(
        {.name = track.name, .taken_as = "left out", .why = std::move(why), .moving_s = 0.0});
}

void Reader::keep() {
    const auto move = [](auto& from, auto& to) {
        to.insert(
            to.end(), std::make_move_iterator(from.begin()), std::make_move_iterator(from.end()));
    };
    move(runs_, recorded_.runs);
    move(halts_, recorded_.halts);
    recorded_.too_fast_s += too_fast_s_;
    recorded_.unsure_s += unsure_s_;
}

void Reader::read(const geo::Track& track) {
    const std::vector<geo::TrackPoint> points = geo::joined(track);
    if (points.empty())
        return;
    const TracedLine traced_line = traced(track);
    const std::vector<GroundPart> parts = ways(track, traced_line);
    const std::vector<MotionPart> timed = timed_parts(track, traced_line, parts);
    if (timed.empty()) {
        ++recorded_.untimed;
        return leave_out(track,
                         2 * track.repairs.backward_times > points.size()
                             ? "its times run backwards: the line was turned round after recording"
                             : "it has no times");
    }
    runs_.clear();
    halts_.clear();
    foot_speeds_.clear();
    too_fast_s_ = unsure_s_ = 0.0;
    for (const MotionPart& part : timed)
        read_part(part);
    if (std::string why = no_walk(track); !why.empty()) {
        for (const Run& run : runs_)
            for (const Window& window : run.windows)
                recorded_.other_s += window.lasts_s;
        recorded_.too_fast_s += too_fast_s_;
        return leave_out(track, std::move(why));
    }
    mark_ends();
    recorded_.tracks.push_back(reading(track, parts));
    keep();
}

} // namespace

Recorded recorded_motion(const std::vector<geo::TrackFile>& files, geo::Elevation* elevation) {
    Recorded recorded;
    Reader reader(recorded, elevation);
    for (const geo::TrackFile& file : files)
        for (const geo::Track& track : file.tracks)
            reader.read(track);
    std::stable_sort(recorded.runs.begin(), recorded.runs.end(), [](const Run& a, const Run& b) {
        return a.windows.front().start < b.windows.front().start;
    });
    std::stable_sort(recorded.halts.begin(),
                     recorded.halts.end(),
                     [](const Halt& a, const Halt& b) { return a.start < b.start; });
    return recorded;
}

} // namespace tumpline::planner
