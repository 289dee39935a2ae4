#include "cli/export/export_parts.h"

#include "cli/words/caution_text.h"
#include "cli/words/left_words.h"
#include "cli/words/text_width.h"
#include "planner/trip/vocabulary.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <iterator>

namespace tumpline::cli {

namespace {

constexpr double same_place_m = 1.0; // nearer along the route than anybody pitches a tent twice

std::string leg_name(const planner::PlanLeg& leg) {
    return leg.name.empty() ? fmt::format("leg {}", leg.leg) : one_line(leg.name);
}

/// A number of `places` decimals at most from its whole count of the last of them.
void append_decimal(std::string& text, std::int64_t count, int places) {
    if (count < 0) {
        text.push_back('-');
        count = -count;
    }
    std::int64_t unit = 1;
    for (int place = 0; place < places; ++place)
        unit *= 10;
    fmt::format_to(std::back_inserter(text), "{}", count / unit);
    std::int64_t rest = count % unit;
    if (rest == 0)
        return;
    while (rest % 10 == 0) {
        rest /= 10;
        --places;
    }
    fmt::format_to(std::back_inserter(text), ".{:0{}}", rest, places);
}

constexpr double nanodegrees = 1e9;

std::int64_t whole(double value) {
    return static_cast<std::int64_t>(std::llround(value));
}

/// The nights of the plan, those at one place together.
std::vector<ExportPlace> nights(const planner::Plan& plan, const planner::Route& route) {
    std::vector<ExportPlace> nights;
    for (std::size_t i = 0; i + 1 < plan.days.size(); ++i) {
        const planner::PlanDay& day = plan.days[i];
        if (!day.camp_located)
            continue;
        if (!nights.empty() && std::abs(nights.back().along_m - day.to_m) < same_place_m) {
            nights.back().nights.push_back(day.day);
            continue;
        }
        nights.push_back({.name = one_line(day.to),
                          .kind = "night",
                          .at = day.camp,
                          .height_m = route.height_at(day.to_m),
                          .along_m = day.to_m,
                          .passes = 1,
                          .nights = {day.day},
                          .dry = day.dry_camp,
                          .note = {}});
    }
    return nights;
}

} // namespace

ExportLine export_line(const planner::PlanLeg& leg, const planner::Route& route) {
    if (leg.leg.none() || leg.leg.index() >= route.legs.size())
        return {};
    const planner::RouteLeg& whole_leg = route.legs[leg.leg.index()];
    if (!whole_leg.drawn())
        return {};
    const double from_m = leg.from_m - whole_leg.from_m;
    const geo::Polyline line = whole_leg.line.cut(from_m, leg.to_m - whole_leg.from_m);
    ExportLine points;
    points.reserve(std::max<std::size_t>(2, line.points().size()));
    for (std::size_t i = 0; i < line.points().size(); ++i)
        points.push_back(
            {line.points()[i], whole_leg.profile.height_at(from_m + line.along_m()[i])});
    if (points.size() == 1)
        points.push_back(points.front());
    return points;
}

std::vector<ExportLine> cut_at_antimeridian(const ExportLine& line) {
    std::vector<ExportLine> parts(1);
    for (const ExportPoint& point : line) {
        if (parts.back().empty()) {
            parts.back().push_back(point);
            continue;
        }
        const ExportPoint before = parts.back().back();
        const double step_deg = point.at.lon_deg - before.at.lon_deg;
        if (std::abs(step_deg) == 360.0) { // along the meridian, called by its other name
            parts.back().push_back({{point.at.lat_deg, before.at.lon_deg}, point.height_m});
            continue;
        }
        if (std::abs(step_deg) > 180.0) {
            const double side_deg = step_deg < 0.0 ? 180.0 : -180.0; // eastwards, westwards
            const double to_edge_deg = side_deg - before.at.lon_deg;
            const double whole_deg = step_deg + 2.0 * side_deg;
            const double share = whole_deg == 0.0 ? 0.0 : to_edge_deg / whole_deg;
            ExportPoint edge{
                .at = {std::lerp(before.at.lat_deg, point.at.lat_deg, share), side_deg},
                .height_m = std::nullopt};
            if (before.height_m && point.height_m)
                edge.height_m = std::lerp(*before.height_m, *point.height_m, share);
            if (before.at.lon_deg != side_deg)
                parts.back().push_back(edge);
            if (parts.back().size() < 2) // the line began on the meridian itself
                parts.pop_back();
            edge.at.lon_deg = -side_deg;
            parts.emplace_back();
            if (point.at.lon_deg != -side_deg)
                parts.back().push_back(edge);
        }
        parts.back().push_back(point);
    }
    if (parts.back().size() < 2 && parts.size() > 1) // it ends on the meridian itself
        parts.pop_back();
    return parts;
}

std::vector<ExportPlace> export_places(const planner::Plan& plan, const planner::Route& route) {
    std::vector<ExportPlace> places = nights(plan, route);
    const auto first_place = static_cast<std::ptrdiff_t>(places.size());
    for (const planner::RoutePlace& place : route.places) {
        if (!place.located)
            continue;
        const std::string name = one_line(place.name);
        const std::string_view kind = planner::word(place.kind);
        const auto night = std::find_if(places.begin(),
                                        places.begin() + first_place,
                                        [&](const auto& other) { return other.name == name; });
        const bool known = place.spec < plan.trip.route.places.size();
        const std::string note =
            known ? one_line(plan.trip.route.places[place.spec].note) : std::string();
        if (place.kind == planner::PlaceKind::camp && night != places.begin() + first_place) {
            night->note = note;
            continue;
        }
        const auto reported =
            std::find_if(places.begin() + first_place, places.end(), [&](const auto& other) {
                return other.name == name && other.kind == kind && other.at == place.at;
            });
        if (reported != places.end()) {
            ++reported->passes;
            continue;
        }
        places.push_back({.name = name,
                          .kind = kind,
                          .at = place.at,
                          .height_m = place.off_m <= 50.0 // beside the line, not up on its slopes
                                          ? route.height_at(place.along_m)
                                          : std::nullopt,
                          .along_m = place.along_m,
                          .passes = 1,
                          .nights = {},
                          .dry = false,
                          .note = note});
    }
    for (const planner::LaidThings& left : plan.left) {
        // At a night's place rather than at a place beside it of the same name.
        const auto found = std::find_if(places.begin(), places.end(), [&](const auto& place) {
            return place.name == one_line(left.at);
        });
        if (found != places.end())
            found->left.push_back(&left);
    }
    return places;
}

std::vector<std::string> export_left(const ExportPlace& place, const planner::Plan& plan) {
    const Figures shown(planner::UnitSystem::metric, plan.trip.time_zone, Blank::plain);
    std::vector<std::string> lines;
    for (const planner::LaidThings* left : place.left)
        lines.push_back(one_line(
            fmt::format("left on day {}: {}; {}",
                        left->day,
                        laid_words(*left, shown),
                        left->fetch_day ? fmt::format("fetched on day {}", *left->fetch_day)
                                        : std::string("never fetched"))));
    return lines;
}

std::string export_name(const planner::PlanLeg& leg) {
    return leg.part == 0 ? leg_name(leg) : fmt::format("{}, day {}", leg_name(leg), leg.day);
}

std::vector<std::string> export_cautions(const planner::Plan& plan, const planner::PlanLeg& leg) {
    std::vector<std::string> lines;
    for (const planner::Caution& caution : plan.cautions)
        if (caution.leg == leg.leg && caution.day.value_or(leg.day) == leg.day)
            lines.push_back(one_line(caution_text(caution, planner::UnitSystem::metric)));
    return lines;
}

void append_degrees(std::string& text, double degrees) {
    append_decimal(text, whole(degrees * nanodegrees), 9);
}

void append_gpx_longitude(std::string& text, double lon_deg) {
    constexpr std::int64_t half_turn = 180'000'000'000;
    const std::int64_t count = whole(lon_deg * nanodegrees);
    append_decimal(text, count >= half_turn ? -half_turn : count, 9);
}

void append_metres(std::string& text, double metres) {
    append_decimal(text, whole(metres * 100.0), 2);
}

} // namespace tumpline::cli
