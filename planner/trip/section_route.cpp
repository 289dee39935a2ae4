#include "planner/models/river.h"
#include "planner/trip/route_distance.h"
#include "planner/trip/sections.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace tumpline::planner {

namespace {

using Kind = JsonValue::Kind;

/// Of a grown-up; common practice, no source.
constexpr double knee_m = 0.5;
constexpr double thigh_m = 0.8;

void read_paths(const TripValue& value, std::vector<std::filesystem::path>& paths) {
    for (const TripValue& item : value.items("the name of a file"))
        if (const std::optional<std::string> name = item.name())
            paths.emplace_back(*name);
}

/// 1, 1.5, 2, 3 or "auto".
void read_carries(const TripValue& value, TripLeg& leg) {
    const JsonValue& json = value.json();
    if (json.kind == Kind::text && json.text == "auto")
        return; // the same as leaving it out
    constexpr std::array choices{1.0, 1.5, 2.0, 3.0};
    if (json.kind == Kind::number &&
        std::find(choices.begin(), choices.end(), json.number) != choices.end())
        leg.carries = json.number;
    else
        value.add_problem("1, 1.5, 2, 3 or \"auto\"");
}

/// GeoJSON's order, longitude first; or a distance along the route.
void read_position(const TripValue& value, TripPlace& place) {
    const JsonValue& json = value.json();
    if (json.kind == Kind::text) {
        place.along = read_route_distance(json.text);
        if (!place.along)
            value.add_problem(std::string(route_distance_form),
                              "or a position, for instance [13.1021, 61.5210]");
        return;
    }
    const bool two_numbers = json.kind == Kind::list && json.items.size() == 2 &&
                             json.items[0].kind == Kind::number &&
                             json.items[1].kind == Kind::number;
    if (!two_numbers) {
        value.add_problem("[longitude, latitude] in degrees, two numbers",
                          "for instance [13.1021, 61.5210]");
        return;
    }
    const geo::Position at{.lat_deg = json.items[1].number, .lon_deg = json.items[0].number};
    if (geo::is_valid(at)) {
        place.at = at;
        return;
    }
    const geo::Position swapped{.lat_deg = at.lon_deg, .lon_deg = at.lat_deg};
    value.problems().add(
        value.place(),
        {.found = fmt::format("[{}, {}]", json.items[0].text, json.items[1].text),
         .expected = "[longitude, latitude], within 180 and 90 degrees",
         .advice = geo::is_valid(swapped)
                       ? fmt::format("write [{}, {}]", json.items[1].text, json.items[0].text)
                       : std::string()});
}

/// Only a route of legs without tracks needs no file.
void check_tracks(const TripValue& route) {
    const JsonValue* tracks = route.json().find("tracks");
    if (tracks && (tracks->kind != Kind::list || !tracks->items.empty()))
        return;
    if (tracks)
        return route.problems().add(
            route.place() + "/tracks",
            {.found = "an empty list", .expected = "at least one file with a track", .advice = {}});
    const JsonValue* legs = route.json().find("legs");
    const bool undrawn = legs && legs->kind == Kind::list && !legs->items.empty() &&
                         std::all_of(legs->items.begin(), legs->items.end(), [](const auto& leg) {
                             if (leg.kind != Kind::object)
                                 return false;
                             const JsonValue* travel = leg.find("travel");
                             const bool ride = travel && travel->kind == Kind::text &&
                                               travel->text == "ride" && !leg.find("track");
                             return ride || leg.find("length");
                         });
    if (!undrawn)
        route.problems().add(route.place(),
                             {.found = "no \"tracks\"",
                              .expected = "at least one file with a track, or nothing but legs "
                                          "with a \"length\" and rides",
                              .advice = {}});
}

/// A length, or a measure of the body.
void read_wading_depth(const TripValue& value, std::optional<double>& depth_m) {
    const JsonValue& json = value.json();
    if (json.kind == Kind::text && json.text == "knee")
        depth_m = knee_m;
    else if (json.kind == Kind::text && json.text == "thigh")
        depth_m = thigh_m;
    else
        put(depth_m, value.quantity({Dimension::length, 0.0, 10.0}));
}

/// A ride needs neither track nor length: it is known by its time.
void read_legs(const TripValue& value, TripRoute& route) {
    if (!is_short_enough(value, most_legs, "plan the trip in parts"))
        return;
    read_list(value, leg_section(), route.legs);
    for (TripLeg& leg : route.legs)
        if (leg.travel == Travel::ride && leg.track.empty() && !leg.length_m)
            leg.length_m = no_length_m;
}

void read_closed(const TripValue& value, TripPlace& place) {
    for (const TripValue& item : value.items("a date"))
        if (const std::optional<Date> date = item.date())
            place.closed.push_back(*date);
}

void read_closed_weekdays(const TripValue& value, TripPlace& place) {
    for (const TripValue& item : value.items("a weekday"))
        if (const std::optional<int> weekday = item.meaning(weekday_words()))
            place.closed_weekdays.push_back(*weekday);
}

} // namespace

