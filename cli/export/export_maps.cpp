#include "cli/export/export_maps.h"

#include "cli/export/export_parts.h"
#include "cli/files/output_mark.h"
#include "cli/words/text_width.h"
#include "cli/words/words.h"
#include "geo/layers/write_features.h"
#include "geo/light/time_zone.h"
#include "planner/quantities/quantities.h"

#include <fmt/format.h>

#include <utility>

namespace tumpline::cli {

namespace {

geo::OutValue said(const std::string& text) {
    return {.text = one_line(text), .number = std::nullopt};
}

geo::OutValue counted(double number) {
    return {.text = {}, .number = number};
}

geo::OutFeature
leg_feature(const planner::Plan& plan, const planner::Route& route, const planner::PlanLeg& leg) {
    geo::OutFeature feature;
    const std::vector<std::string> cautions = export_cautions(plan, leg);
    const auto hour = [&](geo::sys_seconds at) {
        return said(geo::rfc3339(at, plan.trip.time_zone));
    };
    feature.fields = {{"name", said(export_name(leg))},
                      {"description", said(fmt::to_string(fmt::join(cautions, " ")))},
                      {"travel", said(std::string(word(leg.travel)))},
                      {"leg", counted(static_cast<double>(leg.leg.printed()))},
                      {"day", counted(leg.day)},
                      {"distance_m", counted(leg.length_m())},
                      {"moving_s", counted(leg.moving_s)},
                      {"starts", hour(leg.start)},
                      {"ends", hour(leg.end)}};
    if (leg.heights_known) {
        feature.fields.emplace_back("ascent_m", counted(leg.ascent_m));
        feature.fields.emplace_back("descent_m", counted(leg.descent_m));
    }
    for (const ExportLine& part : cut_at_antimeridian(export_line(leg, route))) {
        std::vector<geo::OutPoint>& line = feature.parts.emplace_back();
        for (const ExportPoint& point : part)
            line.push_back({point.at, point.height_m});
    }
    return feature;
}

geo::OutFeature place_feature(const ExportPlace& place, const planner::Plan& plan) {
    geo::OutFeature feature;
    std::vector<std::string> parts = export_left(place, plan);
    if (!place.note.empty())
        parts.insert(parts.begin(), place.note);
    feature.fields = {{"name", said(place.name)},
                      {"description", said(fmt::to_string(fmt::join(parts, ". ")))},
                      {"kind", said(std::string(place.kind))},
                      {"along_m", counted(place.along_m)}};
    if (!place.nights.empty())
        feature.fields.emplace_back("night_after_day", counted(place.nights.front()));
    feature.parts = {{{place.at, place.height_m}}};
    return feature;
}

std::vector<geo::OutLayer> layers(const planner::Plan& plan, const planner::Route& route) {
    geo::OutLayer legs{.name = "legs", .points = false, .features = {}};
    for (const planner::PlanLeg& leg : plan.legs)
        legs.features.push_back(leg_feature(plan, route, leg));
    geo::OutLayer places{.name = "places", .points = true, .features = {}};
    for (const ExportPlace& place : export_places(plan, route))
        places.features.push_back(place_feature(place, plan));
    return {std::move(legs), std::move(places)};
}

} // namespace

std::string export_gpkg(const planner::Plan& plan, const planner::Route& route) {
    return marked(geo::geopackage({.layers = layers(plan, route),
                                   .mark = blank_mark,
                                   .date = planner::show_date(plan.trip.start)}));
}

std::string export_kml(const planner::Plan& plan, const planner::Route& route) {
    return marked(geo::kml({.layers = layers(plan, route),
                            .mark = blank_mark,
                            .date = planner::show_date(plan.trip.start)}));
}

} // namespace tumpline::cli
