#include "cli/text/text_page.h"
#include "cli/words/table.h"
#include "cli/words/text_width.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

namespace tumpline::cli {

namespace {

using planner::Litres;
using planner::Plan;

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
        return page.volume(stretch.fill_l.front()) + " each";
    return fmt::format("{}", fmt::join(texts, ", "));
}

/// The dry nights of a stretch and what each takes.
std::string nights_text(const TextPage& page, const planner::WaterStretch& stretch) {
    std::vector<std::string> texts;
    for (const planner::DryNight& night : stretch.dry_nights)
        texts.push_back(fmt::format("{} each for the night of day {} at {}{}",
                                    page.volume(night.litres),
                                    night.day,
                                    night.place,
                                    night.too_much ? ", which is too much" : ""));
    return fmt::format("of it {}", fmt::join(texts, "; "));
}

/// What the vessels hold on one day, point by point; empty if it does not change.
std::string line_of(const TextPage& page, int day) {
    std::vector<const Litres*> points;
    for (const Litres& point : page.plan().litres)
        if (point.day == day)
            points.push_back(&point);
    std::vector<std::string> texts;
    std::string before;
    bool changes = false;
    for (std::size_t k = 0; k < points.size(); ++k) {
        const Litres& point = *points[k];
        const bool filled = point.after == planner::LitresStep::filled;
        const bool fills_next =
            k + 1 < points.size() && points[k + 1]->after == planner::LitresStep::filled;
        const std::string litres = page.volume(std::max(0.0, point.each_l));
        changes = changes || (k > 0 && litres != before);
        if (litres == before || (k == 0 && fills_next)) // nothing new, or not for long
            continue;
        before = litres;
        texts.push_back(
            fmt::format("{}{} {}{}",
                        filled ? "filled at " : "",
                        page.along(point.along_m),
                        filled ? "to " + litres : litres,
                        point.after == planner::LitresStep::camp      ? " in camp"
                        : point.after == planner::LitresStep::left    ? " after leaving some"
                        : point.after == planner::LitresStep::fetched ? " with what is fetched"
                                                                      : ""));
    }
    return changes ? fmt::format("{}", fmt::join(texts, ", ")) : std::string();
}

void add_line(TextPage& page) {
    std::string lines;
    for (const planner::PlanDay& day : page.plan().days)
        if (const std::string line = line_of(page, day.day); !line.empty())
            lines += hanging(fmt::format("  Day {}: ", day.day), line, page.columns());
    if (lines.empty())
        return;
    page.add("\n");
    page.item("Water in each one's vessels along the route, the reserve included:");
    page.add(lines);
}

} // namespace

void add_water(TextPage& page) {
    Table table({{"Water from", false, true},
                 {"at"},
                 {"to", false, true},
                 {"Hours", true},
                 {"Dry camps", true},
                 {"Fill", false, true},
                 {"Vessels", true},
                 {""}});
    for (const planner::WaterStretch& stretch : page.plan().water) {
        table.row({stretch.from,
                   page.along(stretch.from_m),
                   stretch.to,
                   fmt::format("{:.1f}", stretch.hours),
                   stretch.nights > 0 ? fmt::format("{}", stretch.nights) : std::string(),
                   fills(page, stretch),
                   page.volume(stretch.capacity_l),
                   stretch.over_capacity ? "too small" : ""});
        if (!stretch.dry_nights.empty())
            table.remark(nights_text(page, stretch));
    }
    if (table.empty())
        return;
    page.add("\n");
    page.add(table);
    add_line(page);
}

} // namespace tumpline::cli