void read_route(const TripValue& value, TripRoute& route) {
    read_section(value, route_section(), route);
    if (value.json().kind == Kind::object)
        check_tracks(value);
}

std::vector<std::string_view> river_bed_words() {
    std::vector<std::string_view> words;
    for (const Roughness& row : chow_rows())
        words.push_back(row.name);
    return words;
}

const Section<RiverBed>& river_bed_section() {
    static const Section<RiverBed> section{
        "river_bed",
        "a river bed",
        {
            {"type",
             Need::may,
             [](const TripValue& v, RiverBed& b) { put(b.type, v.one_of(river_bed_words())); }},
            {"depth",
             Need::may,
             [](const TripValue& v, RiverBed& b) {
                 put(b.depth_m, v.quantity({Dimension::length, 0.05, 50.0}));
             }},
            {"roughness",
             Need::may,
             [](const TripValue& v, RiverBed& b) {
                 put(b.roughness, v.number({0.01, 0.3}));
             }},
        }};
    return section;
}

const Section<TripLeg>& leg_section() {
    static const Section<TripLeg> section{
        "leg",
        "a leg",
        {
            {"name", Need::may, [](const TripValue& v, TripLeg& l) { put(l.name, v.name()); }},
            {"travel",
             Need::may,
             [](const TripValue& v, TripLeg& l) { put(l.travel, v.meaning(travel_words())); }},
            {"track", Need::may, [](const TripValue& v, TripLeg& l) { put(l.track, v.name()); }},
            {"length",
             Need::may,
             [](const TripValue& v, TripLeg& l) {
                 put(l.length_m, v.quantity({Dimension::length, 1.0, 5'000'000.0}));
             }},
            {"ascent",
             Need::may,
             [](const TripValue& v, TripLeg& l) {
                 put(l.ascent_m, v.quantity({Dimension::length, 0.0, 100'000.0}));
             }},
            {"descent",
             Need::may,
             [](const TripValue& v, TripLeg& l) {
                 put(l.descent_m, v.quantity({Dimension::length, 0.0, 100'000.0}));
             }},
            {"from", Need::may, [](const TripValue& v, TripLeg& l) { put(l.from, v.name()); }},
            {"to", Need::may, [](const TripValue& v, TripLeg& l) { put(l.to, v.name()); }},
            {"terrain",
             Need::may,
             [](const TripValue& v, TripLeg& l) { put(l.terrain, v.meaning(terrain_words())); }},
            {"water",
             Need::may,
             [](const TripValue& v, TripLeg& l) { put(l.water, v.meaning(water_words())); }},
            {"current",
             Need::may,
             [](const TripValue& v, TripLeg& l) {
                 put(l.current_mps, v.quantity({Dimension::speed, -8.0, 8.0}));
             }},
            {"class",
             Need::may,
             [](const TripValue& v, TripLeg& l) { put(l.river_class, v.river_class()); }},
            {"carries", Need::may, read_carries},
            {"boat_on_carry",
             Need::may,
             [](const TripValue& v, TripLeg& l) {
                 put(l.boat_on_carry, v.meaning(boat_on_carry_words()));
             }},
            {"carry_by",
             Need::may,
             [](const TripValue& v, TripLeg& l) {
                 if (const auto by = v.meaning(carry_by_words()))
                     l.carry_by = *by;
             }},
            {"cart", Need::may, [](const TripValue& v, TripLeg& l) { put(l.cart, v.yes_or_no()); }},
            {"river_bed",
             Need::may,
             [](const TripValue& v, TripLeg& l) {
                 read_section(v, river_bed_section(), l.bed.emplace());
             }},
            {"drinkable",
             Need::may,
             [](const TripValue& v, TripLeg& l) { put(l.drinkable, v.yes_or_no()); }},
            {"shelter",
             Need::may,
             [](const TripValue& v, TripLeg& l) {
                 put(l.shelter, v.number({0.0, 1.0}));
             }},
            {"open_crossing",
             Need::may,
             [](const TripValue& v, TripLeg& l) { put(l.open_crossing, v.yes_or_no()); }},
            {"footprint",
             Need::may,
             [](const TripValue& v, TripLeg& l) {
                 put(l.footprint_m, v.quantity({Dimension::length, 0.0, 1.0}));
             }},
            {"scouts",
             Need::may,
             [](const TripValue& v, TripLeg& l) {
                 put(l.scouts, v.whole_number({0, 100}));
             }},
            {"night",
             Need::may,
             [](const TripValue& v, TripLeg& l) { put(l.night, v.yes_or_no()); }},
            {"instead_of",
             Need::may,
             [](const TripValue& v, TripLeg& l) { put(l.instead_of, v.name()); }},
            {"source", Need::may, [](const TripValue& v, TripLeg& l) { put(l.source, v.text()); }},
            {"note", Need::may, [](const TripValue& v, TripLeg& l) { put(l.note, v.text()); }},
            {"fetch",
             Need::may,
             [](const TripValue& v, TripLeg& l) {
                 put(l.fetch_m, v.quantity({Dimension::length, 10.0, 1'000'000.0}));
             }},
            {"flow",
             Need::may,
             [](const TripValue& v, TripLeg& l) {
                 read_section(v, flow_section(), l.flow.emplace());
             }},
            {"speed",
             Need::may,
             [](const TripValue& v, TripLeg& l) {
                 put(l.led_mps, v.quantity({Dimension::speed, 0.02, 3.0}));
             }},
            {"depth",
             Need::may,
             [](const TripValue& v, TripLeg& l) { read_wading_depth(v, l.wading_m); }},
            {"lasts",
             Need::may,
             [](const TripValue& v, TripLeg& l) {
                 put(l.lasts_s, v.quantity({Dimension::duration, 60.0, 86'400.0}));
             }},
            {"weather",
             Need::may,
             [](const TripValue& v, TripLeg& l) {
                 read_section(v, leg_weather_section(), l.weather.emplace());
             }},
        }};
    return section;
}

const Section<TripPlace>& place_section() {
    static const Section<TripPlace> section{
        "place",
        "a place",
        {
            {"name", Need::must, [](const TripValue& v, TripPlace& p) { put(p.name, v.name()); }},
            {"kind",
             Need::must,
             [](const TripValue& v, TripPlace& p) { put(p.kind, v.meaning(place_kind_words())); }},
            {"at", Need::may, read_position},
            {"water",
             Need::may,
             [](const TripValue& v, TripPlace& p) { put(p.water, v.yes_or_no()); }},
            {"closed", Need::may, read_closed},
            {"closed_weekdays", Need::may, read_closed_weekdays},
            {"holds",
             Need::may,
             [](const TripValue& v, TripPlace& p) {
                 put(p.holds, v.whole_number({1, 1000}));
             }},
            {"food",
             Need::may,
             [](const TripValue& v, TripPlace& p) {
                 put(p.food_mass_kg, v.quantity({Dimension::mass, 0.0, 500.0}));
             }},
            {"note", Need::may, [](const TripValue& v, TripPlace& p) { put(p.note, v.text()); }},
            {"depth",
             Need::may,
             [](const TripValue& v, TripPlace& p) { read_wading_depth(v, p.depth_m); }},
            {"speed",
             Need::may,
             [](const TripValue& v, TripPlace& p) {
                 put(p.speed_mps, v.quantity({Dimension::speed, 0.0, 8.0}));
             }},
        }};
    return section;
}

const Section<TripRoute>& route_section() {
    static const Section<TripRoute> section{
        "route",
        "the route",
        {
            {"tracks",
             Need::may,
             [](const TripValue& v, TripRoute& r) { read_paths(v, r.tracks); }},
            {"elevation",
             Need::may,
             [](const TripValue& v, TripRoute& r) { read_paths(v, r.elevation); }},
            {"legs", Need::may, [](const TripValue& v, TripRoute& r) { read_legs(v, r); }},
            {"places",
             Need::may,
             [](const TripValue& v, TripRoute& r) {
                 if (is_short_enough(v, most_places, "keep the places that the trip can come by"))
                     read_list(v, place_section(), r.places);
             }},
            {"step",
             Need::may,
             [](const TripValue& v, TripRoute& r) {
                 put(r.step_m, v.quantity({Dimension::length, 1.0, 1000.0}));
             }},
            {"ascent_threshold",
             Need::may,
             [](const TripValue& v, TripRoute& r) {
                 put(r.ascent_threshold_m, v.quantity({Dimension::length, 0.0, 100.0}));
             }},
            {"recorder",
             Need::may,
             [](const TripValue& v, TripRoute& r) {
                 put(r.recorder, v.meaning(height_recorder_words()));
             }},
        }};
    return section;
}

} // namespace tumpline::planner
