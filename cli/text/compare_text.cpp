#include "cli/text/compare_text.h"

#include "cli/text/text_page.h"
#include "cli/words/caution_text.h"
#include "cli/words/compared_figures.h"
#include "cli/words/table.h"
#include "cli/words/text_width.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <optional>

namespace tumpline::cli {

namespace {

using planner::Comparison;
using planner::Figure;

std::string letter(std::size_t plan) {
    return {static_cast<char>('A' + plan)};
}

/// Plans that stand side by side in one table: the first and up to two more, so that the lines keep
/// to their width.
using Group = std::vector<std::size_t>;

std::vector<Group> groups(std::size_t plans) {
    std::vector<Group> found;
    for (std::size_t p = 1; p < plans; p += 2) {
        found.push_back({0, p});
        if (p + 1 < plans)
            found.back().push_back(p + 1);
    }
    return found;
}

/// "A", "B", "B - A", "C", "C - A": a column per plan and one per difference.
std::vector<Column> columns(const Group& group) {
    std::vector<Column> found{{"", false, true}};
    for (const std::size_t p : group) {
        found.push_back({letter(p), true});
        if (p > 0)
            found.push_back({fmt::format("{} - A", letter(p)), true});
    }
    return found;
}

void add_head(TextPage& page,
              const Comparison& comparison,
              const std::vector<std::string>& labels) {
    page.heading("Side by side; differences are against A");
    for (std::size_t p = 0; p < comparison.plans.size(); ++p) {
        const planner::Plan& plan = comparison.plans[p];
        page.item(fmt::format("{}: {} ({}): {}",
                              letter(p),
                              plan.trip.name.empty() ? "a trip without a name" : plan.trip.name,
                              labels[p],
                              planner::verdict_words(plan.verdict.level)));
    }
}

void add_cautions(TextPage& page, const Comparison& comparison) {
    for (const planner::ComparedCautions& changed : comparison.cautions) {
        const std::string name = letter(changed.plan);
        page.heading(changed.breaks.empty() ? fmt::format("Nothing breaks from A to {}", name)
                                            : fmt::format("What breaks from A to {}", name));
        for (const planner::Caution& caution : changed.breaks)
            page.item(placed_caution_text(caution, page.units()));
        if (changed.mends.empty())
            continue;
        page.heading(fmt::format("What A has and {} has not", name));
        for (const planner::Caution& caution : changed.mends)
            page.item(placed_caution_text(caution, page.units()));
    }
}

void add_totals(TextPage& page,
                const Comparison& comparison,
                const Group& group,
                const ComparedFigures& shown) {
    Table table(columns(group));
    for (const planner::ComparedFigure& one : comparison.figures) {
        if (std::all_of(one.values.begin(), one.values.end(), [](const auto& value) {
                return value == 0.0;
            }))
            continue;
        std::vector<std::string> cells{std::string(figure_words(one.figure))};
        for (const std::size_t p : group) {
            cells.push_back(one.values[p] ? shown.figure(one.figure, *one.values[p])
                                          : std::string("unknown"));
            if (p > 0)
                cells.push_back(one.differences[p]
                                    ? shown.difference(one.figure, *one.differences[p])
                                    : std::string());
        }
        table.row(std::move(cells));
    }
    page.heading("Totals");
    page.add(table);
}

void add_days(TextPage& page,
              const Comparison& comparison,
              const Group& group,
              const ComparedFigures& shown) {
    std::vector<Column> heads{{"Day", true}};
    for (const std::size_t p : group) {
        heads.push_back({fmt::format("{} to", letter(p)), false, true});
        heads.push_back({"Arrive", true});
        if (p > 0)
            heads.push_back({"Later by", true});
    }
    Table table(std::move(heads));
    for (const planner::ComparedDay& one : comparison.days) {
        std::vector<std::string> cells{fmt::format("{}", one.day)};
        for (const std::size_t p : group) {
            if (one.plan_day[p]) {
                const planner::PlanDay& day = comparison.plans[p].days[*one.plan_day[p]];
                const TextPage own(comparison.plans[p], {}); // of its own time zone
                cells.push_back(one.same_night && p > 0 ? "the same" : day.to);
                cells.push_back(day.rest_day ? (day.waiting_for.empty() ? "day of rest" : "waiting")
                                             : own.clock(day.arrive, day.date));
            } else {
                cells.insert(cells.end(), {"", ""});
            }
            if (p > 0)
                cells.push_back(one.later_s[p] ? shown.difference(Figure::moving, *one.later_s[p])
                                               : std::string());
        }
        table.row(std::move(cells));
    }
    page.heading("Days and nights");
    page.add(table);
}

void add_packs(TextPage& page,
               const Comparison& comparison,
               const Group& group,
               const ComparedFigures& shown) {
    std::vector<Column> heads{{"Member", false, true}};
    for (const std::size_t p : group) {
        heads.push_back({letter(p), true});
        heads.push_back({"Of limit", true});
        if (p > 0)
            heads.push_back({fmt::format("{} - A", letter(p)), true});
    }
    Table table(std::move(heads));
    for (const planner::ComparedPack& one : comparison.packs) {
        std::vector<std::string> cells{one.member};
        for (const std::size_t p : group) {
            const std::optional<planner::Heaviest>& heaviest = one.heaviest[p];
            cells.push_back(heaviest ? shown.figure(Figure::food, heaviest->pack_kg) : "");
            cells.push_back(heaviest && heaviest->of_limit > 0.0
                                ? fmt::format("{:.0f} %", 100.0 * heaviest->of_limit)
                                : "");
            if (p > 0)
                cells.push_back(one.more_kg[p] ? shown.difference(Figure::food, *one.more_kg[p])
                                               : std::string());
        }
        table.row(std::move(cells));
    }
    page.heading("Heaviest packs");
    page.add(table);
}

void add_appointments(TextPage& page,
                      const Comparison& comparison,
                      const Group& group,
                      const ComparedFigures& shown) {
    if (comparison.appointments.empty())
        return;
    Table table(columns(group));
    for (const planner::ComparedAppointment& one : comparison.appointments) {
        const auto spare = [&](std::size_t p) {
            if (!one.spare_s[p])
                return std::string("none");
            const std::string size = planner::show_duration(std::abs(*one.spare_s[p]));
            return *one.spare_s[p] < 0.0 ? fmt::format("-{}", size) : size;
        };
        std::vector<std::string> cells{one.what};
        for (const std::size_t p : group) {
            cells.push_back(spare(p));
            if (p > 0)
                cells.push_back(one.more_s[p] ? shown.difference(Figure::moving, *one.more_s[p])
                                              : std::string());
        }
        table.row(std::move(cells));
    }
    page.heading("To spare before appointments, their margins kept");
    page.add(table);
}

} // namespace

std::string compare_text(const Comparison& comparison,
                         const std::vector<std::string>& labels,
                         const Reader& reader) {
    TextPage page(comparison.plans.front(), reader);
    const ComparedFigures shown(reader.units);
    add_head(page, comparison, labels);
    constexpr std::size_t most_days = 14; // of more, the days are not on the first screen
    const bool first = reader.show.first_screen();
    const bool many = comparison.days.size() > most_days;
    const auto wants = [&](Section section) { return first || reader.show.wants(section); };
    if (wants(Section::cautions))
        add_cautions(page, comparison);
    for (const Group& group : groups(comparison.plans.size())) {
        if (wants(Section::totals))
            add_totals(page, comparison, group, shown);
        if (first ? !many : reader.show.wants(Section::days))
            add_days(page, comparison, group, shown);
        if (wants(Section::packs))
            add_packs(page, comparison, group, shown);
        if (wants(Section::appointments))
            add_appointments(page, comparison, group, shown);
    }
    if (first && many)
        add_more(page, "compare");
    return page.take();
}

} // namespace tumpline::cli
