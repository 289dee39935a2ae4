#include "cli/words/flow_words.h"

#include "cli/words/meeting_words.h"
#include "planner/trip/vocabulary.h"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

namespace tumpline::cli {

namespace {

using planner::DecisionCard;
using planner::FlowLeg;
using planner::FlowPlan;

std::string in_units(const planner::UnitText& text, const Figures& shown) {
    return shown.units() == planner::UnitSystem::metric ? text.metric : text.imperial;
}

std::string spare_words(double spare_s, const Figures& shown) {
    return spare_s < 0.0 ? fmt::format("{} too late", shown.duration(-spare_s))
                         : shown.duration(spare_s);
}

std::string current_cell(const FlowLeg& leg, const Figures& shown) {
    return fmt::format("{}{}{}",
                       leg.estimated ? "about " : "",
                       shown.speed(leg.current_mps),
                       leg.asked ? "" : ", as now");
}

std::string class_cell(const FlowLeg& leg) {
    return leg.river_class.value_or(0) > 0 ? std::string(planner::class_word(*leg.river_class))
                                           : std::string("not known");
}

std::string reading_cell(const FlowLeg& leg, const Figures& shown) {
    if (!leg.reading)
        return "not known";
    return in_units(planner::reading_words(*leg.reading), shown) +
           (leg.runnable == false ? ", not runnable" : "");
}

class TableMaker {
  public:
    TableMaker(const planner::Plan& plan, const Figures& shown)
        : flows_(plan.flows), shown_(shown) {}

    FlowTable make() {
        if (flows_.empty())
            return {};
        for (const FlowPlan& flow : flows_)
            table_.levels.emplace_back(planner::word(flow.level));
        for (std::size_t i = 0; i < flows_.front().legs.size(); ++i)
            leg(i);
        add("moving time", [&](const FlowPlan& flow) { return shown_.duration(flow.moving_s); });
        add("days", [](const FlowPlan& flow) { return std::to_string(flow.days); });
        margins();
        add("the plan", [](const FlowPlan& flow) {
            return flow.verdict == planner::VerdictLevel::clear
                       ? std::string(
                             "nothing known against it") // the columns stay beside each other
                       : planner::verdict_words(flow.verdict);
        });
        remarks();
        return std::move(table_);
    }

  private:
    template <typename Cell> void add(std::string what, Cell cell) {
        FlowTable::Row row{std::move(what), {}};
        for (const FlowPlan& flow : flows_)
            row.cells.push_back(cell(flow));
        table_.rows.push_back(std::move(row));
    }

    void leg(std::size_t i);
    void margins();
    void remarks();

    [[nodiscard]] bool at_every_level(const std::string& title) const {
        return std::all_of(flows_.begin(), flows_.end(), [&](const FlowPlan& flow) {
            return std::find(flow.titles.begin(), flow.titles.end(), title) != flow.titles.end();
        });
    }

    const std::vector<FlowPlan>& flows_;
    const Figures& shown_;
    FlowTable table_;
};

void TableMaker::leg(std::size_t i) {
    const FlowLeg& first = flows_.front().legs[i];
    add(fmt::format("leg {}", first.leg),
        [&](const FlowPlan& flow) { return shown_.duration(flow.legs[i].moving_s); });
    add("  its current", [&](const FlowPlan& flow) { return current_cell(flow.legs[i], shown_); });
    add("  its class", [&](const FlowPlan& flow) { return class_cell(flow.legs[i]); });
    add("  its reading", [&](const FlowPlan& flow) { return reading_cell(flow.legs[i], shown_); });
}

void TableMaker::margins() {
    std::size_t days = 0;
    for (const FlowPlan& flow : flows_)
        days = std::max(days, flow.before_dusk_s.size());
    for (std::size_t i = 0; i < days; ++i) {
        const bool any = std::any_of(flows_.begin(), flows_.end(), [&](const FlowPlan& flow) {
            return i < flow.before_dusk_s.size() && flow.before_dusk_s[i];
        });
        if (!any)
            continue; // a day without travel, or without dusk
        add(fmt::format("day {}: before dusk", i + 1), [&](const FlowPlan& flow) -> std::string {
            if (i >= flow.before_dusk_s.size())
                return "no such day";
            return flow.before_dusk_s[i] ? spare_words(*flow.before_dusk_s[i], shown_) : "none";
        });
    }
    for (std::size_t i = 0; i < flows_.front().appointments.size(); ++i)
        add(fmt::format("{}: to spare", flows_.front().appointments[i].what),
            [&](const FlowPlan& flow) {
                const planner::FlowMargin& meet = flow.appointments[i];
                return meet.spare_s >= 0.0 ? shown_.duration(meet.spare_s)
                                           : meeting_words({meet.spare_s, meet.margin_s}, shown_);
            });
}

void TableMaker::remarks() {
    for (const FlowPlan& flow : flows_) {
        std::vector<std::string> own;
        for (const std::string& title : flow.titles)
            if (!at_every_level(title))
                own.push_back(title);
        if (!own.empty())
            table_.remarks.push_back(
                fmt::format("{}: {}.", planner::word(flow.level), fmt::join(own, "; ")));
    }
    const auto any = [&](auto holds) {
        return std::any_of(flows_.begin(), flows_.end(), [&](const FlowPlan& flow) {
            return std::any_of(flow.legs.begin(), flow.legs.end(), holds);
        });
    };
    if (any([](const FlowLeg& leg) { return leg.estimated; }))
        table_.remarks.emplace_back(
            "about: an estimate from another level by hydraulic geometry, not a measured current.");
    if (any([](const FlowLeg& leg) { return !leg.asked; }))
        table_.remarks.emplace_back("as now: the river has no such level, and the plan takes what "
                                    "it carries now.");
}

class CardWriter {
  public:
    CardWriter(const planner::Plan& plan, const DecisionCard& card, const Figures& shown)
        : plan_(plan), card_(card), shown_(shown) {}

