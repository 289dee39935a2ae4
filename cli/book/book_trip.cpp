#include "cli/book/book_parts.h"
#include "cli/drawing/load_band.h"
#include "cli/drawing/load_band_places.h"
#include "cli/words/calendar_words.h"
#include "cli/words/choice_words.h"
#include "cli/words/flow_words.h"
#include "cli/words/meeting_words.h"
#include "cli/words/text_width.h"
#include "cli/words/words.h"
#include "geo/ground/grid_reference.h"
#include "geo/ground/map_projection.h"
#include "planner/cautions/land_groups.h"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <cmath>
#include <utility>

namespace tumpline::cli {

namespace {

using planner::Plan;
using planner::PlanDay;

Drawing wide_of_trip(std::string id) {
    return {.width = wide_drawing, .text = page_text, .names = true, .id = std::move(id)};
}

Drawing narrow_of_trip(std::string id) {
    return {.width = narrow_drawing, .text = page_text, .names = false, .id = std::move(id)};
}

std::vector<Fields> totals(const BookSource& source) {
    const planner::Totals& sum = source.plan.totals;
    const Figures& shown = source.shown;
    std::vector<Fields> rows;
    rows.push_back(
        figure({"Distance", shown.distance(sum.distance_m), ways_phrase(ways_of(sum), shown)}));
    rows.push_back(figure({"On foot",
                           shown.distance(sum.on_foot_m),
                           sum.led_m > 0.0 ? "every pass of a portage, lining and wading counted"
                                           : "every pass of a portage counted"}));
    rows.push_back(climb_figure(sum, shown));
    rows.push_back(figure({"Days",
                           fmt::format("{}", sum.days),
                           fmt::format("{} moving", shown.duration(sum.moving_s))}));
    rows.push_back(figure({"Food", shown.mass(sum.food_kg), "packaging and reserve included"}));
    rows.push_back(figure({"Fuel", shown.mass(sum.fuel_kg), "without containers"}));
    return rows;
}

std::vector<Fields> reason_lines(const std::vector<planner::VerdictReason>& reasons,
                                 const Figures& shown) {
    std::vector<Fields> rows;
    for (const planner::VerdictReason& reason : reasons)
        rows.emplace_back()
            .text("line",
                  shown.units() == planner::UnitSystem::metric ? reason.line.metric
                                                               : reason.line.imperial)
            .text("day", reason.worst.day ? std::to_string(*reason.worst.day) : "");
    return rows;
}

std::vector<Fields> glance(const BookSource& source) {
    const Figures& shown = source.shown;
    std::vector<Fields> rows;
    for (const PlanDay& day : source.plan.days) {
        const planner::MemberDay* laden = planner::most_laden(day);
        Fields& row = rows.emplace_back();
        row.text("day", std::to_string(day.day))
            .text("date", short_date(day.date))
            .text("to", day.to)
            .text("still", day.rest_day ? still_words(day) : std::string())
            .text("distance", day.rest_day ? "" : shown.distance(day.to_m - day.from_m))
            .text("split", ways_phrase(ways_of(day), shown))
            .text("ascent", day.rest_day ? "" : shown.climb(day.ascent_m, day.heights_known))
            .text("descent", day.rest_day || !day.heights_known ? "" : shown.height(day.descent_m))
            .text("set_off", day.rest_day ? "" : shown.clock(day.set_off))
            .text("arrive", shown.clock_on(day.arrive, day.date))
            .text("moving", shown.duration(day.moving_s))
            .text("heaviest", laden ? shown.mass(laden->heaviest_kg) : "none")
            .text("heaviest_member", laden ? laden->member : "");
    }
    return rows;
}

std::vector<Fields> appointments(const BookSource& source) {
    std::vector<Fields> rows;
    for (const planner::PlanAppointment& appointment : source.plan.appointments) {
        Fields& row = rows.emplace_back();
        row.text("what", appointment.what)
            .text("at", appointment.at)
            .text("by",
                  fmt::format("day {}, {}", appointment.day, source.shown.clock(appointment.by)))
            .text("margin",
                  appointment.margin_s > 0.0 ? source.shown.duration(appointment.margin_s) : "")
            .text("arrive", source.shown.clock(appointment.arrive))
            .truth("short", appointment.spare_s < 0.0)
            .text("standing",
                  meeting_words({appointment.spare_s, appointment.margin_s}, source.shown))
            .text("spare", source.shown.duration(std::abs(appointment.spare_s)));
    }
    return rows;
}

/// Every way of carrying all portages, as planned first.
std::vector<Fields> carry_ways(const BookSource& source) {
    const Figures& shown = source.shown;
    std::vector<Fields> rows;
    for (const planner::CarryWay& way : source.plan.carrying.ways) {
        std::string over;
        if (way.over_limit > 0)
            over = fmt::format("over it on {}, by {} at most",
                               counted(way.over_limit, "portage", "portages"),
                               shown.mass(way.most_over_kg));
        if (way.over_limit > 0 && way.within_from_day)
            over += fmt::format("; within it from day {}", *way.within_from_day);
        constexpr double a_minute_s = 60.0;
        std::string against = "as long";
        if (std::abs(way.more_s) >= a_minute_s)
            against = fmt::format("{} {}",
                                  shown.duration(std::abs(way.more_s)),
                                  way.more_s > 0.0 ? "longer" : "shorter");
        rows.emplace_back()
            .text("carries",
                  way.carries ? carries_words(source.plan, *way.carries, way.rolled, way.by)
                              : std::string("as planned"))
            .truth("chosen", !way.carries)
            .text("time", shown.duration(way.moving_s + way.changeover_s))
            .text("against", way.carries ? against : "")
            .text("walked", shown.distance(way.walked_m))
            .text("heaviest", shown.mass(way.heaviest_kg))
            .text("member", way.heaviest_member)
            .text("limit",
                  fmt::format("{}\u00A0%", planner::show_number(100.0 * way.heaviest_ratio, 0)))
            .text("over", over);
    }
    return rows;
}

std::vector<Fields> places(const BookSource& source) {
    struct Row {
        double along_m;
        std::string name;
        std::string kind;
        geo::Position at;
        double off_m;
        int night;
        bool located;
    };

    std::vector<Row> all;
    for (const planner::RoutePlace& place : source.route.places)
        all.push_back({place.along_m,
                       place.name,
                       std::string(place_word(place.kind)),
                       place.at,
                       place.off_m,
                       0,
                       place.located});
    for (const PlanDay& day : source.plan.days) {
        if (&day == &source.plan.days.back() || day.rest_day)
            continue;
        const auto found = std::find_if(all.begin(), all.end(), [&](const Row& row) {
            return std::abs(row.along_m - day.to_m) < 1.0;
        });
        if (found != all.end())
            found->night = day.day;
        else
            all.push_back({day.to_m, day.to, "camp", day.camp, 0.0, day.day, day.camp_located});
    }
    std::stable_sort(
        all.begin(), all.end(), [](const Row& a, const Row& b) { return a.along_m < b.along_m; });
    std::vector<Fields> rows;
    for (const Row& place : all) {
        const std::optional<double> height_m = source.route.height_at(place.along_m);
        Fields& row = rows.emplace_back();
        row.text("along", source.shown.distance(place.along_m))
            .text("name", place.name)
            .text("kind", place.kind)
            .text("off", place.off_m >= 50.0 ? source.shown.distance(place.off_m) : "")
            .text("height", height_m ? source.shown.height(*height_m) : "")
            .text("night", place.night > 0 ? std::to_string(place.night) : "")
            .text("decimal", place.located ? decimal_degrees(place.at) : "no position known")
            .text("minutes", place.located ? degrees_and_minutes(place.at) : "")
            .text("utm", place.located ? geo::utm_text(place.at) : "")
            .text("mgrs", place.located ? geo::mgrs_text(place.at) : "");
    }
    return rows;
}

bool has_led(const planner::Plan& plan) {
    return std::any_of(plan.legs.begin(), plan.legs.end(), [](const planner::PlanLeg& leg) {
        return planner::led(leg.travel);
    });
}

bool has_ride(const planner::Plan& plan) {
    return std::any_of(plan.legs.begin(), plan.legs.end(), [](const planner::PlanLeg& leg) {
        return planner::is_ride(leg.travel);
    });
}

std::vector<Fields> band_keys(const BookSource& source) {
    std::vector<Fields> rows;
    const auto add = [&](const Drawing& drawing, const char* style) {
        for (const BandKey& key : band_key(source.plan, drawing, source.shown))
            rows.emplace_back()
                .text("label", key.label)
                .text("width", fmt::format("{:.1f}", key.width))
                .text("for", style);
    };
    add(wide_of_trip(""), "for-wide");
    add(narrow_of_trip(""), "for-narrow");
    return rows;
}

/// The symbols that stand on the map and what they mean.
std::vector<Fields> symbol_keys(const planner::Route& route) {
    struct Group {
        const char* label;
        std::vector<planner::PlaceKind> kinds;
    };

    using planner::PlaceKind;
    const std::vector<Group> groups{
        {"start, finish, exit", {PlaceKind::start, PlaceKind::finish, PlaceKind::exit}},
        {"drinking water", {PlaceKind::water}},
        {"resupply, cache", {PlaceKind::resupply, PlaceKind::cache}},
        {"hazard", {PlaceKind::hazard, PlaceKind::ford}},
        {"landing, camp not slept at",
         {PlaceKind::put_in, PlaceKind::take_out, PlaceKind::camp, PlaceKind::landing}}};
    std::vector<Fields> rows;
    for (const Group& group : groups) {
        const bool occurs =
            std::any_of(route.places.begin(), route.places.end(), [&](const auto& place) {
                return std::find(group.kinds.begin(), group.kinds.end(), place.kind) !=
                       group.kinds.end();
            });
        if (occurs)
            rows.emplace_back()
                .text("label", group.label)
                .markup("symbol", place_symbol(group.kinds.front()));
    }
    return rows;
}

std::vector<Fields> lines_of(const std::vector<std::string>& lines) {
    std::vector<Fields> rows;
    for (const std::string& line : lines)
        rows.emplace_back().text("line", line);
    return rows;
}

/// Why the maps of days do not tell the magnetic declination; empty if they do.
std::string no_declination(const BookSource& source) {
    const bool missing = std::ranges::any_of(source.plan.days, [&](const PlanDay& day) {
        const RouteMap* const map = source.maps.of_day(day.day);
        return map != nullptr &&
               !geo::declination_deg(map->projection().centre(), year_of(day.date));
    });
    return missing ? "no magnetic model for this year is installed (GeographicLib's wmm)" : "";
}

std::vector<Fields> way_rows(const WaysTable& ways) {
    std::vector<Fields> rows;
    for (const WaysTable::Row& row : ways.rows)
        rows.emplace_back()
            .text("name", row.name)
            .text("length", row.length)
            .text("on_foot", row.on_foot)
            .text("ascent", row.ascent)
            .text("under_way", row.under_way)
            .text("days", counted(row.days, "day", "days"))
            .text("energy", row.energy)
            .text("heaviest", row.heaviest)
            .text("of_limit", row.of_limit)
            .text("borne", row.borne);
    return rows;
}

std::vector<Fields> connection_rows(const BookSource& source) {
    std::vector<Fields> rows;
    for (const ConnectionWords& words : connection_words(source.plan, source.shown))
        rows.emplace_back()
            .text("head", words.head)
            .text("if_missed", words.if_missed)
            .list("connection_lines", lines_of(words.lines));
    return rows;
}

std::vector<Fields> booking_rows(const PermitWords& permits) {
    std::vector<Fields> rows;
    for (const BookingWords& row : permits.rows)
        rows.emplace_back()
            .text("where", row.where)
            .text("when", row.when)
            .text("people", row.people)
            .text("late", row.late);
    return rows;
}

std::vector<Fields> flow_rows(const FlowTable& flow) {
    std::vector<Fields> rows;
    for (const FlowTable::Row& row : flow.rows) {
        std::vector<Fields> cells;
        for (std::size_t i = 0; i < row.cells.size(); ++i)
            cells.emplace_back().text("level", flow.levels[i]).text("cell", row.cells[i]);
        rows.emplace_back().text("what", row.what).list("cells", std::move(cells));
    }
    return rows;
}

std::vector<Fields> card_rows(const std::vector<CardWords>& cards) {
    std::vector<Fields> rows;
    for (const CardWords& card : cards)
        rows.emplace_back().text("head", card.head).list("card_lines", lines_of(card.lines));
    return rows;
}

} // namespace

void add_trip(Fields& fields, const BookSource& source) {
    const Plan& plan = source.plan;
    const Stretch whole{0.0, source.route.length_m};
    const FlowTable flow = flow_table(plan, source.shown);
    const PermitWords permits = permit_words(plan, source.shown);
    const WaysTable ways = ways_table(plan, source.shown.units());
    fields.text("verdict_level", planner::verdict_word(plan.verdict.level))
        .text("verdict", planner::verdict_sentence(plan.verdict.level))
        .list("reasons", reason_lines(plan.verdict.reasons, source.shown))
        .list("also", reason_lines(plan.verdict.also, source.shown))
        .text("not_judged", plan.verdict.unknown_line)
        .list("totals", totals(source))
        .list("trip_cautions",
              caution_fields(source,
                             planner::grouped_by_kind(plan.cautions),
                             [](const planner::Caution& caution) { return !caution.day; }))
        .markup("map_wide", source.maps.whole().draw(wide_of_trip("map-w"), source.shown))
        .markup("map_narrow", source.maps.whole().draw(narrow_of_trip("map-n"), source.shown))
        .text("map_foot", source.maps.whole().foot_text(source.shown))
        .text("given_up", source.maps.given_up())
        .text("no_declination", no_declination(source))
        .truth("has_land", source.route.land != nullptr)
        .list("credits", lines_of(source.maps.credits()))
        .markup("profile_wide",
                profile_drawing(
                    plan, source.route, whole, with_marks(wide_of_trip("profile-w")), source.shown))
        .markup(
            "profile_narrow",
            profile_drawing(
                plan, source.route, whole, with_marks(narrow_of_trip("profile-n")), source.shown))
        .list("band_key", band_keys(source))
        .truth("has_led", has_led(source.plan))
        .truth("has_ride", has_ride(source.plan))
        .list("symbols", symbol_keys(source.route))
        .list("glance", glance(source))
        .list("appointments", appointments(source))
        .list("connections", connection_rows(source))
        .list("bookings", booking_rows(permits))
        .list("booking_remarks", lines_of(permits.remarks))
        .text("carrying", source.plan.carrying.sentence)
        .list("carry_ways", carry_ways(source))
        .list("places", places(source))
        .list("remedies", lines_of(remedy_lines(plan, source.shown.units())))
        .list("ways", way_rows(ways))
        .list("way_remarks", lines_of(ways.remarks))
        .list("flow_levels", lines_of(flow.levels))
        .list("flow_rows", flow_rows(flow))
        .list("flow_remarks", lines_of(flow.remarks))
        .list("decision_cards", card_rows(card_words(plan, source.shown)));
    std::vector<geo::Position> ends;
    for (const planner::RouteLeg& leg : source.route.legs)
        if (leg.drawn())
            ends.insert(ends.end(), {leg.line.points().front(), leg.line.points().back()});
    std::vector<std::string> undrawn;
    for (const planner::RouteLeg& leg : source.route.legs)
        if (!leg.drawn())
            undrawn.push_back(leg.name);
    fields.text("undrawn", fmt::format("{}", fmt::join(undrawn, "; ")));
    fields.text("map_centre",
                ends.empty() ? "" : degrees_and_minutes(geo::MapProjection(ends).centre()));
}

std::string profile_figures(const BookSource& source) {
    using nlohmann::json;
    const Plan& plan = source.plan;
    const Figures& shown = source.shown;
    json legs = json::array();
    for (const planner::PlanLeg& leg : plan.legs) {
        json packs = json::array();
        for (const planner::MemberLoad& load : leg.loads)
            packs.push_back({one_line(load.member),
                             shown.mass(load.pack_start_kg),
                             shown.mass(load.pack_end_kg),
                             shown.mass(load.pack_max_kg)});
        legs.push_back({{"from", leg.from_m},
                        {"to", leg.to_m},
                        {"day", leg.day},
                        {"name", one_line(leg.name)},
                        {"how", travel_phrase(leg.travel)},
                        {"packs", std::move(packs)}});
    }
    // As many heights as the drawing has pixels; between them the script takes the nearer one.
    json heights = json::array();
    constexpr int samples = 700;
    for (int i = 0; i <= samples; ++i) {
        const double along_m = source.route.length_m * i / samples;
        const std::optional<double> height_m = source.route.height_at(along_m);
        heights.push_back(height_m ? json(shown.height(*height_m)) : json());
    }
    json marks = json::array();
    for (int i = 0; i <= samples; ++i)
        marks.push_back(shown.distance(source.route.length_m * i / samples));
    const json all{{"length", source.route.length_m},
                   {"legs", std::move(legs)},
                   {"heights", std::move(heights)},
                   {"marks", std::move(marks)}};
    std::string text = all.dump(-1, ' ', false, json::error_handler_t::replace);
    // Nothing in it may end the <script> it stands in.
    for (std::size_t at = text.find('<'); at != std::string::npos; at = text.find('<', at))
        text.replace(at, 1, "\\u003c");
    return text;
}

} // namespace tumpline::cli
