#include "cli/text/nights_text.h"

#include "cli/text/text_page.h"
#include "cli/words/calendar_words.h"
#include "cli/words/caution_text.h"
#include "cli/words/table.h"
#include "cli/words/text_width.h"
#include "planner/decisions/nights_compared.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <cmath>
#include <vector>

namespace tumpline::cli {

namespace {

using planner::DayCost;
using planner::NightsOption;
using planner::NightsPlan;
using planner::PlanDay;

/// A cost, or nothing where there is none, so that tables stay calm.
std::string cost_text(double cost) {
    return cost < 0.005 ? std::string() : fmt::format("{:.2f}", cost);
}

std::vector<std::string> cost_cells(const DayCost& cost) {
    return {cost_text(cost.over_wish),
            cost_text(cost.uneven),
            cost_text(cost.late),
            cost_text(cost.dry_camp),
            cost_text(cost.carried),
            cost_text(cost.missed),
            fmt::format("{:.2f}", cost.sum())};
}

std::string names(const NightsOption& option) {
    return option.nights.empty() ? std::string("no night")
                                 : fmt::format("{}", fmt::join(option.nights, ", "));
}

/// Where a day ends: its night, or the finish.
std::string ends_at(const NightsOption& option, const PlanDay& day, std::size_t travelled) {
    return travelled < option.nights.size() ? option.nights[travelled] : day.to;
}

void add_days_of(TextPage& page, const NightsOption& option) {
    Table table({{"Day", true},
                 {"To", false, true},
                 {"Moving", true},
                 {"Arrive", true},
                 {"Dusk", true},
                 {"over", true},
                 {"uneven", true},
                 {"late", true},
                 {"dry", true},
                 {"carried", true},
                 {"missed", true},
                 {"Cost", true}});
    std::size_t travelled = 0;
    for (const PlanDay& day : option.plan.days) {
        if (day.rest_day) {
            table.row({fmt::format("{}", day.day), std::string(still_cell(day))});
            continue;
        }
        std::vector<std::string> cells{fmt::format("{}", day.day),
                                       ends_at(option, day, travelled),
                                       TextPage::duration(day.moving_s),
                                       page.clock(day.arrive, day.date),
                                       dusk_words(page, day)};
        const std::vector<std::string> costs = cost_cells(option.days[travelled++]);
        cells.insert(cells.end(), costs.begin(), costs.end());
        table.row(std::move(cells));
    }
    std::vector<std::string> cells{"", "all", "", "", ""};
    const std::vector<std::string> costs = cost_cells(option.cost);
    cells.insert(cells.end(), costs.begin(), costs.end());
    table.row(std::move(cells));
    page.add(table);
}

/// What stops a plan, but for what stops another one as well.
void add_stops(TextPage& page, const NightsOption& option, const NightsOption* reported) {
    const auto known = [&](const planner::Caution& caution) {
        return reported != nullptr && std::any_of(reported->plan.cautions.begin(),
                                                  reported->plan.cautions.end(),
                                                  [&](const planner::Caution& other) {
                                                      return other.level == caution.level &&
                                                             other.text == caution.text;
                                                  });
    };
    for (const planner::Caution& caution : option.plan.cautions)
        if (caution.level == planner::Level::stop && !known(caution))
            page.item(placed_caution_text(caution, page.units()));
}

void add_option(TextPage& page,
                const std::string& which,
                const NightsOption& option,
                const NightsOption& best) {
    const double more = option.cost.sum() - best.cost.sum();
    page.heading(one_line(fmt::format(
        "{}, {:.2f} {}: {}", which, std::abs(more), more < 0.0 ? "less" : "more", names(option))));
    if (!page.first_screen())
        add_days_of(page, option);
    add_stops(page, option, &best);
}

} // namespace

std::string nights_text(const NightsPlan& nights, const Reader& reader) {
    const planner::Plan& plan = nights.best.plan;
    TextPage page(plan, reader);
    page.heading(one_line(plan.trip.name.empty() ? plan.trip.file.string() : plan.trip.name));
    if (plan.verdict.level != planner::VerdictLevel::clear)
        page.line(fmt::format("The best of them: {}; see tumpline plan.",
                              planner::verdict_words(plan.verdict.level)));
    page.line(fmt::format("{} {} to choose from. Costs are in equivalent hours "
                          "(docs/nights.md).",
                          nights.places,
                          nights.camps ? (nights.places == 1 ? "camp" : "camps")
                                       : (nights.places == 1 ? "end of a leg" : "ends of legs")));
    const bool first = reader.show.first_screen();
    if (first || reader.show.wants(Section::best)) {
        page.heading(one_line(
            fmt::format("The best, cost {:.2f}: {}", nights.best.cost.sum(), names(nights.best))));
        add_days_of(page, nights.best);
        add_stops(page, nights.best, nullptr);
        if (!plan.converged.settled)
            page.line("Two sets of nights answered each other in turn; the one that stops earlier "
                      "was kept.");
    }
    if (first || reader.show.wants(Section::next)) {
        for (std::size_t k = 0; k < nights.next.size(); ++k)
            add_option(page, k == 0 ? "Second" : "Third", nights.next[k], nights.best);
        if (nights.next.empty())
            page.line("No other nights keep every limit.");
    }
    if (first || reader.show.wants(Section::listed))
        for (const NightsOption& listed : nights.listed)
            add_option(page, "As the trip lists them", listed, nights.best);
    if (first && (!nights.next.empty() || !nights.listed.empty()))
        add_more(page, "nights");
    return page.take();
}

} // namespace tumpline::cli
