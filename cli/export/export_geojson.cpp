#include "cli/export/export_geojson.h"

#include "cli/export/export_parts.h"
#include "cli/files/output_mark.h"
#include "cli/words/json_values.h"
#include "cli/words/leg_fields.h"
#include "cli/words/text_width.h"
#include "cli/words/words.h"
#include "geo/ground/elevation.h"
#include "geo/ground/geoid.h"
#include "planner/quantities/quantities.h"

#include <fmt/format.h>

#include <algorithm>
#include <optional>
#include <string_view>
#include <vector>

namespace tumpline::cli {

namespace {

std::string in_one_line(const Json& json) {
    return json.dump(-1, ' ', false, Json::error_handler_t::replace);
}

/// Coordinates are written by hand: a document in memory would take fifty times the room of the
/// text of a long line.
void append_position(std::string& text, const ExportPoint& point, bool heights) {
    text.push_back('[');
    append_degrees(text, point.at.lon_deg);
    text.push_back(',');
    append_degrees(text, point.at.lat_deg);
    if (heights && point.height_m) {
        text.push_back(',');
        append_metres(text, *point.height_m);
    }
    text.push_back(']');
}

void append_line(std::string& text, const ExportLine& line, bool heights) {
    text.push_back('[');
    bool first = true;
    for (const ExportPoint& point : line) {
        if (!first)
            text.push_back(',');
        first = false;
        append_position(text, point, heights);
    }
    text.push_back(']');
}

void append_feature(std::string& text, const Json& properties, std::string_view geometry) {
    text.append("{\"type\":\"Feature\",\"properties\":").append(in_one_line(properties));
    text.append(",\"geometry\":").append(geometry).append("}");
}

/// Turns heights above the geoid into those above the ellipsoid. Whether all could be.
bool to_ellipsoid(ExportLine& line) {
    for (ExportPoint& point : line) {
        const std::optional<double> geoid_m =
            point.height_m ? geo::geoid_height_m(point.at) : std::nullopt;
        if (!geoid_m)
            return false;
        point.height_m = *point.height_m + *geoid_m;
    }
    return true;
}

Json leg_properties(const planner::Plan& plan, const planner::PlanLeg& leg) {
    Json properties = {{"kind", "leg"}};
    for (const LegField& field : leg_fields(plan, leg))
        properties[std::string(field.key)] = field_json(field.value);
    properties["name"] = one_line(leg.name);
    for (const planner::MemberLoad& load : leg.loads)
        for (const LegField& field : pack_fields(load))
            properties[fmt::format("{} {}", one_line(load.member), field.key)] =
                field_json(field.value);
    properties["cautions"] = export_cautions(plan, leg);
    return properties;
}

void append_leg(std::string& text,
                const planner::Plan& plan,
                const planner::PlanLeg& leg,
                const planner::Route& route) {
    ExportLine line = export_line(leg, route);
    if (line.empty())
        return append_feature(text, leg_properties(plan, leg), "null");
    const bool heights = to_ellipsoid(line);
    const std::vector<ExportLine> parts = cut_at_antimeridian(line);
    std::string geometry = parts.size() == 1 ? "{\"type\":\"LineString\",\"coordinates\":"
                                             : "{\"type\":\"MultiLineString\",\"coordinates\":[";
    for (const ExportLine& part : parts) {
        if (&part != &parts.front())
            geometry.push_back(',');
        append_line(geometry, part, heights);
    }
    geometry += parts.size() == 1 ? "}" : "]}";
    append_feature(text, leg_properties(plan, leg), geometry);
}

void append_place(std::string& text, const ExportPlace& place, const planner::Plan& plan) {
    Json properties = {{"kind", place.kind},
                       {"name", place.name},
                       {"along_m", place.along_m},
                       {"passes", place.passes},
                       {"ele_m", place.height_m ? Json(*place.height_m) : Json(nullptr)},
                       {"note", place.note}};
    if (!place.nights.empty()) {
        properties["night_after_day"] = place.nights.front();
        properties["nights"] = place.nights.size();
        properties["dry_camp"] = place.dry;
    }
    if (!place.left.empty())
        properties["left"] = export_left(place, plan);
    std::string geometry = "{\"type\":\"Point\",\"coordinates\":";
    append_position(geometry, {place.at, std::nullopt}, false);
    append_feature(text, properties, geometry + "}");
}

} // namespace

std::string export_geojson(const planner::Plan& plan, const planner::Route& route) {
    std::string text =
        fmt::format(R"({{"type":"FeatureCollection","mark":"{}","features":[)", blank_mark);
    bool first = true;
    const auto next = [&] {
        text += first ? "\n" : ",\n";
        first = false;
    };
    for (const planner::PlanLeg& leg : plan.legs) {
        next();
        append_leg(text, plan, leg, route);
    }
    for (const ExportPlace& place : export_places(plan, route)) {
        next();
        append_place(text, place, plan);
    }
    return marked(text + "\n]}\n");
}

} // namespace tumpline::cli
