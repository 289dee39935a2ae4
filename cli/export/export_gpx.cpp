#include "cli/export/export_gpx.h"

#include "cli/export/export_parts.h"
#include "cli/files/output_mark.h"
#include "cli/words/caution_text.h"
#include "cli/words/text_width.h"
#include "cli/words/version.h"
#include "cli/words/words.h"
#include "geo/light/time_zone.h"
#include "geo/utf8.h"
#include "planner/quantities/quantities.h"

#include <fmt/format.h>

#include <cstddef>
#include <string_view>
#include <vector>

namespace tumpline::cli {

namespace {

using planner::UnitSystem;

/// `text` as characters that XML allows, markup told as entities; one_line has taken away control
/// characters and bytes that are no UTF-8.
std::string escaped(std::string_view text) {
    std::string safe;
    safe.reserve(text.size());
    while (!text.empty()) {
        const geo::Utf8Character letter =
            geo::first_character(text).value_or(geo::Utf8Character{U'\uFFFD', 1});
        if (letter.code == 0xFFFE || letter.code == 0xFFFF || letter.code == 0xFFFD)
            safe += "\uFFFD"; // the first two are no characters of XML
        else if (letter.code == U'&')
            safe += "&amp;";
        else if (letter.code == U'<')
            safe += "&lt;";
        else if (letter.code == U'>')
            safe += "&gt;";
        else if (letter.code == U'"')
            safe += "&quot;";
        else
            safe += text.substr(0, letter.bytes);
        text.remove_prefix(letter.bytes);
    }
    return safe;
}

/// An element that holds text; nothing at all if there is none.
std::string element(std::string_view name, std::string_view text) {
    return text.empty() ? std::string() : fmt::format("<{0}>{1}</{0}>", name, escaped(text));
}

/// What the file cannot show.
std::string without_line(const planner::Route& route) {
    std::string names;
    for (const planner::RouteLeg& leg : route.legs)
        if (!leg.drawn())
            names += (names.empty() ? "" : ", ") + one_line(leg.name);
    return names.empty() ? names
                         : fmt::format("\nNot in this file, because no line is known: {}.", names);
}

std::string metadata(const planner::Plan& plan, const planner::Route& route) {
    std::string about = fmt::format("Planned by tumpline {} from {}, {} days; not a recording. ",
                                    version(),
                                    planner::show_date(plan.trip.start),
                                    plan.totals.days);
    about += planner::verdict_sentence(plan.verdict.level);
    if (plan.can_be_carried_out())
        about += " Heights and times are estimates; the plan tells what it does not know.";
    about += without_line(route);
    for (const planner::Caution& caution : plan.cautions)
        if (!caution.leg && caution.level != planner::Level::note)
            about += "\n" + one_line(placed_caution_text(caution, UnitSystem::metric));
    return fmt::format("<metadata>{}{}</metadata>\n",
                       element("name", one_line(plan.trip.name)),
                       element("desc", about));
}

std::string night_words(const ExportPlace& place) {
    if (place.nights.empty())
        return place.note;
    std::string text = fmt::format("{} after day {}{}",
                                   place.nights.size() == 1 ? "night" : "nights",
                                   fmt::join(place.nights, ", "),
                                   place.dry ? "; no water here" : "");
    return place.note.empty() ? text : fmt::format("{}. {}", text, place.note);
}

std::string reported(const ExportPlace& place, const planner::Plan& plan) {
    std::vector<std::string> parts = export_left(place, plan);
    if (const std::string night = night_words(place); !night.empty())
        parts.insert(parts.begin(), night);
    return fmt::format("{}", fmt::join(parts, ". "));
}

/// The attributes and the height of a point.
void append_point(std::string& text, std::string_view name, const ExportPoint& point) {
    text.append("<").append(name).append(" lat=\"");
    append_degrees(text, point.at.lat_deg);
    text.append("\" lon=\"");
    append_gpx_longitude(text, point.at.lon_deg);
    text.append("\">");
    if (point.height_m) {
        text.append("<ele>");
        append_metres(text, *point.height_m);
        text.append("</ele>");
    }
}

/// What a receiver may choose a picture by: there is no list of such words that all of them know,
/// so these are plain ones.
std::string_view symbol_word(std::string_view kind) {
    if (kind == "night" || kind == "camp")
        return "camp";
    if (kind == "put-in" || kind == "take-out")
        return "boat landing";
    if (kind == "water")
        return "drinking water";
    if (kind == "resupply" || kind == "cache")
        return "supplies";
    if (kind == "exit")
        return "way out";
    if (kind == "start" || kind == "finish")
        return "flag";
    return kind; // "hazard" and what else is plain already
}

std::string waypoint(const ExportPlace& place, const planner::Plan& plan) {
    std::string text;
    append_point(text, "wpt", {place.at, place.height_m});
    return text + element("name", place.name) + element("desc", reported(place, plan)) +
           element("sym", symbol_word(place.kind)) + element("type", place.kind) + "</wpt>\n";
}

std::string reported(const planner::Plan& plan, const planner::PlanLeg& leg) {
    const auto clock = [&](geo::sys_seconds at) {
        const auto minute = std::chrono::round<std::chrono::minutes>(at);
        return geo::rfc3339(minute, plan.trip.time_zone).substr(11, 5);
    };
    return fmt::format("day {}: {}, {}, {} moving, {} to {} by plan",
                       leg.day,
                       planner::show_distance(leg.length_m(), UnitSystem::metric),
                       climbs_words(leg, UnitSystem::metric),
                       planner::show_duration(leg.moving_s),
                       clock(leg.start),
                       clock(leg.end));
}

void append_track(std::string& text,
                  const planner::Plan& plan,
                  const planner::Route& route,
                  std::size_t index) {
    const planner::PlanLeg& leg = plan.legs[index];
    const ExportLine line = export_line(leg, route);
    if (line.empty())
        return; // the file's description names it
    const std::string cautions = fmt::format("{}", fmt::join(export_cautions(plan, leg), "\n"));
    text += "<trk>" + element("name", export_name(leg)) + element("cmt", cautions) +
            element("desc", reported(plan, leg)) + fmt::format("<number>{}</number>", index + 1) +
            element("type", word(leg.travel)) + "<trkseg>\n";
    for (const ExportPoint& point : line) {
        append_point(text, "trkpt", point);
        text.append("</trkpt>\n");
    }
    text += "</trkseg></trk>\n";
}

} // namespace

std::string export_gpx(const planner::Plan& plan, const planner::Route& route) {
    std::string text = fmt::format("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<!-- {} -->\n"
                                   "<gpx version=\"1.1\" creator=\"tumpline {}\" "
                                   "xmlns=\"http://www.topografix.com/GPX/1/1\">\n",
                                   blank_mark,
                                   version());
    text += metadata(plan, route);
    for (const ExportPlace& place : export_places(plan, route))
        text += waypoint(place, plan);
    for (std::size_t index = 0; index < plan.legs.size(); ++index)
        append_track(text, plan, route, index);
    return marked(text + "</gpx>\n");
}

} // namespace tumpline::cli
