#include "planner/route/route_build.h"

#include "geo/ground/elevation.h"
#include "geo/input_error.h"
#include "geo/lines/geodesic.h"
#include "geo/tracks/read_tracks.h"
#include "geo/tracks/steady_way.h"
#include "planner/quantities/spelling.h"
#include "planner/quantities/unit_text.h"
#include "planner/route/alternatives.h"
#include "planner/route/land.h"
#include "planner/route/land_facts.h"
#include "planner/route/leg_chain.h"
#include "planner/route/place_snap.h"
#include "planner/route/river_rise.h"
#include "planner/route/route_check.h"
#include "planner/route/steep_ground.h"
#include "planner/route/traced_line.h"
#include "planner/route/undrawn_legs.h"
#include "planner/trip/route_distance.h"

#include <fmt/format.h>

#include <algorithm>
#include <iterator>
#include <map>
#include <memory>
#include <set>
#include <string_view>
#include <utility>

namespace tumpline::planner {

namespace {

/// Collects problems so that one run shows them all.
class RouteBuilder {
  public:
    explicit RouteBuilder(const Trip& trip) : trip_(trip), file_(trip.file.string()) {}

    BuiltRoute build();

  private:
    void read_files();
    void resolve_places();
    void refuse_unplaced(std::size_t index);
    void refuse_on_ride(const Route& route, const LegDistance& along, std::size_t index);
    void resolve_distances(const Route& route);
    [[nodiscard]] bool is_end_of_undrawn(const std::string& name) const;
    [[nodiscard]] bool is_place(const std::string& name) const;
    [[nodiscard]] std::optional<geo::Position> known_position(const std::string& name) const;
    void resolve_appointments();
    std::optional<TracedLine> line_of(const TripLeg& leg, std::size_t index, std::size_t in_order);
    std::optional<TracedLine>
    cut_to_places(TracedLine whole, const TripLeg& leg, std::size_t index);
    std::optional<geo::Position> place_at(const std::string& name, const std::string& pointer);
    std::vector<LooseLeg> loose_legs();
    void warn_of_wander(Route& route) const;
    RouteLeg grounded(LooseLeg leg);
    std::optional<TracedLine> line_for(const TripLeg& leg, std::size_t index, std::size_t in_order);
    void check_ends(const TripLeg& leg, std::size_t index);
    void lay(Route& route, std::vector<LooseLeg> legs);
    void refuse_too_long(const std::vector<LooseLeg>& legs);

    /// What is wrong at a place of the trip file.
    struct Wrong {
        std::string found;
        std::string expected;
        std::string advice;
    };

    void problem(std::string place, Wrong wrong) {
        problems_.push_back({file_,
                             std::move(place),
                             std::move(wrong.found),
                             std::move(wrong.expected),
                             std::move(wrong.advice)});
    }

