#include "cli/words/figures.h"

#include "cli/words/words.h"

#include <fmt/format.h>

#include <array>
#include <chrono>
#include <cmath>
#include <cstdint>

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

} // namespace

std::string_view weekday(planner::Date date) {
    static constexpr std::array<std::string_view, 7> names{
        "Sun", "Mon", "Tue", "Wed", "Thu", "Fri", "Sat"};
    return names.at(std::chrono::weekday(std::chrono::sys_days(date)).c_encoding() % 7);
}

std::string Figures::kept_together(std::string figure) const {
    if (blank_ == Blank::plain)
        return figure;
    std::string text;
    for (const char letter : figure) {
        if (letter == ' ')
            text += "\u00A0";
        else
            text += letter;
    }
    return text;
}

std::string Figures::bare_mass(double mass_kg) const {
    return fmt::format("{:.1f}", metric() ? mass_kg : mass_kg / planner::kg_per_pound);
}

std::string_view Figures::mass_unit() const {
    return metric() ? "kg" : "lb";
}

std::string Figures::carried(double kg_km) const {
    return kept_together(planner::show_carried(kg_km, units_));
}

std::string Figures::climbed(double kg_m) const {
    return kept_together(planner::show_climbed(kg_m, units_));
}

std::string Figures::draft(double change_m) const {
    return kept_together(metric()
                             ? fmt::format("{:.0f} mm", change_m * 1000.0)
                             : fmt::format("{:.1f} in", change_m / planner::m_per_foot * 12.0));
}

std::string Figures::length(double length_m) const {
    return kept_together(planner::show_length(length_m, units_));
}

std::string Figures::along(double along_m) const {
    return kept_together(metric() ? fmt::format("km {:.1f}", along_m / 1000.0)
                                  : fmt::format("mile {:.1f}", along_m / planner::m_per_mile));
}

std::string Figures::mass(double mass_kg) const {
    return kept_together(planner::show_mass(mass_kg, units_));
}

std::string Figures::distance(double length_m) const {
    return kept_together(planner::show_distance(length_m, units_));
}

std::string Figures::portage(double length_m) const {
    return kept_together(planner::show_portage(length_m, units_));
}

std::string Figures::height(double height_m) const {
    return kept_together(planner::show_height(height_m, units_));
}

std::string Figures::climb(double height_m, bool heights_known) const {
    return kept_together(climb_words(height_m, heights_known, units_));
}

std::string Figures::speed(double speed_mps) const {
    return kept_together(planner::show_speed(speed_mps, units_));
}

std::string Figures::volume(double volume_l) const {
    return kept_together(planner::show_volume(volume_l, units_));
}

std::string Figures::temperature(double temperature_c) const {
    return kept_together(planner::show_temperature(temperature_c, units_));
}

std::string Figures::gradient(double gradient) const {
    return kept_together(planner::show_gradient(gradient, units_));
}

std::string Figures::duration(double duration_s) const {
    return kept_together(planner::show_duration(duration_s));
}

std::string Figures::energy(double energy_j) const {
    return kept_together(planner::show_energy(energy_j));
}

std::string Figures::clock(geo::sys_seconds instant) const {
    return planner::show_time_of_day(civil(instant, zone_).since_midnight);
}

std::string Figures::moment(geo::sys_seconds instant) const {
    const std::string rfc = geo::rfc3339(instant, zone_);
    const std::string offset = rfc.size() > 19 ? rfc.substr(19) : std::string();
    return fmt::format("{}, {} (UTC{})",
                       long_date(civil(instant, zone_).date),
                       clock(instant),
                       offset == "Z" ? "" : offset);
}

std::string Figures::clock_on(geo::sys_seconds instant, planner::Date date) const {
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

std::string tight_date(planner::Date date) {
    return fmt::format("{} {} {}",
                       weekday(date),
                       unsigned(date.day()),
                       std::string_view(month(date)).substr(0, 3));
}

std::string decimal_degrees(const geo::Position& position) {
    return fmt::format("{:.5f}, {:.5f}", position.lat_deg, position.lon_deg);
}

std::string degrees_and_minutes(const geo::Position& position) {
    return fmt::format(
        "{}, {}", one_angle(position.lat_deg, "NS"), one_angle(position.lon_deg, "EW"));
}

} // namespace tumpline::cli
