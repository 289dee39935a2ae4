#include "cli/book/book_parts.h"
#include "cli/drawing/load_band.h"
#include "cli/words/shares.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <utility>

namespace tumpline::cli {

namespace {

constexpr double smallest_kg = 0.0005; ///< less shows as nothing

std::string days_phrase(int first, int last) {
    return first == last ? fmt::format("day {}", first) : fmt::format("days {} to {}", first, last);
}

std::string_view meal_word(planner::Meal meal) {
    switch (meal) {
    case planner::Meal::breakfast:
        return "Breakfasts";
    case planner::Meal::trail:
        return "Trail food, days";
    case planner::Meal::dinner:
        return "Dinners";
    }
    return "";
}

/// "4", but "4.4" where a supply cuts a day.
std::string rations(double count) {
    const bool whole = std::abs(count - std::round(count)) < 0.05;
    return planner::show_number(count, whole ? 0 : 1);
}

std::vector<Fields> meal_heads(const planner::Stage& stage) {
    std::vector<Fields> heads;
    for (const planner::StageMeal& meal : stage.meals)
        heads.emplace_back().text(
            "head", fmt::format("{}: {}", meal_word(meal.meal), rations(meal.rations)));
    return heads;
}

/// Each member's food by meal, without packaging.
std::vector<Fields> rations_of(const BookSource& source, const planner::Stage& stage) {
    std::vector<Fields> rows;
    for (std::size_t m = 0; m < stage.member_food_kg.size() && m < source.plan.trip.party.size();
         ++m) {
        std::vector<Fields> cells;
        for (const planner::StageMeal& meal : stage.meals)
            cells.emplace_back()
                .text("label", meal_word(meal.meal))
                .text("mass", source.shown.mass(meal.food_kg[m]));
        rows.emplace_back()
            .text("name", source.plan.trip.party[m].name)
            .list("cells", std::move(cells))
            .text("together", source.shown.mass(stage.member_food_kg[m]));
    }
    return rows;
}

std::string lost_phrase(const planner::LostDays& lost, const Figures& shown) {
    std::string reported;
    if (lost.food_short_kg < smallest_kg)
        reported =
            fmt::format("the reserve covers it; food to the evening of day {}", lost.ends_day);
    else
        reported = fmt::format("{} of food short; the stage ends on day {}, the food {}",
                               shown.mass(lost.food_short_kg),
                               lost.ends_day,
                               lost.food_ends_day
                                   ? fmt::format("on the evening of day {}", *lost.food_ends_day)
                                   : std::string("on its first day"));
    if (lost.fuel_short_kg >= smallest_kg)
        reported += fmt::format("; {} of fuel short", shown.mass(lost.fuel_short_kg));
    return reported + ".";
}

std::vector<Fields> lost_days(const planner::Stage& stage, const Figures& shown) {
    std::vector<Fields> rows;
    for (const planner::LostDays& lost : stage.lost_days)
        rows.emplace_back()
            .text("days", fmt::format("{} {} lost", lost.days, lost.days == 1 ? "day" : "days"))
            .text("what", lost_phrase(lost, shown));
    return rows;
}

/// When the place of supply is closed, and how far the next open day is.
std::string openings(const planner::Stage& stage) {
    std::vector<std::string> dates;
    for (const planner::Date& date : stage.closed_dates)
        dates.push_back(short_date(date));
    std::vector<std::string> open;
    if (stage.open_earlier_days)
        open.push_back(fmt::format("{} earlier", counted(*stage.open_earlier_days, "day", "days")));
    if (stage.open_later_days)
        open.push_back(fmt::format("{} later", counted(*stage.open_later_days, "day", "days")));
    std::string reported = dates.empty() ? "" : fmt::format("Closed on {}.", joined(dates));
    if (stage.closed)
        reported += fmt::format(" It is reached on {}; open {}.",
                                short_date(stage.reached),
                                open.empty() ? std::string("not within a month") : joined(open));
    return reported;
}

std::string there(const planner::Stage& stage, const Figures& shown) {
    if (!stage.declared_kg)
        return {};
    if (stage.declared_short_kg < smallest_kg)
        return fmt::format("The place holds {} of food: enough.", shown.mass(*stage.declared_kg));
    return fmt::format("The place holds {} of food, {} too little.",
                       shown.mass(*stage.declared_kg),
                       shown.mass(stage.declared_short_kg));
}

std::vector<Fields> stage_figures(const planner::Stage& stage, const Figures& shown) {
    std::vector<Fields> rows;
    rows.push_back(figure({"Food to pack",
                           shown.mass(stage.food_kg),
                           fmt::format("of which packaging {}", shown.mass(stage.packaging_kg))}));
    if (stage.for_later_kg >= smallest_kg)
        rows.push_back(figure({"For a later stage",
                               shown.mass(stage.for_later_kg),
                               "of the food to pack; laid down on the way"}));
    if (stage.fetched_kg >= smallest_kg)
        rows.push_back(figure({"Fetched",
                               shown.mass(stage.fetched_kg),
                               "eaten in this stage and laid down in an earlier one; not to be "
                               "packed again"}));
    rows.push_back(figure(
        {"Reserve",
         shown.mass(stage.reserve_kg),
         stage.reserve_put_in_kg >= smallest_kg
             ? fmt::format(
                   "carried to the end of the stage; {} of it packed here, without packaging",
                   shown.mass(stage.reserve_put_in_kg))
             : std::string("carried to the end of the stage; still in the packs")}));
    rows.push_back(figure({"Fuel",
                           shown.mass(stage.fuel_kg),
                           stage.containers > 0
                               ? fmt::format("{}, empty {}",
                                             counted(stage.containers, "container", "containers"),
                                             shown.mass(stage.containers_kg))
                               : std::string()}));
    return rows;
}

std::vector<Fields> stages(const BookSource& source) {
    const planner::Plan& plan = source.plan;
    const Figures& shown = source.shown;
    std::vector<Fields> rows;
    for (const planner::Stage& stage : plan.stages) {
        std::vector<Fields> shares;
        const std::vector<int> percents = whole_percents(stage.bearer_share);
        for (std::size_t i = 0; i < std::min(percents.size(), plan.trip.party.size()); ++i)
            shares.emplace_back()
                .text("name", plan.trip.party[i].name)
                .text("share", fmt::format("{}\u00A0%", percents[i]));
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
            .list("meal_heads", meal_heads(stage))
            .list("rations", rations_of(source, stage))
            .list("lost", lost_days(stage, shown))
            .text("openings", openings(stage))
            .text("there", there(stage, shown))
            .truth("too_little", stage.declared_short_kg >= smallest_kg)
            .list("shares", std::move(shares))
            .list("due", std::move(due));
    }
    return rows;
}

std::vector<Fields> dry_nights(const planner::WaterStretch& stretch, const Figures& shown) {
    std::vector<Fields> rows;
    for (const planner::DryNight& night : stretch.dry_nights)
        rows.emplace_back()
            .text("day", std::to_string(night.day))
            .text("place", night.place)
            .text("litres", shown.volume(night.litres))
            .truth("too_much", night.too_much);
    return rows;
}

std::vector<Fields> water(const BookSource& source) {
    const Figures& shown = source.shown;
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
            .list("nights", dry_nights(stretch, shown))
            .text("length", shown.distance(stretch.to_m - stretch.from_m))
            .text("hours", shown.duration(stretch.hours * planner::s_per_h))
            .list("fill", std::move(fill))
            .truth("over", stretch.over_capacity)
            .text("capacity", shown.volume(stretch.capacity_l));
    }
    return rows;
}

} // namespace

void add_supplies(Fields& fields, const BookSource& source) {
    const auto line = [&](double width, const char* id) {
        return water_drawing(source.plan,
                             {.width = width, .text = page_text, .names = false, .id = id},
                             source.shown);
    };
    fields.list("stages", stages(source))
        .list("water", water(source))
        .markup("water_wide", line(wide_drawing, "water-w"))
        .markup("water_narrow", line(narrow_drawing, "water-n"));
}

} // namespace tumpline::cli
