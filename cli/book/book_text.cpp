#include "cli/book/book_text.h"

#include "cli/words/text_width.h"

#include <fmt/format.h>

#include <array>
#include <cmath>
#include <cstdint>
#include <optional>
#include <utility>

namespace tumpline::cli {

namespace {

struct Civil {
    planner::Date date;
    std::chrono::seconds since_midnight;
};

Civil civil(geo::sys_seconds instant, const std::string& zone) {
    const geo::local_seconds local = geo::to_local(instant, zone);
    const auto midnight = std::chrono::floor<std::chrono::days>(local);
    return {planner::Date(midnight), local - midnight};
}

std::string_view weekday(planner::Date date) {
    static constexpr std::array<std::string_view, 7> names{
        "Sun", "Mon", "Tue", "Wed", "Thu", "Fri", "Sat"};
    return names.at(std::chrono::weekday(std::chrono::sys_days(date)).c_encoding() % 7);
}

std::string_view month(planner::Date date) {
    static constexpr std::array<std::string_view, 13> names{"",
                                                            "January",
                                                            "February",
                                                            "March",
                                                            "April",
                                                            "May",
                                                            "June",
                                                            "July",
                                                            "August",
                                                            "September",
                                                            "October",
                                                            "November",
                                                            "December"};
    return names.at(date.ok() ? unsigned(date.month()) : 0);
}

std::string one_angle(double degrees, std::string_view sides) {
    // Whole thousandths of a minute first, so that 59.9996' never shows as 60.000'.
    const auto thousandths = static_cast<std::int64_t>(std::llround(std::abs(degrees) * 60000.0));
    return fmt::format("{}° {:02}.{:03}' {}",
                       thousandths / 60000,
                       thousandths % 60000 / 1000,
                       thousandths % 1000,
                       sides[degrees < 0.0 ? 1 : 0]);
}

/// A number stays on one line with its unit.
std::string kept_together(const std::string& figure) {
    std::string text;
    for (const char c : figure) {
        if (c == ' ')
            text += "\xC2\xA0";
        else
            text += c;
    }
    return text;
}

} // namespace

std::string escaped(std::string_view text) {
    std::string markup;
    for (const char c : one_line(text)) {
        switch (c) {
        case '&':
            markup += "&amp;";
            break;
        case '<':
            markup += "&lt;";
            break;
        case '>':
            markup += "&gt;";
            break;
        case '"':
            markup += "&quot;";
            break;
        case '\'':
            markup += "&#39;";
            break;
        default:
            markup += c;
        }
    }
    return markup;
}

double width_em(std::string_view utf8) {
    constexpr std::string_view broad = "MWmw@%&";
    constexpr std::string_view capitals = "ABCDEFGHIJKLNOPQRSTUVXYZ";
    double width = 0.63 * static_cast<double>(columns_of(utf8));
    for (const char c : utf8) {
        if (broad.find(c) != std::string_view::npos)
            width += 0.42;
        else if (capitals.find(c) != std::string_view::npos)
            width += 0.16;
    }
    return width;
}

std::string Shown::mass(double mass_kg) const {
    return kept_together(planner::show_mass(mass_kg, system_));
}

std::string Shown::distance(double length_m) const {
    return kept_together(planner::show_distance(length_m, system_));
}

std::string Shown::portage(double length_m) const {
    return kept_together(planner::show_portage(length_m, system_));
}

std::string Shown::height(double height_m) const {
    return kept_together(planner::show_height(height_m, system_));
}

std::string Shown::speed(double speed_mps) const {
    return kept_together(planner::show_speed(speed_mps, system_));
}

std::string Shown::volume(double volume_l) const {
    return kept_together(planner::show_volume(volume_l, system_));
}

std::string Shown::temperature(double temperature_c) const {
    return kept_together(planner::show_temperature(temperature_c, system_));
}

std::string Shown::gradient(double gradient) const {
    return kept_together(planner::show_gradient(gradient, system_));
}

std::string Shown::duration(double duration_s) {
    return kept_together(planner::show_duration(duration_s));
}

std::string Shown::energy(double energy_j) {
    return kept_together(planner::show_energy(energy_j));
}

std::string Shown::clock(geo::sys_seconds instant) const {
    return planner::show_time_of_day(civil(instant, zone_).since_midnight);
}

std::string Shown::moment(geo::sys_seconds instant) const {
    const std::string rfc = geo::rfc3339(instant, zone_);
    const std::string offset = rfc.size() > 19 ? rfc.substr(19) : std::string();
    return fmt::format("{}, {} (UTC{})",
                       long_date(civil(instant, zone_).date),
                       clock(instant),
                       offset == "Z" ? "" : offset);
}

std::string Shown::clock_on(geo::sys_seconds instant, planner::Date date) const {
    const Civil there = civil(instant, zone_);
    if (there.date == date)
        return clock(instant);
    return fmt::format("{} {}", weekday(there.date), clock(instant));
}

std::string long_date(planner::Date date) {
    return fmt::format("{} {}", short_date(date), int(date.year()));
}

std::string short_date(planner::Date date) {
    return fmt::format("{} {} {}", weekday(date), unsigned(date.day()), month(date));
}

std::string decimal_degrees(const geo::Position& position) {
    return fmt::format("{:.5f}, {:.5f}", position.lat_deg, position.lon_deg);
}

std::string degrees_and_minutes(const geo::Position& position) {
    return fmt::format(
        "{}, {}", one_angle(position.lat_deg, "NS"), one_angle(position.lon_deg, "EW"));
}

std::string_view travel_phrase(planner::Travel travel) {
    switch (travel) {
    case planner::Travel::walk:
        return "on foot";
    case planner::Travel::portage:
        return "portage";
    case planner::Travel::paddle:
        return "afloat";
    }
    return "";
}

std::string_view place_word(planner::PlaceKind kind) {
    switch (kind) {
    case planner::PlaceKind::start:
        return "start";
    case planner::PlaceKind::finish:
        return "finish";
    case planner::PlaceKind::put_in:
        return "put-in";
    case planner::PlaceKind::take_out:
        return "take-out";
    case planner::PlaceKind::camp:
        return "camp";
    case planner::PlaceKind::water:
        return "drinking water";
    case planner::PlaceKind::resupply:
        return "resupply";
    case planner::PlaceKind::cache:
        return "cache";
    case planner::PlaceKind::exit:
        return "exit";
    case planner::PlaceKind::hazard:
        return "hazard";
    case planner::PlaceKind::landing:
        return "landing";
    }
    return "";
}

} // namespace tumpline::cli
