#include "planner/trip/trip_file.h"

#include "planner/trip/cross_check.h"
#include "planner/trip/json_pointer.h"
#include "planner/trip/river_flow.h"
#include "planner/trip/sections.h"

#include <fmt/format.h>

#include <fstream>
#include <sstream>
#include <system_error>

namespace tumpline::planner {

namespace {

using geo::InputError;
using geo::Problem;

[[noreturn]] void
refuse_file(const std::filesystem::path& file, std::string found, std::string expected) {
    throw InputError({Problem{.file = file.string(),
                              .place = {},
                              .found = std::move(found),
                              .expected = std::move(expected),
                              .advice = {}}});
}

[[noreturn]] void refuse_track(const std::filesystem::path& file, std::string_view format) {
    throw InputError(
        {Problem{.file = file.string(),
                 .place = {},
                 .found = fmt::format("a track ({})", format),
                 .expected = "a trip file",
                 .advice = fmt::format("use new: tumpline new {} -o trip.json writes a trip file "
                                       "from it",
                                       file.string())}});
}

/// A track where a trip file should be is told so, by how it begins.
void refuse_tracks(const std::string& text, const std::filesystem::path& file) {
    constexpr std::size_t head = 2000;
    const std::string_view start = std::string_view(text).substr(0, head);
    if (start.starts_with("SQLite format 3"))
        refuse_track(file, "GeoPackage");
    if (start.size() > 12 && start.substr(8, 4) == ".FIT")
        refuse_track(file, "FIT");
    const std::size_t ink = start.find_first_not_of(" \t\r\n\xEF\xBB\xBF");
    if (ink == std::string_view::npos || start[ink] != '<')
        return;
    for (const auto& [tag, format] : {std::pair<std::string_view, std::string_view>{"gpx", "GPX"},
                                      {"kml", "KML"},
                                      {"TrainingCenterDatabase", "TCX"}})
        if (start.find(fmt::format("<{}", tag)) != std::string_view::npos ||
            start.find(fmt::format(":{}", tag)) != std::string_view::npos)
            refuse_track(file, format);
}

/// The same of GeoJSON, which is JSON too.
void refuse_geojson(const JsonValue& document, const std::filesystem::path& file) {
    const JsonValue* type = document.find("type");
    if (type == nullptr || document.find("tumpline") != nullptr)
        return;
    for (const std::string_view known :
         {"FeatureCollection", "Feature", "LineString", "MultiLineString", "GeometryCollection"})
        if (type->text == known)
            refuse_track(file, "GeoJSON");
}

void read_version(const TripValue& value, Trip& /*trip*/) {
    const JsonValue& json = value.json();
    if (json.kind != JsonValue::Kind::number || json.number != 1.0)
        value.add_problem("1, the only version of the trip file's form that there is");
}

/// Paths in the file are relative to it.
void anchor(std::vector<std::filesystem::path>& paths, const std::filesystem::path& file) {
    for (std::filesystem::path& path : paths)
        path = (file.parent_path() / path).lexically_normal();
}

template <class Target> KnownKeys known(const Section<Target>& section) {
    KnownKeys known{.section = std::string(section.name), .keys = {}, .needed = {}};
    for (const Key<Target>& key : section.keys) {
        known.keys.emplace_back(key.name);
        if (key.need == Need::must)
            known.needed.emplace_back(key.name);
    }
    return known;
}

} // namespace

const Section<Trip>& trip_section() {
    static const Section<Trip> section{
        "trip",
        "a trip",
        {
            {"$schema", Need::may, [](const TripValue& v, Trip& /*t*/) { (void)v.text(); }},
            {"tumpline", Need::must, read_version},
            {"name", Need::may, [](const TripValue& v, Trip& t) { put(t.name, v.name()); }},
            {"start", Need::may, [](const TripValue& v, Trip& t) { put(t.start, v.date()); }},
            {"time_zone",
             Need::may,
             [](const TripValue& v, Trip& t) { put(t.time_zone, v.name()); }},
            {"units",
             Need::may,
             [](const TripValue& v, Trip& t) { put(t.units, v.meaning(unit_system_words())); }},
            {"route", Need::must, [](const TripValue& v, Trip& t) { read_route(v, t.route); }},
            {"party",
             Need::must,
             [](const TripValue& v, Trip& t) {
                 if (is_short_enough(v, most_members, "plan for parties that walk together"))
                     read_list(v, member_section(), t.party);
                 if (v.json().kind == JsonValue::Kind::list && v.json().items.empty())
                     v.add_problem("at least one member of the party");
             }},
            {"craft",
             Need::may,
             [](const TripValue& v, Trip& t) {
                 if (is_short_enough(v, most_craft, "plan for parties that paddle together"))
                     read_list(v, craft_section(), t.craft);
             }},
            {"craft_choices",
             Need::may,
             [](const TripValue& v, Trip& t) {
                 if (is_short_enough(v, most_craft_choices, "keep those that are in question"))
                     read_list(v, craft_choice_section(), t.craft_choices);
             }},
            {"kit",
             Need::may,
             [](const TripValue& v, Trip& t) {
                 if (is_short_enough(v, most_things, "put small things together into one line"))
                     read_list(v, kit_section(), t.kit);
             }},
            {"food",
             Need::may,
             [](const TripValue& v, Trip& t) { read_section(v, food_section(), t.food); }},
            {"water",
             Need::may,
             [](const TripValue& v, Trip& t) { read_section(v, water_section(), t.water); }},
            {"fuel",
             Need::may,
             [](const TripValue& v, Trip& t) { read_section(v, fuel_section(), t.fuel); }},
            {"changeovers",
             Need::may,
             [](const TripValue& v, Trip& t) {
                 read_section(v, changeovers_section(), t.changeovers);
             }},
            {"appointments",
             Need::may,
             [](const TripValue& v, Trip& t) {
                 if (is_short_enough(v, most_appointments, "keep those that bind the trip"))
                     read_list(v, appointment_section(), t.appointments);
             }},
            {"connections", Need::may, read_connections},
            {"permits",
             Need::may,
             [](const TripValue& v, Trip& t) {
                 if (is_short_enough(v, most_permits, "keep those that the party must have"))
                     read_list(v, permit_section(), t.permits);
             }},
            {"leave", Need::may, read_leaves},
            {"days",
             Need::may,
             [](const TripValue& v, Trip& t) { read_section(v, days_section(), t.days); }},
            {"weather", Need::may, read_weather},
            {"models",
             Need::may,
             [](const TripValue& v, Trip& t) { read_section(v, models_section(), t.models); }},
            {"spread",
             Need::may,
             [](const TripValue& v, Trip& t) { read_section(v, spread_section(), t.spread); }},
            {"contact",
             Need::may,
             [](const TripValue& v, Trip& t) { read_section(v, contact_section(), t.contact); }},
            {"map",
             Need::may,
             [](const TripValue& v, Trip& t) { read_section(v, map_section(), t.map); }},
        }};
    return section;
}

std::vector<KnownKeys> known_keys() {
    return {
        known(flow_section()),       known(flow_column_section()), known(release_section()),
        known(trip_section()),       known(route_section()),       known(leg_section()),
        known(river_bed_section()),  known(place_section()),       known(member_section()),
        known(craft_section()),      known(kit_section()),         known(condition_section()),
        known(food_section()),       known(shares_section()),      known(water_section()),
        known(fuel_section()),       known(changeovers_section()), known(appointment_section()),
        known(connection_section()), known(permit_section()),      known(days_section()),
        known(halt_section()),       known(weather_section()),     known(leg_weather_section()),
        known(models_section()),     known(spread_section()),      known(contact_section()),
        known(map_section()),        known(layer_section()),       known(leave_section()),
        known(laid_store_section()), known(paddle_section()),      known(craft_choice_section())};
}

std::string trip_file_text(const std::filesystem::path& file) {
    std::error_code error;
    const std::filesystem::file_status status = std::filesystem::status(file, error);
    if (status.type() == std::filesystem::file_type::not_found)
        refuse_file(file, "no such file", "a trip file");
    if (std::filesystem::is_directory(status))
        refuse_file(file, "a folder", "a trip file");
    std::ifstream in(file, std::ios::binary);
    if (!in)
        refuse_file(file, "a file that cannot be opened", "a trip file that you may read");
    // one byte more than may be read, so that what is too long is seen without reading it all
    const std::size_t longest = JsonLimits{}.longest_bytes + 1;
    std::string text;
    std::string block(std::size_t{1} << 16U, '\0');
    while (in && text.size() < longest) {
        in.read(block.data(), static_cast<std::streamsize>(block.size()));
        text.append(block, 0, static_cast<std::size_t>(in.gcount()));
    }
    if (in.bad())
        refuse_file(file, "a file that cannot be read to its end", "a trip file");
    return text;
}

Trip read_trip_text(const std::string& text,
                    const std::filesystem::path& file,
                    const std::vector<Setting>& settings) {
    std::vector<Edit> edits;
    edits.reserve(settings.size());
    for (const Setting& setting : settings)
        edits.push_back(
            {.way = Edit::Way::set, .pointer = setting.pointer, .value = setting.value});
    return edited_trip(text, file, edits);
}

Trip edited_trip(const std::string& text,
                 const std::filesystem::path& file,
                 const std::vector<Edit>& edits) {
    refuse_tracks(text, file);
    JsonValue document = read_json(text, file.string());
    refuse_geojson(document, file);
    Problems problems(file.string());
    for (const Edit& edit : edits) {
        std::string expected = edit_at(document, edit);
        if (!expected.empty())
            problems.add({},
                         {.found = edit.way == Edit::Way::set
                                       ? fmt::format("the setting {}={}", edit.pointer, edit.value)
                                       : fmt::format("the edit {}", edit_words(edit)),
                          .expected = std::move(expected),
                          .advice = {}});
    }
    Trip trip;
    trip.file = file;
    read_section(TripValue(document, {}, problems), trip_section(), trip);
    sum_up_weather(trip);
    check_trip(trip, problems);
    if (!problems.none())
        throw InputError(problems.take());
    set_flows(trip);
    if (trip.name.empty())
        trip.name = file.stem().string();
    anchor(trip.route.tracks, file);
    anchor(trip.route.elevation, file);
    for (geo::LayerSource& layer : trip.map.layers)
        layer.file = (file.parent_path() / layer.file).lexically_normal();
    return trip;
}

Trip read_trip(const std::filesystem::path& file, const std::vector<Setting>& settings) {
    return read_trip_text(trip_file_text(file), file, settings);
}

} // namespace tumpline::planner
