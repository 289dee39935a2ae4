#include "cli/text/text_page.h"
#include "cli/words/table.h"
#include "cli/words/text_width.h"
#include "cli/words/words.h"

#include <fmt/format.h>

#include <algorithm>
#include <chrono>
#include <optional>
#include <string>
#include <vector>

namespace tumpline::cli {

namespace {

using planner::Plan;
using planner::PlanDay;

/// The parts of a sum that are not nothing: "18.3 km on foot, 1.10 km carrying".
std::string ways(const TextPage& page) {
    const planner::Totals& totals = page.plan().totals;
    std::vector<std::string> ways;
    if (totals.walk_m > 0.0)
        ways.push_back(page.distance(totals.walk_m) + " on foot");
    if (totals.portage_m > 0.0)
        ways.push_back(page.portage(totals.portage_m) + " carrying");
    if (totals.paddle_m > 0.0)
        ways.push_back(page.distance(totals.paddle_m) + " afloat");
    if (totals.led_m > 0.0)
        ways.push_back(page.distance(totals.led_m) + " lined, waded or poled");
    if (totals.ride_m > 0.0)
        ways.push_back(page.distance(totals.ride_m) + " by ride");
    return fmt::format("{}", fmt::join(ways, ", "));
}

} // namespace

void add_heaviest(TextPage& page) {
    const Plan& plan = page.plan();
    Table table(
        {{"Heaviest pack", false, true}, {"", true}, {"Of limit", true}, {"Where", false, true}});
    for (const planner::HeaviestPack& pack : plan.heaviest_packs)
        table.row({pack.member,
                   page.mass(pack.pack_kg),
                   pack.limit_kg > 0.0
                       ? fmt::format("{:.0f} %", 100.0 * pack.pack_kg / pack.limit_kg)
                       : std::string(),
                   page.leg_place(pack.plan_leg)});
    page.add(table);
    if (plan.carrying.portages > 0)
        page.item(fmt::format("{}: {}",
                              plan.carrying.portages == 1 ? "Portage" : "Portages",
                              plan.carrying.sentence));
}

void add_daylight(TextPage& page) {
    const Plan& plan = page.plan();
    std::vector<int> late;
    for (const planner::Caution& caution : plan.cautions)
        if (caution.code == "after-dusk" && caution.day)
            late.push_back(*caution.day);
    if (!late.empty()) {
        page.item(fmt::format("Daylight: {} {} {} after dusk.",
                              late.size() == 1 ? "day" : "days",
                              fmt::join(late, ", "),
                              late.size() == 1 ? "ends" : "end"));
        return;
    }
    const PlanDay* tightest = nullptr;
    for (const PlanDay& day : plan.days)
        if (day.before_dusk_s &&
            (tightest == nullptr || *day.before_dusk_s < *tightest->before_dusk_s))
            tightest = &day;
    const bool dark = std::any_of(plan.days.begin(), plan.days.end(), [](const PlanDay& day) {
        return day.light.twilight.day == geo::SunDay::always_below;
    });
    if (plan.days.empty())
        return;
    if (dark)
        page.item("Daylight: on some days it does not get light; see the table of days.");
    else if (tightest == nullptr)
        page.item("Daylight: no dusk falls before midnight on any day.");
    else
        page.item(fmt::format("Daylight: every day ends before dusk, day {} with the least to "
                              "spare: {}.",
                              tightest->day,
                              planner::show_duration(*tightest->before_dusk_s)));
}

void add_title(TextPage& page) {
    const Plan& plan = page.plan();
    page.heading(one_line(plan.trip.name.empty() ? plan.trip.file.string() : plan.trip.name));
    if (!plan.days.empty())
        page.line(fmt::format("{} to {}, {} {}; times of {}",
                              planner::show_date(plan.days.front().date),
                              planner::show_date(plan.days.back().date),
                              plan.totals.days,
                              plan.totals.days == 1 ? "day" : "days",
                              plan.trip.time_zone));
    page.line(fmt::format("{}: {}; {}; {} moving",
                          page.distance(plan.totals.distance_m),
                          ways(page),
                          climbs_words(plan.totals, page.units()),
                          planner::show_duration(plan.totals.moving_s)));
}

} // namespace tumpline::cli