    CardWords write() {
        levels();
        latest();
        if (card_.wind_mps)
            lines_.push_back(fmt::format("Not in wind above {} over open water, the ceiling of {}.",
                                         in_units(planner::wind_words(*card_.wind_mps), shown_),
                                         card_.wind_craft));
        instead();
        return {fmt::format(
                    "Day {}, leg {}, {}: decide at {}", card_.day, card_.leg, card_.name, card_.at),
                std::move(lines_)};
    }

  private:
    void levels();
    void latest();
    void instead();

    const planner::Plan& plan_;
    const DecisionCard& card_;
    const Figures& shown_;
    std::vector<std::string> lines_;
};

void CardWriter::levels() {
    const std::string gauge =
        card_.gauge.empty() ? std::string() : fmt::format(" at the gauge \"{}\"", card_.gauge);
    if (card_.below)
        lines_.push_back(fmt::format("Not below {}{}: it is said not to be runnable.",
                                     in_units(planner::reading_words(*card_.below), shown_),
                                     gauge));
    if (card_.above)
        lines_.push_back(fmt::format("Not above {}{}: {}.",
                                     in_units(planner::reading_words(*card_.above), shown_),
                                     gauge,
                                     card_.above_why));
    if (card_.not_at)
        lines_.push_back(fmt::format(
            "Not at the level \"{}\": {}.", planner::word(*card_.not_at), card_.above_why));
    if (!card_.reading_known)
        lines_.emplace_back("Below and above what level it cannot be run is not known: ask.");
}

void CardWriter::latest() {
    if (!card_.latest)
        return;
    const auto day = std::find_if(plan_.days.begin(), plan_.days.end(), [&](const auto& one) {
        return one.day == card_.day;
    });
    const std::string at = day == plan_.days.end() ? shown_.clock(card_.latest->at)
                                                   : shown_.clock_on(card_.latest->at, day->date);
    lines_.push_back(
        card_.latest->passed
            ? fmt::format("The plan starts later than {}, the latest for {}: do not go on.",
                          at,
                          card_.latest->keeps)
            : fmt::format("Not after {}: later than that misses {}, at the plan's pace.",
                          at,
                          card_.latest->keeps));
}

void CardWriter::instead() {
    std::string text = "Otherwise: ";
    if (!card_.instead.empty())
        text += fmt::format("take {}; or ", fmt::join(card_.instead, " or "));
    text += fmt::format("stay at {} and look again", card_.wait_at);
    if (!card_.back_to.empty() && card_.back_s)
        text += fmt::format("; the nearest way out behind is {}, {}",
                            card_.back_to,
                            shown_.duration(*card_.back_s));
    lines_.push_back(text + ".");
}

} // namespace

FlowTable flow_table(const planner::Plan& plan, const Figures& shown) {
    return TableMaker(plan, shown).make();
}

std::string level_met(const planner::PlanFlow& flow, const Figures& shown) {
    std::vector<std::string> levels;
    for (const planner::FlowState& state : flow.states)
        if (state.reading)
            levels.push_back(in_units(planner::reading_words(*state.reading), shown));
    if (flow.states.size() > 1)
        return fmt::format("{}", fmt::join(levels, ", then "));
    std::string text =
        flow.now.column ? fmt::format("{} water", planner::word(*flow.now.column)) : std::string();
    if (!levels.empty())
        text += text.empty() ? levels.front() : fmt::format(", {}", levels.front());
    return text;
}

std::vector<CardWords> card_words(const planner::Plan& plan, const Figures& shown) {
    std::vector<CardWords> cards;
    cards.reserve(plan.decisions.size());
    for (const DecisionCard& card : plan.decisions)
        cards.push_back(CardWriter(plan, card, shown).write());
    return cards;
}

} // namespace tumpline::cli
