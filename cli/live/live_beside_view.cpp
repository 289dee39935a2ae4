#include "cli/drawing/load_band.h"
#include "cli/live/live_beside.h"
#include "cli/live/live_view.h"
#include "cli/words/caution_text.h"
#include "cli/words/compared_figures.h"
#include "cli/words/odds_words.h"
#include "planner/plan/verdict.h"
#include "planner/solution/nights.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <cmath>
#include <optional>
#include <string>
#include <utility>
#include <vector>

namespace tumpline::cli {

namespace {

using planner::Figure;
using planner::NightsOption;
using planner::Odds;
using planner::OddsDay;
using planner::PlanDay;

Json odds_day(const Odds& odds, const OddsDay& one, const Figures& shown) {
    const PlanDay& day = odds.plan.days[static_cast<std::size_t>(one.day - 1)];
    const auto clock = [&](planner::sys_seconds at) { return shown.clock_on(at, day.date); };
    const Drawing drawing{.width = narrow_drawing,
                          .text = 11.0,
                          .names = false,
                          .id = fmt::format("arrivals-{}", one.day)};
    std::vector<std::string> also;
    if (one.after_dusk)
        also.push_back(
            fmt::format("after dusk: {}", chance_words(*one.after_dusk, odds.options.draws)));
    if (one.held_up > 0.0)
        also.push_back(fmt::format("stopped by wind or current: {}",
                                   chance_words(one.held_up, odds.options.draws)));
    if (one.leading)
        also.push_back(fmt::format("hangs most on {}", assumption_words(*one.leading)));
    return {{"day", one.day},
            {"drawing", arrivals_drawing(day, one.arrive, drawing, shown)},
            {"text",
             fmt::format("Half of the draws by {}, nine of ten by {}",
                         clock(one.arrive.q50),
                         clock(one.arrive.q90))},
            {"also", fmt::format("{}", fmt::join(also, "; "))}};
}

Json odds_meetings(const Odds& odds, const Figures& shown) {
    return array_of(odds.appointments, [&](const planner::OddsAppointment& one) {
        const planner::PlanAppointment& meet = odds.plan.appointments[one.appointment];
        return Json(fmt::format("{} at {}, day {} by {}: missed in {} of the draws",
                                meet.what,
                                meet.at,
                                meet.day,
                                shown.clock(meet.by),
                                chance_words(one.missed, odds.options.draws)));
    });
}

Json odds_food(const Odds& odds) {
    Json lines = Json::array();
    for (const planner::OddsStage& one : odds.stages) {
        if (one.runs_out.empty())
            continue;
        const planner::Stage& stage = odds.plan.stages[one.stage];
        std::string line = fmt::format("Food {} to {} runs out in {} of the draws",
                                       stage.from,
                                       stage.to,
                                       chance_words(one.runs_out.front(), odds.options.draws));
        if (one.runs_out.size() > 1)
            line += fmt::format(", in {} if a day is lost",
                                chance_words(one.runs_out[1], odds.options.draws));
        lines.push_back(line);
    }
    return lines;
}

Json nights_option(const std::string& which, const NightsOption& option, const NightsOption& best) {
    const double more = option.cost.sum() - best.cost.sum();
    std::vector<std::string> stops;
    for (const planner::Caution& caution : option.plan.cautions)
        if (caution.level == planner::Level::stop)
            stops.push_back(caution.text);
    return {{"which", which},
            {"names",
             option.nights.empty() ? std::string("no night")
                                   : fmt::format("{}", fmt::join(option.nights, ", "))},
            {"cost",
             &option == &best
                 ? fmt::format("cost {:.2f}", best.cost.sum())
                 : fmt::format("{:.2f} {}", std::abs(more), more < 0.0 ? "less" : "more")},
            {"verdict", planner::verdict_words(option.plan.verdict.level)},
            {"stops", stops},
            {"edits", Json::array({added("/days/nights", option.nights)})}};
}

/// A line of a comparison; empty where the reader would see no difference.
std::optional<Json> compared_line(std::string_view label,
                                  Figure kind,
                                  const std::vector<std::optional<double>>& values,
                                  const ComparedFigures& figures) {
    const auto text = [&](const std::optional<double>& value) {
        if (!value)
            return std::string("none");
        const std::string size = figures.figure(kind, std::abs(*value));
        return *value < 0.0 ? "-" + size : size;
    };
    const std::string pinned = text(values[0]);
    const std::string now = text(values[1]);
    if (pinned == now)
        return std::nullopt;
    return Json{{"label", label},
                {"pinned", pinned},
                {"now", now},
                {"difference",
                 values[0] && values[1] ? figures.difference(kind, *values[1] - *values[0])
                                        : std::string()}};
}

void add_line(Json& lines, std::optional<Json> line) {
    if (line)
        lines.push_back(*std::move(line));
}

std::vector<std::optional<double>> pack_kg(const planner::ComparedPack& pack) {
    std::vector<std::optional<double>> values;
    for (const std::optional<planner::Heaviest>& one : pack.heaviest)
        values.push_back(one ? std::optional(one->pack_kg) : std::nullopt);
    return values;
}

Json cautions_words(const std::vector<planner::Caution>& cautions, const Figures& shown) {
    return array_of(cautions, [&](const planner::Caution& caution) {
        return Json(placed_caution_text(caution, shown.units()));
    });
}

} // namespace

Json odds_view(const Odds& odds, const Figures& shown) {
    return {{"words",
             fmt::format("{} draws of what one does not know; under way, all days together: half "
                         "take up to {}, nine of ten up to {}.",
                         odds.options.draws,
                         shown.duration(odds.under_way_s.q50),
                         shown.duration(odds.under_way_s.q90))},
            {"days",
             array_of(odds.days, [&](const OddsDay& one) { return odds_day(odds, one, shown); })},
            {"appointments", odds_meetings(odds, shown)},
            {"food", odds_food(odds)},
            {"remarks", odds.remarks}};
}

Json nights_view(const planner::NightsPlan& nights, const Figures& /*shown*/) {
    Json options = Json::array({nights_option("Best", nights.best, nights.best)});
    for (std::size_t k = 0; k < nights.next.size(); ++k)
        options.push_back(nights_option(k == 0 ? "Second" : "Third", nights.next[k], nights.best));
    for (const NightsOption& listed : nights.listed)
        options.push_back(nights_option("As the nights are listed", listed, nights.best));
    return {{"words",
             fmt::format("{} {} to choose from. Costs are in equivalent hours.{}",
                         nights.places,
                         nights.camps ? (nights.places == 1 ? "camp" : "camps")
                                      : (nights.places == 1 ? "end of a leg" : "ends of legs"),
                         nights.next.empty() ? " No other nights keep every limit." : "")},
            {"options", std::move(options)}};
}

Json compare_view(const planner::Comparison& comparison, const Figures& shown) {
    const ComparedFigures figures(shown.units());
    Json lines = Json::array();
    for (const planner::ComparedFigure& one : comparison.figures)
        add_line(lines, compared_line(figure_words(one.figure), one.figure, one.values, figures));
    for (const planner::ComparedPack& pack : comparison.packs)
        add_line(
            lines,
            compared_line("heaviest pack, " + pack.member, Figure::food, pack_kg(pack), figures));
    for (const planner::ComparedAppointment& one : comparison.appointments)
        add_line(lines,
                 compared_line("to spare, " + one.what, Figure::moving, one.spare_s, figures));
    const planner::ComparedCautions& cautions = comparison.cautions.front();
    return {{"pinned", planner::verdict_words(comparison.plans[0].verdict.level)},
            {"now", planner::verdict_words(comparison.plans[1].verdict.level)},
            {"lines", std::move(lines)},
            {"breaks", cautions_words(cautions.breaks, shown)},
            {"mends", cautions_words(cautions.mends, shown)}};
}

} // namespace tumpline::cli
