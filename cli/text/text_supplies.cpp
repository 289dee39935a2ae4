#include "cli/text/text_page.h"
#include "cli/words/shares.h"
#include "cli/words/table.h"
#include "cli/words/text_width.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <string>
#include <utility>
#include <vector>

namespace tumpline::cli {

namespace {

using planner::Plan;
using planner::Stage;

void add_eating(TextPage& page) {
    Table table({{"Day", true},
                 {"Who", false, true},
                 {"Energy", true},
                 {"Food eaten", true},
                 {"Water drunk", true},
                 {"Pack, setting off", true}});
    for (const planner::PlanDay& day : page.plan().days)
        for (const planner::MemberDay& member : day.members)
            table.row({&member == &day.members.front() ? fmt::format("{}", day.day) : "",
                       member.member,
                       planner::show_energy(member.energy_j),
                       page.mass(member.food_kg),
                       page.volume(member.water_l),
                       member.set_off_kg ? page.mass(*member.set_off_kg) : std::string()});
    page.add(table);
}

std::string shares(const Plan& plan, const std::vector<double>& shares) {
    std::vector<std::string> texts;
    const std::vector<int> percents = whole_percents(shares);
    for (std::size_t i = 0; i < percents.size() && i < plan.trip.party.size(); ++i)
        texts.push_back(fmt::format("{} {} %", plan.trip.party[i].name, percents[i]));
    return fmt::format("{}", fmt::join(texts, ", "));
}

std::string share_words(double rations) {
    const double whole = std::round(rations);
    return std::abs(rations - whole) < 0.05 ? fmt::format("{:.0f}", whole)
                                            : fmt::format("{:.1f}", rations);
}

/// "4 breakfasts", "trail, 4.4 days", "5 dinners".
std::string meal_heading(const planner::StageMeal& meal) {
    const std::string count = share_words(meal.rations);
    const bool one = count == "1";
    switch (meal.meal) {
    case planner::Meal::breakfast:
        return fmt::format("{} {}", count, one ? "breakfast" : "breakfasts");
    case planner::Meal::trail:
        return fmt::format("trail, {} {}", count, one ? "day" : "days");
    case planner::Meal::dinner:
        return fmt::format("{} {}", count, one ? "dinner" : "dinners");
    }
    return {};
}

/// Who gets how much of what; one row where it is the same for all.
void add_rations(TextPage& page, const Stage& stage) {
    const Plan& plan = page.plan();
    std::vector<Column> columns{{"Pack for", false, true}};
    for (const planner::StageMeal& meal : stage.meals)
        columns.push_back({meal_heading(meal), true});
    columns.push_back({"Total", true});
    std::vector<std::vector<std::string>> rows;
    for (std::size_t m = 0; m < stage.member_food_kg.size() && m < plan.trip.party.size(); ++m) {
        std::vector<std::string> cells;
        for (const planner::StageMeal& meal : stage.meals)
            cells.push_back(page.mass(meal.food_kg[m]));
        cells.push_back(page.mass(stage.member_food_kg[m]));
        rows.push_back(std::move(cells));
    }
    const bool same =
        rows.size() > 1 &&
        std::all_of(rows.begin(), rows.end(), [&](const auto& row) { return row == rows.front(); });
    Table table(std::move(columns));
    for (std::size_t m = 0; m < (same ? 1 : rows.size()); ++m) {
        std::vector<std::string> cells{same ? std::string("each") : plan.trip.party[m].name};
        cells.insert(cells.end(), rows[m].begin(), rows[m].end());
        table.row(std::move(cells));
    }
    page.add(table, 4);
}

/// "8 Aug" would do, but dates are told as everywhere.
std::string dates(const std::vector<planner::Date>& dates) {
    std::vector<std::string> texts;
    texts.reserve(dates.size());
    for (const planner::Date& date : dates)
        texts.push_back(TextPage::date(date));
    return fmt::format("{}", fmt::join(texts, ", "));
}

std::string when_open(const Stage& stage) {
    const auto days = [](int count) {
        return fmt::format("{} {}", count, count == 1 ? "day" : "days");
    };
    std::vector<std::string> texts;
    if (stage.open_earlier_days)
        texts.push_back(days(*stage.open_earlier_days) + " earlier");
    if (stage.open_later_days)
        texts.push_back(days(*stage.open_later_days) + " later");
    return texts.empty() ? std::string("not within a month")
                         : fmt::format("{}", fmt::join(texts, " and "));
}

void add_openings(TextPage& page, const Stage& stage) {
    if (stage.closed)
        page.hang("    ",
                  fmt::format("{} is closed on {}, when it is reached; open {}.",
                              stage.from,
                              TextPage::date(stage.reached),
                              when_open(stage)));
    else if (!stage.closed_dates.empty())
        page.hang("    ",
                  fmt::format("{} is reached on {}; closed on {}.",
                              stage.from,
                              TextPage::date(stage.reached),
                              dates(stage.closed_dates)));
}

void add_lost_days(TextPage& page, const Stage& stage) {
    constexpr double a_gram_kg = 1e-3;
    for (const planner::LostDays& lost : stage.lost_days) {
        const std::string days =
            lost.days == 1 ? std::string("1 day lost") : fmt::format("{} days lost", lost.days);
        std::string text;
        if (lost.food_short_kg < a_gram_kg)
            text = fmt::format(
                "{}: the reserve covers it, food to the evening of day {}", days, lost.ends_day);
        else
            text = fmt::format("{}: {} of food short; the stage ends on day {}, the food {}",
                               days,
                               page.mass(lost.food_short_kg),
                               lost.ends_day,
                               lost.food_ends_day
                                   ? fmt::format("on the evening of day {}", *lost.food_ends_day)
                                   : std::string("on its first day"));
        if (lost.fuel_short_kg >= a_gram_kg)
            text += fmt::format("; {} of fuel short", page.mass(lost.fuel_short_kg));
        page.hang("    ", text + ".");
    }
}

void add_stage(TextPage& page, const Stage& stage) {
    page.item(fmt::format("Days {} to {}, {} to {}: {} of food (packaging {}, reserve {}), "
                          "{} of fuel in {} {}.",
                          stage.first_day,
                          stage.last_day,
                          stage.from,
                          stage.to,
                          page.mass(stage.food_kg),
                          page.mass(stage.packaging_kg),
                          page.mass(stage.reserve_kg),
                          page.mass(stage.fuel_kg),
                          stage.containers,
                          stage.containers == 1 ? "container" : "containers"));
    constexpr double a_gram_kg = 1e-3;
    if (stage.for_later_kg >= a_gram_kg)
        page.hang("    ",
                  fmt::format("{} of it are laid down on the way and eaten in a later stage.",
                              page.mass(stage.for_later_kg)));
    if (stage.fetched_kg >= a_gram_kg)
        page.hang("    ",
                  fmt::format("{} more are fetched on the way, from an earlier stage.",
                              page.mass(stage.fetched_kg)));
    if (stage.fuel_for_later_kg >= a_gram_kg)
        page.hang("    ",
                  fmt::format("{} of the fuel are laid down on the way and burnt in a later stage.",
                              page.mass(stage.fuel_for_later_kg)));
    if (stage.fuel_fetched_kg >= a_gram_kg)
        page.hang("    ",
                  fmt::format("{} more of fuel are fetched on the way, from an earlier stage.",
                              page.mass(stage.fuel_fetched_kg)));
    add_rations(page, stage);
    if (page.plan().trip.party.size() > 1)
        page.hang("    ", "carried by " + shares(page.plan(), stage.bearer_share));
    if (stage.declared_kg)
        page.hang(
            "    ",
            fmt::format("{} are there{}.",
                        page.mass(*stage.declared_kg),
                        stage.declared_short_kg > 0.0
                            ? fmt::format(", {} too little", page.mass(stage.declared_short_kg))
                            : std::string()));
    add_openings(page, stage);
    add_lost_days(page, stage);
}

} // namespace

void add_boxes(TextPage& page) {
    if (page.plan().stages.empty())
        return;
    page.heading("Food and fuel to pack");
    for (const Stage& stage : page.plan().stages)
        add_stage(page, stage);
}

void add_supplies(TextPage& page) {
    const Plan& plan = page.plan();
    if (plan.days.empty())
        return;
    page.heading("Food, fuel and water");
    page.item(fmt::format("{} of food and {} of fuel in all.",
                          page.mass(plan.totals.food_kg),
                          page.mass(plan.totals.fuel_kg)));
    for (const Stage& stage : plan.stages)
        add_stage(page, stage);
    page.add("\n");
    add_eating(page);
    add_water(page);
}

} // namespace tumpline::cli