    const Trip& trip_;
    std::string file_;
    TrackShelf shelf_;
    std::unique_ptr<geo::Elevation> elevation_;
    geo::ProfileOptions options_;
    KnownPlaces places_;
    std::vector<geo::Problem> problems_;
    std::set<const geo::Track*> used_; ///< by legs
};

void RouteBuilder::read_files() {
    for (const std::filesystem::path& path : trip_.route.tracks) {
        try {
            shelf_.files.push_back(geo::read_tracks(path));
        } catch (const geo::InputError& error) { // the other files are looked at all the same
            problems_.insert(problems_.end(), error.problems().begin(), error.problems().end());
        }
    }
    if (!trip_.route.elevation.empty()) {
        try {
            const std::filesystem::path& trip = trip_.file;
            elevation_ = std::make_unique<geo::Elevation>(
                trip_.route.elevation,
                trip.empty() ? trip : std::filesystem::absolute(trip).parent_path());
            options_.step_m = std::clamp(elevation_->cell_m(), 20.0, 50.0);
        } catch (const geo::InputError& error) {
            problems_.insert(problems_.end(), error.problems().begin(), error.problems().end());
        }
    }
    if (trip_.route.step_m)
        options_.step_m = *trip_.route.step_m;
    if (trip_.route.recorder == HeightRecorder::barometer)
        options_ = geo::of_barometer(options_);
    if (trip_.route.ascent_threshold_m) {
        options_.raster_threshold_m = *trip_.route.ascent_threshold_m;
        options_.track_threshold_m = *trip_.route.ascent_threshold_m;
    }
    if (!problems_.empty())
        throw geo::InputError(std::move(problems_));
}

/// A place that a leg without a line goes from or to needs no position.
bool RouteBuilder::is_end_of_undrawn(const std::string& name) const {
    return std::any_of(trip_.route.legs.begin(), trip_.route.legs.end(), [&](const TripLeg& leg) {
        return leg.length_m && (leg.from == name || leg.to == name);
    });
}

bool RouteBuilder::is_place(const std::string& name) const {
    return std::any_of(trip_.route.places.begin(),
                       trip_.route.places.end(),
                       [&](const TripPlace& place) { return place.name == name; });
}

std::optional<geo::Position> RouteBuilder::known_position(const std::string& name) const {
    if (name.empty())
        return std::nullopt;
    if (const auto known = places_.of_trip.find(name); known != places_.of_trip.end())
        return known->second;
    if (const geo::Waypoint* point = shelf_.waypoint(name))
        return point->at;
    return std::nullopt;
}

void RouteBuilder::refuse_unplaced(std::size_t index) {
    std::string names;
    for (const geo::TrackFile& tracks : shelf_.files)
        for (const geo::Waypoint& known : tracks.waypoints)
            names += fmt::format("{}\"{}\"", names.empty() ? "" : ", ", known.name);
    problem(fmt::format("/route/places/{}", index),
            {fmt::format("\"{}\" without a position", trip_.route.places[index].name),
             names.empty() ? "\"at\" with longitude and latitude (the tracks hold no waypoints)"
                           : fmt::format("\"at\", or the name of a waypoint: {}", names),
             "write \"at\": [longitude, latitude], or a distance: \"at\": \"km 12\""});
}

void RouteBuilder::resolve_places() {
    for (std::size_t i = 0; i < trip_.route.places.size(); ++i) {
        const TripPlace& place = trip_.route.places[i];
        if (place.at)
            places_.of_trip.emplace(place.name, *place.at);
        else if (place.along)
            continue; // once the route is laid
        else if (const geo::Waypoint* point = shelf_.waypoint(place.name))
            places_.of_trip.emplace(place.name, point->at);
        else if (!is_end_of_undrawn(place.name))
            refuse_unplaced(i);
    }
}

/// Nobody gets off a ride on its way.
void RouteBuilder::refuse_on_ride(const Route& route, const LegDistance& along, std::size_t index) {
    const auto leg = std::find_if(route.legs.begin(), route.legs.end(), [&](const RouteLeg& one) {
        return is_ride(one.travel) && one.name == along.leg;
    });
    constexpr double near_end_m = 30.0;
    if (leg == route.legs.end() || along.from_start_m < near_end_m ||
        leg->length_m() - along.from_start_m < near_end_m)
        return;
    problem(fmt::format("/route/places/{}/at", index),
            {fmt::format("{}, a point of the ride \"{}\"",
                         show_route_distance(*trip_.route.places[index].along),
                         leg->name),
             "a point of a leg on foot or afloat, or an end of the ride",
             "write the ride as two if it halts there"});
}

void RouteBuilder::resolve_distances(const Route& route) {
    for (std::size_t i = 0; i < trip_.route.places.size(); ++i) {
        const TripPlace& place = trip_.route.places[i];
        if (!place.along)
            continue;
        if (const std::optional<LegDistance> along = leg_distance(route, *place.along)) {
            places_.by_distance.emplace(place.name, *along);
            refuse_on_ride(route, *along, i);
            continue;
        }
        const auto leg = std::find_if(route.legs.begin(), route.legs.end(), [&](const auto& one) {
            return one.name == place.along->leg;
        });
        const std::string where = fmt::format("/route/places/{}/at", i);
        if (!place.along->leg.empty() && leg == route.legs.end())
            problem(where, {show_route_distance(*place.along), "the name of a leg", ""});
        else
            problem(
                where,
                {show_route_distance(*place.along),
                 fmt::format("no further than the {:.1f} km of {}",
                             (leg == route.legs.end() ? route.length_m : leg->length_m()) / 1000.0,
                             leg == route.legs.end() ? "the route" : "that leg"),
                 ""});
    }
}

/// Appointments are at places, or at waypoints of the tracks.
void RouteBuilder::resolve_appointments() {
    for (std::size_t i = 0; i < trip_.appointments.size(); ++i) {
        const std::string& name = trip_.appointments[i].at;
        if (is_place(name) || places_.met_at.contains(name))
            continue;
        const auto at = place_at(name, fmt::format("/appointments/{}/at", i));
        if (at)
            places_.met_at.emplace(name, *at);
    }
}

std::optional<geo::Position> RouteBuilder::place_at(const std::string& name,
                                                    const std::string& pointer) {
    if (const std::optional<geo::Position> known = known_position(name))
        return known;
    if (is_place(name)) {
        problem(pointer,
                {fmt::format("\"{}\", a place without longitude and latitude", name),
                 "a place with a position: a track is cut at the nearest point of its line",
                 "write \"at\": [longitude, latitude] for that place"});
        return std::nullopt;
    }
    std::vector<std::string_view> known;
    for (const TripPlace& place : trip_.route.places)
        known.push_back(place.name);
    for (const geo::TrackFile& file : shelf_.files)
        for (const geo::Waypoint& point : file.waypoints)
            known.push_back(point.name);
    const std::string nearest = nearest_word(name, known);
    problem(pointer,
            {fmt::format("\"{}\"", name),
             "the name of a place or of a waypoint in the tracks",
             nearest.empty() ? std::string("add it under /route/places with \"at\"")
                             : fmt::format("write \"{}\"", nearest)});
    return std::nullopt;
}

/// `in_order` counts the legs with a line ahead of it: those that name none take the tracks in
/// turn.
std::optional<TracedLine>
RouteBuilder::line_of(const TripLeg& leg, std::size_t index, std::size_t in_order) {
    const std::vector<const geo::Track*> tracks = shelf_.tracks();
    const std::string pointer = fmt::format("/route/legs/{}/track", index);
    if (leg.track == "all" && !shelf_.find("all")) {
        used_.insert(tracks.begin(), tracks.end());
        return traced_all(shelf_);
    }
    const auto used = [&](const geo::Track& track) {
        used_.insert(&track);
        return traced(track);
    };
    if (!leg.track.empty()) {
        if (const geo::Track* track = shelf_.find(leg.track))
            return used(*track);
        std::string names;
        for (const geo::Track* track : tracks)
            names += fmt::format("{}\"{}\"", names.empty() ? "" : ", ", track->name);
        problem(pointer,
                {fmt::format("\"{}\"", leg.track),
                 fmt::format("the name of a track ({}) or \"all\"", names),
                 ""});
        return std::nullopt;
    }
    if (tracks.size() == 1)
        return used(*tracks.front());
    if (in_order < tracks.size())
        return used(*tracks[in_order]);
    problem(fmt::format("/route/legs/{}", index),
            {"a leg without \"track\"",
             fmt::format("\"track\": the files hold {} tracks", tracks.size()),
             "name the track this leg runs on, or give its \"length\" if it has none"});
    return std::nullopt;
}

/// The ends of a leg without a line are places by name only.
void RouteBuilder::check_ends(const TripLeg& leg, std::size_t index) {
    for (const auto& [name, key] : {std::pair{&leg.from, "from"}, std::pair{&leg.to, "to"}}) {
        if (!name->empty() && !is_place(*name))
            place_at(*name, fmt::format("/route/legs/{}/{}", index, key));
    }
}

/// The line of a leg, cut to its places; of one without a track a point that is put near it later.
std::optional<TracedLine>
RouteBuilder::line_for(const TripLeg& leg, std::size_t index, std::size_t in_order) {
    if (leg.length_m) {
        check_ends(leg, index);
        return TracedLine{geo::Polyline({geo::Position{}}), {}};
    }
    std::optional<TracedLine> line = line_of(leg, index, in_order);
    return line ? cut_to_places(*std::move(line), leg, index) : std::nullopt;
}

std::optional<TracedLine>
RouteBuilder::cut_to_places(TracedLine whole, const TripLeg& leg, std::size_t index) {
    if (leg.from.empty() && leg.to.empty())
        return whole;
    const std::string pointer = fmt::format("/route/legs/{}", index);
    std::optional<geo::Position> from, to;
    if (!leg.from.empty() && !(from = place_at(leg.from, pointer + "/from")))
        return std::nullopt;
    if (!leg.to.empty() && !(to = place_at(leg.to, pointer + "/to")))
        return std::nullopt;
    const double length_m = whole.line.length_m();
    double from_m = from ? whole.line.nearest(*from).along_m : 0.0;
    double to_m = to ? whole.line.nearest(*to).along_m : length_m;
    if (from && to && to_m <= from_m) {
        // The line may pass the second place again further on: then keep the direction.
        const geo::Snap again = whole.line.nearest(*to, from_m);
        if (again.off_m <= largest_gap_m && again.along_m > from_m)
            to_m = again.along_m;
    }
    if (std::abs(to_m - from_m) < 1.0) {
        problem(pointer,
                {fmt::format("from \"{}\" to \"{}\": the same point of the line", leg.from, leg.to),
                 "two places apart on the track",
                 ""});
        return std::nullopt;
    }
    const auto [near_m, far_m] = std::minmax({from_m, to_m});
    TracedLine part = cut(whole, near_m, far_m);
    return to_m > from_m ? std::move(part) : reversed(part);
}

std::vector<LooseLeg> RouteBuilder::loose_legs() {
    std::vector<LooseLeg> legs;
    if (trip_.route.legs.empty()) {
        for (const geo::Track* track : shelf_.tracks()) {
            TripLeg spec;
            spec.name = track->name.empty() ? fmt::format("leg {}", legs.size() + 1) : track->name;
            const Travel travel = travel_from_type(track->type).value_or(Travel::walk);
            spec.travel = travel;
            used_.insert(track);
            legs.push_back({spec, travel, spec.name, traced(*track), false, false});
        }
        if (legs.empty())
            problem("/route/tracks", {"no line in the tracks", "at least one track or route", ""});
        return legs;
    }
    std::size_t in_order = 0;
    for (std::size_t i = 0; i < trip_.route.legs.size(); ++i) {
        const TripLeg& spec = trip_.route.legs[i];
        std::optional<TracedLine> line = line_for(spec, i, in_order);
        in_order += spec.length_m ? 0U : 1U;
        if (!line)
            continue;
        const geo::Track* track = spec.track.empty() ? nullptr : shelf_.find(spec.track);
        const Travel travel = spec.travel.value_or(
            track ? travel_from_type(track->type).value_or(Travel::walk) : Travel::walk);
        const std::string name =
            !spec.name.empty() ? spec.name
                               : (spec.track.empty() ? fmt::format("leg {}", i + 1) : spec.track);
        legs.push_back(
            {spec, travel, name, *std::move(line), !spec.from.empty() && !spec.to.empty(), false});
    }
    return legs;
}

RouteLeg RouteBuilder::grounded(LooseLeg leg) {
    geo::Surface surface = geo::Surface::land;
    const double current_mps = leg.spec.current_mps.value_or(0.0);
    const auto profile_on = [&](geo::Surface ground) {
        return geo::make_profile(
            leg.traced.line, leg.traced.heights, elevation_.get(), ground, options_);
    };
    const bool drawn = !leg.spec.length_m;
    std::optional<double> rises_m;
    if (afloat(leg.travel)) {
        if (leg.spec.on_water() != Water::river) {
            surface = geo::Surface::level_water;
        } else if (current_mps < 0.0) {
            surface = geo::Surface::rising_river;
        } else {
            surface = geo::Surface::falling_river;
            if (drawn)
                rises_m = rise_beyond_noise_m(profile_on(geo::Surface::land));
            // A boat is led up or down, and nobody has to say which where no current is given.
            if (led(leg.travel) && current_mps == 0.0 && rises_m) {
                surface = geo::Surface::rising_river;
                rises_m.reset();
            }
        }
    }
    geo::Profile profile = drawn ? profile_on(surface) : geo::Profile{};
    return {.name = std::move(leg.name),
            .travel = leg.travel,
            .spec = std::move(leg.spec),
            .line = std::move(leg.traced.line),
            .from_m = 0.0,
            .to_m = 0.0,
            .profile = std::move(profile),
            .turned_round = leg.turned_round,
            .water_rises_m = rises_m};
}

/// What is sampled grows with length and step, whatever the files' size: no track needs to be long
/// for that, when a hundred legs go over it.
void RouteBuilder::refuse_too_long(const std::vector<LooseLeg>& legs) {
    std::size_t samples = 0;
    double length_m = 0.0;
    for (const LooseLeg& leg : legs) {
        samples += geo::samples_in(leg.traced.line.length_m(), options_.step_m);
        length_m += leg.traced.line.length_m();
    }
    if (samples > geo::most_samples)
        problem("/route",
                {fmt::format("legs of {:.0f} km, heights every {:.0f} m: {} samples",
                             1e-3 * length_m,
                             options_.step_m,
                             samples),
                 fmt::format("{} samples at most", geo::most_samples),
                 "look for points far from the way; or set a larger \"step\""});
}

/// The legs in order, those of the chain and those that stand beside it.
void RouteBuilder::lay(Route& route, std::vector<LooseLeg> legs) {
    turn_round(legs);
    const std::optional<geo::Position> somewhere =
        places_.of_trip.empty() ? std::nullopt : std::optional(places_.of_trip.begin()->second);
    if (!put_undrawn(
            legs, [&](const std::string& name) { return known_position(name); }, somewhere))
        problem("/route/legs",
                {"no track and no place with a position",
                 "one position at least: sunrise and dusk depend on it",
                 "write \"at\": [longitude, latitude] for a place that a leg names in \"from\" or "
                 "\"to\""});
    std::vector<RouteLeg> chain;
    for (LooseLeg& loose : legs) {
        const bool aside = !loose.spec.instead_of.empty();
        (aside ? route.alternatives : chain).push_back(grounded(std::move(loose)));
    }
    lay_legs(route, std::move(chain));
    for (const ShortLegs& gap : too_short_between(route))
        problem("/route/legs",
                {fmt::format("{:.1f} km of legs without a track between \"{}\" and \"{}\"",
                             gap.length_m / 1000.0,
                             gap.before,
                             gap.after),
                 fmt::format("at least the {:.1f} km that lie between them", gap.apart_m / 1000.0),
                 ""});
    resolve_distances(route);
    for (const RouteLeg& alternative : route.alternatives) {
        const bool known =
            std::any_of(route.legs.begin(), route.legs.end(), [&](const RouteLeg& leg) {
                return leg.name == alternative.spec.instead_of;
            });
        if (!known)
            problem("/route/legs",
                    {fmt::format("\"instead_of\": \"{}\"", alternative.spec.instead_of),
                     "the name of a leg",
                     ""});
    }
}

/// A plan measures lines as they stand; of a recording that is more than the way was.
void RouteBuilder::warn_of_wander(Route& route) const {
    for (const geo::Track* track : shelf_.tracks()) {
        if (!used_.contains(track))
            continue;
        const std::optional<double> steady_m = geo::steady_length_m(*track);
        if (!steady_m)
            continue;
        const double length_m = traced_length_m(*track);
        if (length_m <= (1.0 + geo::wander_counts) * *steady_m)
            continue;
        const UnitText lengths = format_both(
            "The recorded line of \"{}\" is {} long, the way about {}: the rest is the wander of "
            "the receiver, at halts most of all. The plan measures the line as it stands, so its "
            "times and energy are too high there.",
            track->name,
            in_both(show_distance, length_m),
            in_both(show_distance, *steady_m));
        route.cautions.push_back({.level = Level::caution,
                                  .code = "recorded-wander",
                                  .day = std::nullopt,
                                  .leg = std::nullopt,
                                  .text = lengths.metric,
                                  .source = "docs/tracks.md",
                                  .imperial = lengths.imperial});
    }
}

BuiltRoute RouteBuilder::build() {
    read_files();
    resolve_places();
    resolve_appointments();
    std::vector<LooseLeg> legs = loose_legs();
    refuse_too_long(legs);
    if (!problems_.empty())
        throw geo::InputError(std::move(problems_));
    Route route;
    for (const geo::TrackFile& file : shelf_.files) {
        for (const geo::Track& track : file.tracks)
            route.repairs += track.repairs;
        for (const std::string& words : file.left_out)
            route.cautions.push_back(
                {.level = Level::note,
                 .code = "left-out",
                 .day = std::nullopt,
                 .leg = std::nullopt,
                 .text = fmt::format("{}: left out: {}.", file.file.filename().string(), words),
                 .source = "docs/tracks.md"});
        route.sources.push_back(fmt::format("{}: {} tracks, {} waypoints",
                                            file.file.filename().string(),
                                            file.tracks.size(),
                                            file.waypoints.size()));
    }
    warn_of_wander(route);
    if (elevation_)
        for (std::string& line : elevation_->describe())
            route.sources.push_back(std::move(line));
    lay(route, std::move(legs));
    if (!problems_.empty())
        throw geo::InputError(std::move(problems_));
    places_.snap(route, trip_.route.places);
    if (std::vector<geo::Problem> problems = problems_on_route(trip_, route); !problems.empty())
        throw geo::InputError(std::move(problems));
    read_land(trip_, route);
    for (Caution& fact : land_facts(route))
        route.cautions.push_back(std::move(fact));
    std::vector<OtherRoute> others = other_routes(trip_, route, places_);
    if (elevation_ && speaks_of_snow(trip_)) {
        route.steep = steep_ground(route, *elevation_);
        for (OtherRoute& other : others)
            other.route.steep = steep_ground(other.route, *elevation_);
    }
    return {std::move(route), std::move(others)};
}

} // namespace

BuiltRoute build_routes(const Trip& trip) {
    return RouteBuilder(trip).build();
}

Route build_route(const Trip& trip) {
    return build_routes(trip).route;
}

} // namespace tumpline::planner
