#include "planner/recordings/new_trip.h"

#include "geo/input_error.h"
#include "planner/recordings/track_order.h"
#include "planner/recordings/travel_mode.h"
#include "planner/route/place_words.h"
#include "planner/route/traced_line.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <set>
#include <string_view>
#include <utility>

namespace tumpline::planner {

namespace {

constexpr double longest_portage_m = 2000.0; // a longer walk between waters is a walk with the boat
constexpr double beside_m = 100.0;           // a put-in further off belongs to another water
constexpr double lake_falls_m = 2.0;         // a water that falls more is no lake

/// Everything known of one track of the files.
struct Lane {
    const geo::Track* track;
    TracedLine traced;
    std::string name;
    double start_m; ///< along the route
    std::size_t file;
    bool turned; ///< travelled from its end to its start
};

/// What a line rises by from its first tenth to its last; empty if either is not known.
std::optional<double> rise_m(const std::vector<std::optional<double>>& heights) {
    const std::size_t tenth = std::max<std::size_t>(1, heights.size() / 10);
    const auto mean = [&](std::size_t first) -> std::optional<double> {
        double sum_m = 0.0;
        double count = 0.0;
        for (std::size_t i = first; i < first + tenth; ++i)
            if (heights[i]) {
                sum_m += *heights[i];
                count += 1.0;
            }
        return count > 0.0 ? std::optional(sum_m / count) : std::nullopt;
    };
    const std::optional<double> start_m = mean(0);
    const std::optional<double> end_m = mean(heights.size() - tenth);
    if (!start_m || !end_m)
        return std::nullopt;
    return *end_m - *start_m;
}

class Maker {
  public:
    Maker(const std::vector<geo::TrackFile>& files, geo::Elevation* elevation)
        : files_(files), elevation_(elevation) {}

    FirstTrip make();

  private:
    void lay_out();
    void put_in_order();
    [[nodiscard]] bool can_be_reordered() const;
    void remark_waters();
    [[nodiscard]] bool can_be_cut() const;
    [[nodiscard]] bool names_are_unique() const;
    void add_legs(const Lane& lane);
    void add_whole(const Lane& lane, Travel travel, std::string why, bool reported);
    void add_cut(const Lane& lane, const std::vector<GroundPart>& parts);
    [[nodiscard]] std::vector<GroundPart> cut_at_boats(const Lane& lane) const;
    [[nodiscard]] std::optional<Water> water_of(const Lane& lane, const GroundPart& part) const;
    std::string landing(const Lane& lane, double along_m, PlaceKind kind);
    void find_portages();
    void add_waypoints();
    void add_ends();
    [[nodiscard]] std::string unused(std::string_view stem, bool bare) const;

