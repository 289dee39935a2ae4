#include "cli/text/text_page.h"

#include "cli/words/caution_text.h"
#include "cli/words/table.h"
#include "cli/words/text_width.h"
#include "cli/words/words.h"
#include "planner/cautions/land_groups.h"
#include "planner/loads/limits.h"

#include <fmt/format.h>

#include <array>
#include <chrono>

namespace tumpline::cli {

TextPage::TextPage(const planner::Plan& plan, const Reader& reader)
    : Figures(reader.units, plan.trip.time_zone, Blank::plain), plan_(plan), reader_(reader),
      told_(planner::grouped_by_kind(plan.cautions)), reported_(told_.size(), false) {}

void TextPage::heading(std::string_view text) {
    if (!text_.empty())
        text_ += "\n";
    for (const std::string& part : wrapped(text, reader_.columns))
        text_ +=
            reader_.colour ? fmt::format("\033[1m{}\033[0m\n", part) : fmt::format("{}\n", part);
}

void TextPage::line(const std::string& text) {
    text_ += hanging("", text, reader_.columns);
}

void TextPage::item(const std::string& text) {
    text_ += hanging("  ", text, reader_.columns);
}

void TextPage::add(const Table& table, std::size_t indent) {
    text_ += table.text(indent, reader_.columns);
}

void TextPage::hang(const std::string& first, const std::string& text) {
    text_ += hanging(first, text, reader_.columns);
}

std::string TextPage::distance(double length_m) const {
    return length_m > 0.0 ? Figures::distance(length_m) : std::string();
}

std::string TextPage::portage(double length_m) const {
    return length_m > 0.0 ? Figures::portage(length_m) : std::string();
}

std::string TextPage::duration(double duration_s) {
    return duration_s > 0.0 ? planner::show_duration(duration_s) : std::string();
}

std::string TextPage::clock(geo::sys_seconds at, planner::Date date) const {
    const auto day = std::chrono::floor<std::chrono::days>(geo::to_local(at, plan_.trip.time_zone));
    const auto later = (day - std::chrono::local_days{date}).count();
    return later == 0 ? clock(at) : fmt::format("{}{:+}", clock(at), later);
}

std::string TextPage::date(planner::Date date) {
    return fmt::format("{} {}", weekday(date), planner::show_date(date));
}

std::string TextPage::leg_place(planner::PlanLegNumber plan_leg) const {
    return cli::leg_place(plan_, plan_leg);
}

std::vector<std::string> TextPage::cautions(int day, std::optional<planner::LegNumber> leg) {
    std::vector<std::string> texts;
    for (std::size_t i = 0; i < told_.size(); ++i) {
        const planner::Caution& caution = told_[i];
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
    for (std::size_t i = 0; i < told_.size(); ++i) {
        if (reported_[i])
            continue;
        reported_[i] = true;
        texts.push_back(placed_caution_text(told_[i], reader_.units));
    }
    return texts;
}

} // namespace tumpline::cli
