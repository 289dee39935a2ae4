#include "cli/book_parts.h"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

namespace tumpline::cli {

namespace {

constexpr double smallest_kg = 0.0005; ///< less shows as nothing

std::string days_phrase(int first, int last) {
    return first == last ? fmt::format("day {}", first) : fmt::format("days {} to {}", first, last);
}

std::vector<Fields> stage_figures(const planner::Stage& stage, const Shown& shown) {
    std::vector<Fields> rows;
    rows.push_back(figure({"Food to put in",
                           shown.mass(stage.food_kg),
                           fmt::format("of it packaging {}", shown.mass(stage.packaging_kg))}));
    rows.push_back(
        figure({"Reserve in it", shown.mass(stage.reserve_kg), "borne to the end of the stage"}));
    rows.push_back(
        figure({"Fuel",
                shown.mass(stage.fuel_kg),
                stage.containers > 0 ? counted(stage.containers, "container", "containers")
                                     : std::string()}));
    rows.push_back(figure({"If one day is lost",
                           stage.lost_day_short_kg >= smallest_kg
                               ? fmt::format("{} short", shown.mass(stage.lost_day_short_kg))
                               : std::string("the reserve covers it"),
                           ""}));
    return rows;
}

std::vector<Fields> stages(const BookSource& source) {
    const planner::Plan& plan = source.plan;
    const Shown& shown = source.shown;
    std::vector<Fields> rows;
    for (const planner::Stage& stage : plan.stages) {
        std::vector<Fields> shares;
        for (std::size_t i = 0; i < std::min(stage.bearer_share.size(), plan.trip.party.size());
             ++i)
            shares.emplace_back()
                .text("name", plan.trip.party[i].name)
                .text("share",
                      fmt::format("{} %", planner::show_number(100.0 * stage.bearer_share[i], 0)));
        std::vector<Fields> due;
        for (const planner::PlanDay& day : plan.days)
            if (day.day >= stage.first_day && day.day <= stage.last_day)
                due.emplace_back()
                    .text("day", std::to_string(day.day))
                    .text("date", short_date(day.date))
                    .text("food", shown.mass(day.food_kg))
                    .text("fuel", shown.mass(day.fuel_kg))
                    .text("water", shown.volume(day.water_l));
        Fields& row = rows.emplace_back();
        row.text("number", std::to_string(rows.size()))
            .text("from", stage.from)
            .text("to", stage.to)
            .text("span", days_phrase(stage.first_day, stage.last_day))
            .truth("closed", stage.closed)
            .list("figures", stage_figures(stage, shown))
            .list("shares", std::move(shares))
            .list("due", std::move(due));
    }
    return rows;
}

std::vector<Fields> water(const BookSource& source) {
    const Shown& shown = source.shown;
    const auto& party = source.plan.trip.party;
    std::vector<Fields> rows;
    for (const planner::WaterStretch& stretch : source.plan.water) {
        std::vector<Fields> fill;
        for (std::size_t i = 0; i < std::min(stretch.fill_l.size(), party.size()); ++i)
            fill.emplace_back()
                .text("name", party[i].name)
                .text("litres", shown.volume(stretch.fill_l[i]));
        rows.emplace_back()
            .text("from", stretch.from)
            .text("to", stretch.to)
            .text("days",
                  stretch.first_day == stretch.last_day
                      ? std::to_string(stretch.first_day)
                      : fmt::format("{} to {}", stretch.first_day, stretch.last_day))
            .text("nights",
                  stretch.nights > 0
                      ? counted(stretch.nights, "night without water", "nights without water")
                      : std::string())
            .text("length", shown.distance(stretch.to_m - stretch.from_m))
            .text("hours", Shown::duration(stretch.hours * planner::s_per_h))
            .list("fill", std::move(fill))
            .truth("over", stretch.over_capacity)
            .text("capacity", shown.volume(stretch.capacity_l));
    }
    return rows;
}

} // namespace

void add_supplies(Fields& fields, const BookSource& source) {
    fields.list("stages", stages(source)).list("water", water(source));
}

} // namespace tumpline::cli
