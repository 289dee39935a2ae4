#include "cli/text/text_page.h"

#include "cli/words/caution_text.h"
#include "cli/words/table.h"
#include "cli/words/text_width.h"
#include "cli/words/words.h"
#include "planner/loads/limits.h"

#include <fmt/format.h>

#include <array>
#include <chrono>

namespace tumpline::cli {

bool has_limit(const planner::PlanLeg& leg, const planner::MemberLoad& load) {
    return leg.travel != planner::Travel::paddle && load.limit_kg > 0.0;
}

bool over_limit(const planner::PlanLeg& leg, const planner::MemberLoad& load) {
    return has_limit(leg, load) && planner::over_limit(load.pack_max_kg, load.limit_kg);
}

TextPage::TextPage(const planner::Plan& plan, const Reader& reader)
    : plan_(plan), reader_(reader), reported_(plan.cautions.size(), false) {}

void TextPage::heading(std::string_view text) {
    if (!text_.empty())
        text_ += "\n";
    text_ += reader_.colour ? fmt::format("\033[1m{}\033[0m\n", text) : fmt::format("{}\n", text);
}

void TextPage::line(const std::string& text) {
    text_ += hanging("", text);
}

void TextPage::item(const std::string& text) {
    text_ += hanging("  ", text);
}

std::string TextPage::mass(double mass_kg) const {
    return planner::show_mass(mass_kg, reader_.units);
}

std::string TextPage::bare_mass(double mass_kg) const {
    const bool metric = reader_.units == planner::UnitSystem::metric;
    return fmt::format("{:.1f}", metric ? mass_kg : mass_kg / planner::kg_per_pound);
}

std::string_view TextPage::mass_unit() const {
    return reader_.units == planner::UnitSystem::metric ? "kg" : "lb";
}

std::string TextPage::distance(double length_m) const {
    return length_m > 0.0 ? planner::show_distance(length_m, reader_.units) : std::string();
}

std::string TextPage::portage(double length_m) const {
    return length_m > 0.0 ? planner::show_portage(length_m, reader_.units) : std::string();
}

std::string TextPage::height(double height_m) const {
    return planner::show_height(height_m, reader_.units);
}

std::string TextPage::volume(double volume_l) const {
    return planner::show_volume(volume_l, reader_.units);
}

std::string TextPage::carried(double kg_km) const {
    return planner::show_carried(kg_km, reader_.units);
}

std::string TextPage::climbed(double kg_m) const {
    return planner::show_climbed(kg_m, reader_.units);
}

std::string TextPage::speed(double speed_mps) const {
    return planner::show_speed(speed_mps, reader_.units);
}

std::string TextPage::gradient(double gradient) const {
    return planner::show_gradient(gradient, reader_.units);
}

std::string TextPage::draft(double change_m) const {
    const bool metric = reader_.units == planner::UnitSystem::metric;
    return metric ? fmt::format("{:.0f} mm", change_m * 1000.0)
                  : fmt::format("{:.1f} in", change_m / planner::m_per_foot * 12.0);
}

std::string TextPage::length(double length_m) const {
    return planner::show_length(length_m, reader_.units);
}

std::string TextPage::duration(double duration_s) {
    return duration_s > 0.0 ? planner::show_duration(duration_s) : std::string();
}

std::string TextPage::along(double along_m) const {
    const bool metric = reader_.units == planner::UnitSystem::metric;
    return metric ? fmt::format("km {:.1f}", along_m / 1000.0)
                  : fmt::format("mile {:.1f}", along_m / planner::m_per_mile);
}

std::string TextPage::clock(geo::sys_seconds at) const {
    const geo::local_seconds local = geo::to_local(at, plan_.trip.time_zone);
    return planner::show_time_of_day(local - std::chrono::floor<std::chrono::days>(local));
}

std::string TextPage::clock(geo::sys_seconds at, planner::Date date) const {
    const auto day = std::chrono::floor<std::chrono::days>(geo::to_local(at, plan_.trip.time_zone));
    const auto later = (day - std::chrono::local_days{date}).count();
    return later == 0 ? clock(at) : fmt::format("{}{:+}", clock(at), later);
}

std::string TextPage::date(planner::Date date) {
    constexpr std::array<const char*, 7> names = {"Sun", "Mon", "Tue", "Wed", "Thu", "Fri", "Sat"};
    const std::chrono::weekday day{std::chrono::sys_days{date}};
    return fmt::format("{} {}", names.at(day.c_encoding()), planner::show_date(date));
}

std::string TextPage::leg_place(std::size_t plan_leg) const {
    return cli::leg_place(plan_, plan_leg);
}

std::vector<std::string> TextPage::cautions(int day, std::optional<std::size_t> leg) {
    std::vector<std::string> texts;
    for (std::size_t i = 0; i < plan_.cautions.size(); ++i) {
        const planner::Caution& caution = plan_.cautions[i];
        const bool fits_day = caution.day ? *caution.day == day : leg.has_value();
        if (reported_[i] || caution.leg != leg || !fits_day)
            continue;
        reported_[i] = true;
        texts.push_back(caution_text(caution, reader_.units));
    }
    return texts;
}

std::vector<std::string> TextPage::cautions_left() {
    std::vector<std::string> texts;
    for (std::size_t i = 0; i < plan_.cautions.size(); ++i) {
        if (reported_[i])
            continue;
        reported_[i] = true;
        texts.push_back(placed_caution_text(plan_.cautions[i], reader_.units));
    }
    return texts;
}

} // namespace tumpline::cli