    const std::vector<geo::TrackFile>& files_;
    geo::Elevation* elevation_;
    std::vector<Lane> lanes_;
    std::set<std::string> names_; ///< of waypoints and places
    std::vector<bool> reported_;  ///< by leg: the file itself names its way of travel
    FirstTrip trip_;
};

void Maker::lay_out() {
    for (std::size_t index = 0; index < files_.size(); ++index) {
        const geo::TrackFile& file = files_[index];
        trip_.files.push_back(index);
        for (const geo::Waypoint& waypoint : file.waypoints)
            names_.insert(waypoint.name);
        for (const geo::Track& track : file.tracks) {
            if (geo::joined(track).empty())
                continue;
            lanes_.push_back({.track = &track,
                              .traced = traced(track),
                              .name = track.name,
                              .start_m = 0.0,
                              .file = index,
                              .turned = false});
        }
    }
    if (lanes_.empty())
        throw geo::InputError({{.file = files_.empty() ? "" : files_.front().file.string(),
                                .place = {},
                                .found = "no line",
                                .expected = "a track, a route or another line",
                                .advice = "points alone make no trip"}});
    put_in_order();
    double along_m = 0.0;
    for (std::size_t i = 0; i < lanes_.size(); ++i) {
        if (lanes_[i].name.empty())
            lanes_[i].name = fmt::format("Leg {}", i + 1);
        lanes_[i].start_m = along_m;
        along_m += lanes_[i].traced.line.length_m();
    }
}

/// Legs name their tracks, or the files can be named in another order.
bool Maker::can_be_reordered() const {
    return names_are_unique() ||
           std::all_of(files_.begin(), files_.end(), [](const geo::TrackFile& file) {
               return file.tracks.size() <= 1;
           });
}

/// Whether heights took part in a choice.
bool ends_with_heights(const std::vector<TrackEnds>& ends) {
    return std::any_of(ends.begin(), ends.end(), [](const TrackEnds& each) {
        return each.water_rises_m.has_value();
    });
}

void Maker::put_in_order() {
    std::vector<TrackEnds> ends;
    for (const Lane& lane : lanes_) {
        std::optional<Travel> travel = travel_from_type(lane.track->type);
        if (!travel)
            travel = travel_from_name(lane.track->name);
        ends.push_back({.start = lane.traced.line.points().front(),
                        .end = lane.traced.line.points().back(),
                        .water_rises_m = travel == Travel::paddle
                                             ? rise_m(ground_heights(lane.traced, elevation_))
                                             : std::nullopt});
    }
    const TrackOrder laid = track_order(ends);
    std::string turned;
    for (std::size_t i = 0; i < laid.order.size(); ++i) {
        Lane& lane = lanes_[laid.order[i]];
        lane.turned = laid.turned[i];
        if (lane.turned)
            turned += fmt::format("{}\"{}\"", turned.empty() ? "" : ", ", lane.name);
    }
    if (!turned.empty())
        trip_.remarks.push_back(fmt::format(
            "Turned round, since the tracks meet only so{}: {}. Is that the way you go?",
            ends_with_heights(ends) ? " and water falls" : "",
            turned));
    if (std::is_sorted(laid.order.begin(), laid.order.end()))
        return;
    if (!can_be_reordered()) {
        trip_.remarks.emplace_back(
            "The tracks would meet in another order than that of the files, and cannot be put into "
            "it, since they have no names of their own: name each of them.");
        return;
    }
    std::vector<Lane> lanes;
    std::vector<std::size_t> files;
    std::string names;
    for (const std::size_t index : laid.order) {
        names += fmt::format("{}\"{}\"", names.empty() ? "" : ", ", lanes_[index].name);
        files.push_back(lanes_[index].file);
        lanes.push_back(std::move(lanes_[index]));
    }
    lanes_ = std::move(lanes);
    if (!names_are_unique())
        trip_.files = std::move(files);
    trip_.remarks.push_back(
        fmt::format("The files stand in another order than the way: it was laid as {}, where each "
                    "track begins where the one before ends.",
                    names));
}

/// Which way waters flow, by heights, and where nothing tells.
void Maker::remark_waters() {
    for (const Lane& lane : lanes_) {
        const auto leg =
            std::find_if(trip_.legs.begin(), trip_.legs.end(), [&](const FirstLeg& each) {
                return each.name == lane.name && each.water == Water::river;
            });
        if (leg == trip_.legs.end())
            continue;
        const std::optional<double> rises_m = rise_m(ground_heights(lane.traced, elevation_));
        if (!rises_m)
            trip_.remarks.push_back(
                fmt::format("Which way \"{}\" flows is not known: no heights. It is laid as its "
                            "track runs; see that this is downstream.",
                            lane.name));
        else if (const double up_m = lane.turned ? -*rises_m : *rises_m; up_m > lake_falls_m)
            trip_.remarks.push_back(fmt::format(
                "\"{}\" rises by {:.0f} m along its way: that is upstream. If you go down "
                "it, name its ends the other way round by from and to; if up, give it a "
                "negative current.",
                lane.name,
                up_m));
    }
}

bool Maker::names_are_unique() const {
    std::set<std::string> seen;
    return std::all_of(lanes_.begin(), lanes_.end(), [&](const Lane& lane) {
        return !lane.track->name.empty() && seen.insert(lane.track->name).second;
    });
}

bool Maker::can_be_cut() const {
    return lanes_.size() == 1 || names_are_unique();
}

std::string Maker::unused(std::string_view stem, bool bare) const {
    if (bare && !names_.contains(std::string(stem)))
        return std::string(stem);
    for (int number = bare ? 2 : 1;; ++number)
        if (std::string name = fmt::format("{} {}", stem, number); !names_.contains(name))
            return name;
}

std::optional<Water> Maker::water_of(const Lane& lane, const GroundPart& part) const {
    for (const std::string& text : {lane.track->type, lane.track->name})
        if (const std::optional<Water> water = water_from_name(text))
            return water;
    const TracedLine piece = cut(lane.traced, part.from_m, part.to_m);
    const auto heights = ground_heights(piece, elevation_);
    if (heights.front() && heights.back() &&
        std::abs(*heights.front() - *heights.back()) > lake_falls_m)
        return Water::river;
    return Water::lake;
}

void Maker::add_whole(const Lane& lane, Travel travel, std::string why, bool reported) {
    const double length_m = lane.traced.line.length_m();
    std::optional<Water> water;
    if (travel == Travel::paddle)
        water = water_of(lane, {.from_m = 0.0, .to_m = length_m, .afloat = true, .why = {}});
    trip_.legs.push_back({.name = lane.name,
                          .travel = travel,
                          .track = names_are_unique() ? lane.track->name : std::string(),
                          .from = {},
                          .to = {},
                          .water = water,
                          .length_m = length_m,
                          .why = std::move(why)});
    reported_.push_back(reported);
}

/// The waypoint of that kind which stands there, or a new place.
std::string Maker::landing(const Lane& lane, double along_m, PlaceKind kind) {
    const geo::Position at = lane.traced.line.at(along_m);
    for (const geo::TrackFile& file : files_)
        for (const geo::Waypoint& waypoint : file.waypoints) {
            const geo::Snap snap = lane.traced.line.nearest(waypoint.at);
            const auto same = [&](const geo::Waypoint& other) {
                return other.name == waypoint.name;
            };
            if (kind_of(waypoint) == kind && !waypoint.name.empty() && snap.off_m <= beside_m &&
                std::abs(snap.along_m - along_m) < 1.0 &&
                std::count_if(file.waypoints.begin(), file.waypoints.end(), same) == 1)
                return waypoint.name;
        }
    std::string name = unused(kind == PlaceKind::put_in ? "Put-in" : "Take-out", false);
    names_.insert(name);
    trip_.places.push_back(
        {.name = name, .kind = kind, .at = at, .along_m = lane.start_m + along_m, .off_m = 0.0});
    return name;
}

void Maker::add_cut(const Lane& lane, const std::vector<GroundPart>& parts) {
    std::string from;
    for (std::size_t i = 0; i < parts.size(); ++i) {
        const GroundPart& part = parts[i];
        std::string to;
        if (i + 1 < parts.size())
            to = landing(lane, part.to_m, part.afloat ? PlaceKind::take_out : PlaceKind::put_in);
        const std::string first = from.empty() ? lane.name : from;
        trip_.legs.push_back(
            {.name = to.empty() ? fmt::format("On from {}", first) : fmt::format("To {}", to),
             .travel = part.afloat ? Travel::paddle : Travel::walk,
             .track = lanes_.size() == 1 && !names_are_unique() ? std::string() : lane.track->name,
             .from = from,
             .to = to,
             .water = part.afloat ? water_of(lane, part) : std::nullopt,
             .length_m = part.to_m - part.from_m,
             .why = part.why});
        reported_.push_back(false);
        from = to;
    }
}

/// Cuts a track where waypoints tell that boats go in or out; empty if there are none.
std::vector<GroundPart> Maker::cut_at_boats(const Lane& lane) const {
    std::vector<std::pair<double, bool>> changes; // along, whether afloat from there
    for (const geo::TrackFile& file : files_)
        for (const geo::Waypoint& waypoint : file.waypoints) {
            const std::optional<PlaceKind> kind = kind_of(waypoint);
            if (kind != PlaceKind::put_in && kind != PlaceKind::take_out)
                continue;
            const geo::Snap snap = lane.traced.line.nearest(waypoint.at);
            if (snap.off_m <= beside_m)
                changes.emplace_back(snap.along_m, kind == PlaceKind::put_in);
        }
    std::sort(changes.begin(), changes.end());
    std::vector<GroundPart> parts;
    const auto add = [&](double from_m, double to_m, bool afloat) {
        if (to_m - from_m >= 1.0)
            parts.push_back({.from_m = from_m,
                             .to_m = to_m,
                             .afloat = afloat,
                             .why = afloat ? "it lies between a put-in and a take-out"
                                           : "it lies outside put-in and take-out"});
    };
    if (changes.empty())
        return parts;
    bool afloat = !changes.front().second;
    double done_m = 0.0;
    for (const auto& [along_m, goes_in] : changes) {
        if (goes_in == afloat)
            continue; // a second put-in on the same water
        add(done_m, along_m, afloat);
        afloat = goes_in;
        done_m = along_m;
    }
    add(done_m, lane.traced.line.length_m(), afloat);
    return parts;
}

void Maker::add_legs(const Lane& lane) {
    if (const std::string_view other = other_than_walking(*lane.track); !other.empty()) {
        trip_.remarks.push_back(fmt::format(
            "\"{}\" is {} by its type or name: its line is taken as a walk, if it can be "
            "walked at all.",
            lane.name,
            other));
        return add_whole(lane, Travel::walk, fmt::format("{} by type or name", other), true);
    }
    if (const std::optional<Travel> travel = travel_from_type(lane.track->type))
        return add_whole(lane, *travel, "the track's type tells so", true);
    if (const std::optional<Travel> travel = travel_from_name(lane.track->name))
        return add_whole(lane, *travel, "the track's name tells so", true);
    std::vector<GroundPart> parts = cut_at_boats(lane);
    if (parts.empty())
        parts = afloat_or_on_foot(*lane.track, lane.traced, elevation_);
    if (parts.size() > 1 && can_be_cut())
        return add_cut(lane, parts);
    double afloat_m = 0.0;
    for (const GroundPart& part : parts)
        afloat_m += part.afloat ? part.to_m - part.from_m : 0.0;
    const bool afloat = 2.0 * afloat_m > lane.traced.line.length_m();
    std::string why = parts.front().why;
    if (parts.size() > 1)
        why = fmt::format("{:.0f} m of it seem to be water; give each track a name of its own, and "
                          "it can be cut",
                          afloat_m);
    add_whole(lane, afloat ? Travel::paddle : Travel::walk, std::move(why), false);
}

void Maker::find_portages() {
    for (std::size_t i = 1; i + 1 < trip_.legs.size(); ++i) {
        FirstLeg& leg = trip_.legs[i];
        if (reported_[i] || leg.travel != Travel::walk || leg.length_m > longest_portage_m ||
            trip_.legs[i - 1].travel != Travel::paddle ||
            trip_.legs[i + 1].travel != Travel::paddle)
            continue;
        leg.travel = Travel::portage;
        leg.why = "a short way between two waters";
    }
}

void Maker::add_waypoints() {
    std::set<std::string> reported;
    for (const geo::TrackFile& file : files_)
        for (const geo::Waypoint& waypoint : file.waypoints) {
            if (waypoint.name.empty() || !reported.insert(waypoint.name).second)
                continue; // nothing in a trip file could mean it
            FirstPlace place{.name = waypoint.name,
                             .kind = kind_of(waypoint),
                             .at = std::nullopt,
                             .along_m = 0.0,
                             .off_m = -1.0};
            for (const Lane& lane : lanes_) {
                const geo::Snap snap = lane.traced.line.nearest(waypoint.at);
                if (place.off_m >= 0.0 && snap.off_m >= place.off_m)
                    continue;
                place.off_m = snap.off_m;
                place.along_m = lane.start_m + snap.along_m;
            }
            trip_.places.push_back(std::move(place));
        }
}

/// A start and a finish, where no waypoint is one.
void Maker::add_ends() {
    const auto none = [&](PlaceKind kind) {
        return std::none_of(trip_.places.begin(), trip_.places.end(), [&](const FirstPlace& place) {
            return place.kind == kind;
        });
    };
    const Lane& last = lanes_.back();
    const double length_m = last.start_m + last.traced.line.length_m();
    if (none(PlaceKind::start))
        trip_.places.push_back({.name = unused("Start", true),
                                .kind = PlaceKind::start,
                                .at = lanes_.front().traced.line.points().front(),
                                .along_m = 0.0,
                                .off_m = 0.0});
    if (none(PlaceKind::finish))
        trip_.places.push_back({.name = unused("Finish", true),
                                .kind = PlaceKind::finish,
                                .at = last.traced.line.points().back(),
                                .along_m = length_m,
                                .off_m = 0.0});
}

/// The zone of whole hours in which a longitude lies; its sign is turned round in the names of the
/// database ("Etc/GMT-1" is an hour east).
std::string zone_of(double lon_deg) {
    const long hours = std::lround(lon_deg / 15.0);
    if (hours == 0)
        return "Etc/GMT";
    return fmt::format("Etc/GMT{}{}", hours > 0 ? '-' : '+', std::abs(hours));
}

FirstTrip Maker::make() {
    lay_out();
    trip_.time_zone = zone_of(lanes_.front().traced.line.points().front().lon_deg);
    for (const Lane& lane : lanes_) {
        const auto heights = ground_heights(lane.traced, elevation_);
        trip_.heights =
            trip_.heights || std::any_of(heights.begin(), heights.end(), [](const auto& height_m) {
                return height_m.has_value();
            });
        add_legs(lane);
    }
    find_portages();
    remark_waters();
    add_waypoints();
    add_ends();
    std::stable_sort(trip_.places.begin(), trip_.places.end(), [](const auto& a, const auto& b) {
        return a.along_m < b.along_m;
    });
    return std::move(trip_);
}

} // namespace

FirstTrip first_trip(const std::vector<geo::TrackFile>& files, geo::Elevation* elevation) {
    return Maker(files, elevation).make();
}

} // namespace tumpline::planner
