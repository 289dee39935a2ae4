#include "cli/text/pace_text.h"

#include "cli/words/json_values.h"
#include "cli/words/table.h"
#include "cli/words/words.h"

#include <fmt/format.h>

#include <cmath>
#include <optional>
#include <utility>
#include <vector>

namespace tumpline::cli {

namespace {

using planner::LearnedFigure;
using planner::LearnedPace;

constexpr double few_hours = 3.0; // common practice, no source
constexpr double longest_still_end_s = 600.0;
constexpr double fastest_calm_mps = 7.4 / 3.6; // 4 knots

std::string speed(double speed_mps, planner::UnitSystem units) {
    return planner::show_speed(speed_mps, units);
}

/// Adds a row if there is a figure; `show` makes text of its values.
template <typename Show>
void add(Table& table,
         const std::string& what,
         const std::optional<LearnedFigure>& figure,
         Show show) {
    if (figure)
        table.row({what,
                   show(figure->value),
                   fmt::format("{} to {}", show(figure->low), show(figure->high)),
                   fmt::format("{:.1f}", figure->hours),
                   fmt::format("{}", figure->samples)});
}

std::string figures(const LearnedPace& learned, const Reader& reader) {
    const planner::UnitSystem units = reader.units;
    const auto show_speed = [&](double speed_mps) { return speed(speed_mps, units); };
    const auto factor = [](double value) { return fmt::format("{:.2f}", value); };
    const auto time = [](double time_s) { return planner::show_duration(time_s); };
    Table table({{"Learned"}, {"", true}, {"Between"}, {"Hours", true}, {"Samples", true}});
    add(table,
        fmt::format("pace, a factor on {}", planner::walking_model_name(learned.model)),
        learned.pace,
        factor);
    add(table, "speed on the level", learned.level_speed_mps, show_speed);
    add(table, "calm speed afloat", learned.calm_speed_mps, show_speed);
    add(table, "on flowing water, current included", learned.flowing_speed_mps, show_speed);
    add(table, "boots to boat", learned.boots_to_boat_s, time);
    add(table, "boat to boots", learned.boat_to_boots_s, time);
    add(table, "landing at a portage", learned.landing_s, time);
    add(table, "rest per hour on the move", learned.rest_per_hour_s, time);
    return table.text(2, reader.columns);
}

std::string slopes(const LearnedPace& learned, const Reader& reader) {
    const planner::UnitSystem units = reader.units;
    Table table(
        {{"Slope", true}, {"Speed", true}, {"Between"}, {"Climb per hour", true}, {"Hours", true}});
    const auto percent = [](double slope) { return fmt::format("{:+.0f}", 100.0 * slope); };
    for (const planner::SlopePace& row : learned.slopes) {
        const bool lowest = row.from <= -1.0;
        const bool highest = row.to >= 1.0;
        const double climb_m = row.climb_mps * planner::s_per_h;
        table.row(
            {lowest    ? fmt::format("below {} %", percent(row.to))
             : highest ? fmt::format("above {} %", percent(row.from))
                       : fmt::format("{} to {} %", percent(row.from), percent(row.to)),
             speed(row.speed_mps.value, units),
             fmt::format(
                 "{} to {}", speed(row.speed_mps.low, units), speed(row.speed_mps.high, units)),
             fmt::format(
                 "{}{}", climb_m < 0.0 ? "-" : "", planner::show_height(std::abs(climb_m), units)),
             fmt::format("{:.1f}", row.speed_mps.hours)});
    }
    return table.empty() ? std::string() : "\nOn slopes\n" + table.text(2, reader.columns);
}

std::string fits(const LearnedPace& learned, const Reader& reader) {
    Table table({{"Model"}, {"Pace", true}, {"Scatter", true}, {"Off", true}});
    for (const planner::ModelFit& fit : learned.fits)
        table.row({std::string(planner::walking_model_name(fit.model)),
                   fmt::format("{:.2f}", fit.pace),
                   fmt::format("{:.0f} %", 100.0 * fit.scatter),
                   fit.off ? fmt::format("{:.1f} %", 100.0 * *fit.off) : std::string("unknown")});
    return table.empty()
               ? std::string()
               : "\nModels, the one that fits best first\n" + table.text(2, reader.columns);
}

/// Which model to choose; empty where too little was recorded to tell.
std::string advice(const LearnedPace& learned, const Reader& reader) {
    const auto say = [&](const std::string& text) { return hanging("- ", text, reader.columns); };
    if (!learned.advice)
        return learned.fits.empty()
                   ? std::string()
                   : say("No model is recommended: that takes an hour on foot in stretches of "
                         "ten minutes.");
    const auto name = [](const planner::ModelFit& fit) {
        return planner::walking_model_name(fit.model);
    };
    const planner::ModelAdvice& advice = *learned.advice;
    const std::string misses = fmt::format(
        "{} misses stretches to which it was not fitted by {:.1f} %, {} by {:.1f} % (off, above)",
        name(advice.best),
        100.0 * advice.best.off.value_or(0.0),
        name(advice.other),
        100.0 * advice.other.off.value_or(0.0));
    if (!advice.clear)
        return say(fmt::format("No model fits clearly best: {}; a difference of {:.1f} % decides "
                               "nothing.",
                               misses,
                               100.0 * advice.margin));
    if (advice.best.model == learned.model)
        return say(fmt::format("{} fits best: {}.", name(advice.best), misses));
    return say(fmt::format("{} fits best: {}. For it write \"walking\": \"{}\" and {}, or "
                           "run this again with --walking {}.",
                           name(advice.best),
                           misses,
                           name(advice.best),
                           advice.best.model == planner::WalkingModel::constant
                               ? std::string("a level speed")
                               : fmt::format("\"pace\": {:.2f}", advice.best.pace),
                           name(advice.best)));
}

/// Lines for a trip file with their section.
std::vector<std::pair<std::string, std::string>> lines(const LearnedPace& learned) {
    std::vector<std::pair<std::string, std::string>> lines;
    const auto minutes = [](const LearnedFigure& figure) {
        return fmt::format("{:.0f} min", std::round(figure.value / planner::s_per_min));
    };
    const auto kmh = [](const LearnedFigure& figure) {
        return fmt::format("{:.1f} km/h", figure.value / planner::mps_per_kmh);
    };
    const bool constant = learned.model == planner::WalkingModel::constant;
    if (learned.level_speed_mps && constant)
        lines.emplace_back("/party/0",
                           fmt::format("\"level_speed\": \"{}\"", kmh(*learned.level_speed_mps)));
    else if (learned.pace && !constant)
        lines.emplace_back("/party/0", fmt::format("\"pace\": {:.2f}", learned.pace->value));
    if (learned.pace)
        lines.emplace_back(
            "/models",
            fmt::format("\"walking\": \"{}\"", planner::walking_model_name(learned.model)));
    if (learned.calm_speed_mps)
        lines.emplace_back("/craft/0",
                           fmt::format("\"calm_speed\": \"{}\"", kmh(*learned.calm_speed_mps)));
    for (const auto& [key, figure] : {std::pair("boots_to_boat", &learned.boots_to_boat_s),
                                      std::pair("boat_to_boots", &learned.boat_to_boots_s),
                                      std::pair("landing", &learned.landing_s)})
        if (*figure)
            lines.emplace_back("/changeovers",
                               fmt::format("\"{}\": \"{}\"", key, minutes(**figure)));
    if (learned.rest_per_hour_s)
        lines.emplace_back(
            "/days", fmt::format("\"rest_per_hour\": \"{}\"", minutes(*learned.rest_per_hour_s)));
    return lines;
}

std::string to_paste(const LearnedPace& learned, const Reader& reader) {
    std::string text = "\nFor a trip file\n";
    Table table({{"In"}, {"Line"}});
    for (const auto& [place, line] : lines(learned))
        table.row({place, line});
    return text + table.text(2, reader.columns);
}

std::string remarks(const LearnedPace& learned, const Reader& reader) {
    std::string text = "\n" + advice(learned, reader);
    const auto add = [&](std::string_view remark) {
        text += hanging("- ", std::string(remark), reader.columns);
    };
    const auto few = [](const std::optional<LearnedFigure>& figure) {
        return figure && figure->hours < few_hours;
    };
    if (few(learned.pace) || few(learned.calm_speed_mps))
        add("Less than 3 hours stand behind a figure here: one day's form, weather and ground. "
            "Record "
            "more before you lean on it.");
    add("Learned under the pack, on the ground and in the weather of that day. The plan slows a "
        "walker "
        "for pack and ground again: name them with --load and --body, and record on paths.");
    if (learned.pace && !learned.level_walked)
        add("Less than ten minutes of level ground were walked: no level speed is learned, and the "
            "pace holds for slopes like these.");
    if (!learned.rest_per_hour_s)
        add("Less than an hour on the move: no rest per hour is learned.");
    if (learned.still_ends_s >= longest_still_end_s)
        add(fmt::format("{} without motion before a start or after an end count as no rest.",
                        planner::show_duration(learned.still_ends_s)));
    if (learned.calm_speed_mps && learned.calm_speed_mps->value > fastest_calm_mps)
        add("The calm speed is above 7.4 km/h, which the trained hold in a sea kayak: was there a "
            "current, a sail or a motor?");
    if (learned.calm_speed_mps)
        add("The calm speed holds what wind there was; record in calm air, or out and back.");
    if (learned.flowing_speed_mps)
        add("The speed on flowing water holds the current and is nobody's calm speed.");
    if (!learned.heights)
        add("Heights are not known everywhere on foot: there the ground counts as level.");
    return text;
}

Json figure_json(const std::optional<LearnedFigure>& figure) {
    if (!figure)
        return nullptr;
    return {{"value", figure->value},
            {"low", figure->low},
            {"high", figure->high},
            {"hours", figure->hours},
            {"samples", figure->samples}};
}

Json advice_json(const LearnedPace& learned) {
    if (!learned.advice)
        return nullptr;
    const planner::ModelAdvice& advice = *learned.advice;
    return {{"model", planner::walking_model_name(advice.best.model)},
            {"pace", advice.best.pace},
            {"off", or_null(advice.best.off)},
            {"beside", planner::walking_model_name(advice.other.model)},
            {"beside_off", or_null(advice.other.off)},
            {"margin", advice.margin},
            {"clear", advice.clear}};
}

Json tracks_json(const planner::Recorded& recorded) {
    Json tracks = Json::array();
    for (const planner::TrackReading& track : recorded.tracks)
        tracks.push_back({{"name", track.name},
                          {"taken_as", track.taken_as},
                          {"why", track.why},
                          {"moving_s", track.moving_s}});
    return tracks;
}

Json against_json(const Compared& compared) {
    Json legs = Json::array();
    for (const planner::LegAgainst& row : compared.against.legs) {
        const planner::PlanLeg& leg = compared.plan.legs[row.plan_leg.index()];
        legs.push_back({{"leg", leg.leg},
                        {"part", leg.part == 0 ? Json(nullptr) : Json(leg.part)},
                        {"day", leg.day},
                        {"name", leg.name},
                        {"travel", word(leg.travel)},
                        {"planned_s", row.planned_s},
                        {"recorded_s", row.recorded_s},
                        {"covered", row.covered},
                        {"ratio", or_null(row.ratio)}});
    }
    return {{"legs", legs},
            {"on_foot", or_null(compared.against.on_foot)},
            {"afloat", or_null(compared.against.afloat)},
            {"off_route_s", compared.against.off_route_s},
            {"other_way_s", compared.against.other_way_s}};
}

} // namespace

std::string pace_text(const LearnedPace& learned, const Reader& reader) {
    return figures(learned, reader) + slopes(learned, reader) + fits(learned, reader) +
           to_paste(learned, reader) + remarks(learned, reader);
}

std::string pace_json(const planner::Recorded& recorded,
                      const LearnedPace& learned,
                      const std::optional<Compared>& compared,
                      std::string_view version) {
    Json slopes = Json::array();
    for (const planner::SlopePace& row : learned.slopes)
        slopes.push_back({{"from", row.from},
                          {"to", row.to},
                          {"speed_mps", figure_json(row.speed_mps)},
                          {"climb_mps", row.climb_mps}});
    Json fits = Json::array();
    for (const planner::ModelFit& fit : learned.fits)
        fits.push_back({{"model", planner::walking_model_name(fit.model)},
                        {"pace", fit.pace},
                        {"scatter", fit.scatter},
                        {"off", or_null(fit.off)}});
    Json lines_json = Json::array();
    for (const auto& [place, line] : lines(learned))
        lines_json.push_back({{"place", place}, {"line", line}});
    Json json = {{"version", version},
                 {"model", planner::walking_model_name(learned.model)},
                 {"pace", figure_json(learned.pace)},
                 {"level_speed_mps", figure_json(learned.level_speed_mps)},
                 {"calm_speed_mps", figure_json(learned.calm_speed_mps)},
                 {"flowing_speed_mps", figure_json(learned.flowing_speed_mps)},
                 {"boots_to_boat_s", figure_json(learned.boots_to_boat_s)},
                 {"boat_to_boots_s", figure_json(learned.boat_to_boots_s)},
                 {"landing_s", figure_json(learned.landing_s)},
                 {"rest_per_hour_s", figure_json(learned.rest_per_hour_s)},
                 {"halted_s", learned.halted_s},
                 {"still_ends_s", learned.still_ends_s},
                 {"heights", learned.heights},
                 {"level_walked", learned.level_walked},
                 {"slopes", slopes},
                 {"models", fits},
                 {"advice", advice_json(learned)},
                 {"tracks", tracks_json(recorded)},
                 {"too_fast_s", recorded.too_fast_s},
                 {"other_s", recorded.other_s},
                 {"unsure_s", recorded.unsure_s},
                 {"lines", lines_json}};
    if (compared)
        json["against"] = against_json(*compared);
    return in_lines(json);
}

} // namespace tumpline::cli
