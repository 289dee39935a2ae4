#include "cli/table.h"
#include "cli/text_page.h"
#include "cli/text_width.h"

#include <fmt/format.h>

#include <algorithm>
#include <string>
#include <vector>

namespace tumpline::cli {

namespace {

using planner::Plan;

void add_eating(TextPage& page) {
    Table table({{"Day", true},
                 {"Who", false, true},
                 {"Energy", true},
                 {"Food eaten", true},
                 {"Water drunk", true},
                 {"Pack, morning", true},
                 {"next morning", true}});
    for (const planner::PlanDay& day : page.plan().days)
        for (const planner::MemberDay& member : day.members)
            table.row({&member == &day.members.front() ? fmt::format("{}", day.day) : "",
                       member.member,
                       planner::show_energy(member.energy_j),
                       page.mass(member.food_kg),
                       page.volume(member.water_l),
                       page.mass(member.pack_start_kg),
                       page.mass(member.pack_end_kg)});
    page.add(table.text());
}

std::string shares(const Plan& plan, const std::vector<double>& shares) {
    std::vector<std::string> texts;
    for (std::size_t i = 0; i < shares.size() && i < plan.trip.party.size(); ++i)
        texts.push_back(fmt::format("{} {:.0f} %", plan.trip.party[i].name, 100.0 * shares[i]));
    return fmt::format("{}", fmt::join(texts, ", "));
}

void add_stages(TextPage& page) {
    for (const planner::Stage& stage : page.plan().stages) {
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
        if (page.plan().trip.party.size() > 1)
            page.add(hanging("    ", "carried by " + shares(page.plan(), stage.bearer_share)));
        if (stage.closed)
            page.add(
                hanging("    ", fmt::format("{} is closed on the day it is reached.", stage.from)));
        constexpr double a_gram_kg = 1e-3;
        if (stage.lost_day_short_kg >= a_gram_kg)
            page.add(hanging("    ",
                             fmt::format("One day more would leave the party {} short.",
                                         page.mass(stage.lost_day_short_kg))));
    }
}

std::string fills(const TextPage& page, const planner::WaterStretch& stretch) {
    const Plan& plan = page.plan();
    std::vector<std::string> texts;
    for (std::size_t i = 0; i < stretch.fill_l.size() && i < plan.trip.party.size(); ++i)
        texts.push_back(
            fmt::format("{} {}", plan.trip.party[i].name, page.volume(stretch.fill_l[i])));
    const bool same = std::all_of(stretch.fill_l.begin(), stretch.fill_l.end(), [&](double fill_l) {
        return page.volume(fill_l) == page.volume(stretch.fill_l.front());
    });
    if (same && texts.size() > 1)
        return "each " + page.volume(stretch.fill_l.front());
    return fmt::format("{}", fmt::join(texts, ", "));
}

void add_water(TextPage& page) {
    Table table({{"Water from", false, true},
                 {"at"},
                 {"to", false, true},
                 {"Hours", true},
                 {"Dry camps", true},
                 {"Fill", false, true},
                 {"Vessels", true},
                 {""}});
    for (const planner::WaterStretch& stretch : page.plan().water)
        table.row({stretch.from,
                   page.along(stretch.from_m),
                   stretch.to,
                   fmt::format("{:.1f}", stretch.hours),
                   stretch.nights > 0 ? fmt::format("{}", stretch.nights) : std::string(),
                   fills(page, stretch),
                   page.volume(stretch.capacity_l),
                   stretch.over_capacity ? "too small" : ""});
    if (table.empty())
        return;
    page.add("\n");
    page.add(table.text());
}

} // namespace

void add_supplies(TextPage& page) {
    const Plan& plan = page.plan();
    if (plan.days.empty())
        return;
    page.heading("Food, fuel and water");
    page.item(fmt::format("{} of food and {} of fuel in all.",
                          page.mass(plan.totals.food_kg),
                          page.mass(plan.totals.fuel_kg)));
    add_stages(page);
    page.add("\n");
    add_eating(page);
    add_water(page);
}

} // namespace tumpline::cli
