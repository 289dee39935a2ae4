#include "planner/recordings/recorded_motion.h"

#include "geo/lines/geodesic.h"
#include "planner/recordings/travel_mode.h"
#include "planner/route/place_words.h"
#include "planner/route/traced_line.h"

#include <algorithm>
#include <chrono>
#include <cmath>
#include <utility>

namespace tumpline::planner {

namespace {

constexpr double smoothing_s = 15.0; // to each side
constexpr double knot_s = 20.0;
constexpr double window_s = 60.0;
constexpr double shortest_window_s = 15.0;
constexpr double standing_m = 20.0; // as geo::moving_time_s
constexpr double standing_s = 120.0;
constexpr double fastest_mps = 15.0 / 3.6;
constexpr double river_falls_m = 3.0; // more than heights of a receiver, averaged, wander

/// A point with its time, seconds since 1970, and its way of travel.
struct Fix {
    geo::Position at;
    std::optional<double> height_m;
    double clock_s;
    Motion motion;
};

double seconds_of(const geo::Instant& at) {
    return std::chrono::duration<double>(at.time_since_epoch()).count();
}

geo::Instant instant_of(double clock_s) {
    return geo::Instant(std::chrono::milliseconds(std::llround(clock_s * 1000.0)));
}

/// The mean of the fixes within `smoothing_s` of each. Longitudes are averaged as differences, so
/// that the 180th meridian does no harm.
std::vector<Fix> smoothed(const std::vector<Fix>& fixes) {
    std::vector<Fix> result = fixes;
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
            lon_deg += std::remainder(fixes[k].at.lon_deg - fixes[i].at.lon_deg, 360.0);
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

/// For each fix whether one stands from it to the next.
std::vector<bool> standing(const std::vector<Fix>& fixes) {
    std::vector<bool> stands(fixes.size(), false);
    std::size_t anchor = 0;
    for (std::size_t i = 1; i <= fixes.size(); ++i) {
        if (i < fixes.size() && geo::distance_m(fixes[anchor].at, fixes[i].at) <= standing_m)
            continue;
        if (fixes[i - 1].clock_s - fixes[anchor].clock_s >= standing_s)
            std::fill(stands.begin() + static_cast<std::ptrdiff_t>(anchor),
                      stands.begin() + static_cast<std::ptrdiff_t>(i) - 1,
                      true);
        if (i < fixes.size()) { // a receiver that pauses by itself leaves one long step
            const double lasts_s = fixes[i].clock_s - fixes[i - 1].clock_s;
            const double step_m = geo::distance_m(fixes[i - 1].at, fixes[i].at);
            if (lasts_s >= standing_s && step_m * standing_s < standing_m * lasts_s)
                stands[i - 1] = true;
        }
        anchor = i;
    }
    return stands;
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
    [[nodiscard]] Motion motion_on(const geo::Track& track, const TracedLine& traced, bool afloat);
    void read_part(const std::vector<Fix>& raw);
    void lay_line(Run& run, const std::vector<Fix>& knots) const;

    Recorded& recorded_;
    geo::Elevation* elevation_;
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
             .why = {}}};
}

Motion Reader::motion_on(const geo::Track& track, const TracedLine& traced, bool afloat) {
    const std::optional<Travel> reported = travel_from_type(track.type);
    if (!afloat)
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

void Reader::read(const geo::Track& track) {
    if (geo::joined(track).empty())
        return;
    const TracedLine traced_line = traced(track);
    const std::vector<GroundPart> parts = ways(track, traced_line);
    std::vector<Motion> motions;
    motions.reserve(parts.size());
    for (const GroundPart& part : parts)
        motions.push_back(motion_on(track, traced_line, part.afloat));
    std::size_t point = 0;
    std::size_t part = 0;
    bool timed = false;
    for (const std::vector<geo::TrackPoint>& stretch : track.parts) {
        std::vector<Fix> fixes;
        for (const geo::TrackPoint& each : stretch) {
            while (part + 1 < parts.size() && traced_line.line.along_m()[point] > parts[part].to_m)
                ++part;
            ++point;
            if (!each.time)
                continue;
            const double clock_s = seconds_of(*each.time);
            if (fixes.empty() || clock_s > fixes.back().clock_s)
                fixes.push_back({each.at, each.height_m, clock_s, motions[part]});
        }
        if (fixes.size() < 2)
            continue;
        timed = true;
        read_part(fixes);
    }
    recorded_.untimed += timed ? 0U : 1U;
}

void Reader::lay_line(Run& run, const std::vector<Fix>& knots) const {
    geo::PointHeights heights;
    for (const Fix& knot : knots) {
        run.line.push_back(knot.at);
        run.clock.push_back(instant_of(knot.clock_s));
        heights.push_back(knot.height_m);
    }
    const geo::Polyline line(run.line);
    run.along_m = line.along_m();
    run.profile = geo::make_profile(line, heights, elevation_, geo::Surface::land, {});
}

void Reader::read_part(const std::vector<Fix>& raw) {
    const std::vector<Fix> fixes = smoothed(raw);
    const std::vector<bool> stands = standing(fixes);
    // Knots: where a halt begins or ends, where the way of travel changes, and every 20 s between.
    std::vector<Fix> knots{fixes.front()};
    std::vector<bool> still; // from each knot to the next
    for (std::size_t i = 1; i < fixes.size(); ++i) {
        const bool last = i + 1 == fixes.size();
        const bool changes =
            last || stands[i] != stands[i - 1] || fixes[i].motion != fixes[i - 1].motion;
        if (!changes && (stands[i - 1] || fixes[i].clock_s - knots.back().clock_s < knot_s))
            continue;
        still.push_back(stands[i - 1]);
        knots.push_back(fixes[i]);
    }
    Run run;
    lay_line(run, knots);
    std::size_t first = 0;
    for (std::size_t i = 1; i < knots.size(); ++i) {
        const double lasts_s = knots[i].clock_s - knots[first].clock_s;
        if (still[i - 1]) {
            recorded_.halts.push_back(
                {instant_of(knots[i - 1].clock_s), knots[i].clock_s - knots[i - 1].clock_s});
            first = i;
            continue;
        }
        const bool ends =
            i + 1 == knots.size() || still[i] || knots[i].motion != knots[first].motion;
        if (!ends && lasts_s < window_s)
            continue;
        const Window window{.motion = knots[first].motion,
                            .start = instant_of(knots[first].clock_s),
                            .lasts_s = lasts_s,
                            .from_m = run.along_m[first],
                            .to_m = run.along_m[i]};
        if (window.to_m - window.from_m > fastest_mps * lasts_s)
            recorded_.too_fast_s += lasts_s;
        else if (lasts_s >= shortest_window_s)
            run.windows.push_back(window);
        first = i;
    }
    if (!run.windows.empty())
        recorded_.runs.push_back(std::move(run));
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
