#include "cli/words/choice_words.h"

#include "cli/words/caution_text.h"
#include "cli/words/words.h"

#include <fmt/format.h>

namespace tumpline::cli {

namespace {

using planner::Plan;
using planner::UnitSystem;

std::string days_text(const std::vector<int>& days) {
    return fmt::format("{} {}", days.size() == 1 ? "day" : "days", fmt::join(days, ", "));
}

/// Whether it is enough, and how heavy packs stay.
std::string effect(bool enough, double heaviest_of_limit) {
    return fmt::format("{}; heaviest pack then {} of its limit",
                       enough ? "no pack is too heavy then" : "helps, but is not enough",
                       percent(heaviest_of_limit));
}

std::string raise_words(const Plan& plan, UnitSystem units) {
    const planner::RaisedLimits& raise = *plan.remedies.raise;
    std::vector<std::string> limits;
    for (std::size_t m = 0; m < raise.limits_kg.size(); ++m)
        limits.push_back(fmt::format(
            "{} {}", plan.trip.party[m].name, planner::show_mass(raise.limits_kg[m], units)));
    return fmt::format("Accept the weight: the same as raising every limit by {} ({}). More weight "
                       "means more falls and slower help.",
                       percent(raise.factor - 1.0),
                       fmt::join(limits, ", "));
}

std::string leave_words(const planner::LeftThings& leave, UnitSystem units) {
    const std::string least =
        leave.mass_kg > 0.0
            ? fmt::format("at least {} of things must stay; ",
                          planner::show_mass(leave.mass_kg, units))
            : std::string("together the party could bear it, but not as its things divide; ");
    return fmt::format("Leave things at home: {}enough would be {}{}. What can be spared the plan "
                       "cannot know.",
                       least,
                       leave.together || leave.things.size() == 1 ? "" : "any one of ",
                       fmt::join(leave.things, leave.together ? " and " : ", "));
}

std::string supply_words(const planner::EarlierSupply& supply, UnitSystem units) {
    return fmt::format(
        "Supply or cache at {} (night of day {}): all packs {} lighter at the start; {}.",
        supply.place,
        supply.after_day,
        planner::show_mass(supply.lighter_kg, units),
        effect(supply.enough, supply.heaviest_of_limit));
}

std::string relay_words(const Plan& plan, UnitSystem units) {
    const planner::RelayedWalks& relay = *plan.remedies.relay;
    std::vector<std::string> places;
    for (const planner::PlanLegNumber leg : relay.plan_legs)
        places.push_back(leg_place(plan, leg));
    return fmt::format(
        "Walk it twice with half the pack ({}): {} more, each walks {} more; {}.{}",
        fmt::join(places, "; "),
        planner::show_duration(relay.more_s),
        planner::show_distance(relay.more_on_foot_m, units),
        effect(relay.enough, relay.heaviest_of_limit),
        relay.dark_days.empty()
            ? std::string()
            : fmt::format(" It would be dark before the camp of {}.", days_text(relay.dark_days)));
}

std::string way_name(const planner::OtherWay& way) {
    return fmt::format("{} instead of {}{}",
                       fmt::join(way.by, ", "),
                       fmt::join(way.instead_of, ", "),
                       way.without_boats ? ", without boats" : "");
}

WaysTable::Row
row_of(const std::string& name, const planner::WayFigures& figures, UnitSystem units) {
    return {.name = name,
            .length = planner::show_distance(figures.distance_m, units),
            .on_foot = planner::show_distance(figures.on_foot_m, units),
            .ascent = planner::show_height(figures.ascent_m, units),
            .under_way = planner::show_duration(figures.under_way_s),
            .days = figures.days,
            .energy = planner::show_energy(figures.energy_j),
            .heaviest = planner::show_mass(figures.heaviest_kg, units),
            .of_limit = figures.heaviest_of_limit > 0.0 ? percent(figures.heaviest_of_limit)
                                                        : std::string(),
            .borne = planner::show_carried(figures.carried_kg_km, units)};
}

} // namespace

std::vector<std::string> remedy_lines(const Plan& plan, UnitSystem units) {
    const planner::Remedies& remedies = plan.remedies;
    std::vector<std::string> lines;
    for (const planner::Overloaded& one : remedies.overloaded)
        lines.push_back(fmt::format("{} on {}: up to {}, {} over the limit of {} ({}).",
                                    one.member,
                                    days_text(one.days),
                                    planner::show_mass(one.worst_kg, units),
                                    planner::show_mass(one.over_kg, units),
                                    planner::show_mass(one.limit_kg, units),
                                    leg_place(plan, one.plan_leg)));
    if (remedies.supply)
        lines.push_back(supply_words(*remedies.supply, units));
    if (remedies.leave)
        lines.push_back(leave_words(*remedies.leave, units));
    if (remedies.relay)
        lines.push_back(relay_words(plan, units));
    if (remedies.raise)
        lines.push_back(raise_words(plan, units));
    if (!remedies.all_tried)
        lines.push_back(fmt::format("Not everything was tried: the trip was planned anew {} times "
                                    "at most for things to leave, and for a supply.",
                                    remedies.most_plans));
    return lines;
}

WaysTable ways_table(const Plan& plan, UnitSystem units) {
    const planner::OtherWays& others = plan.other_ways;
    WaysTable table;
    if (others.ways.empty())
        return table;
    table.rows.push_back(row_of("as planned", others.planned, units));
    char letter = 'A';
    for (const planner::OtherWay& way : others.ways) {
        const std::string label(1, letter++);
        std::string remark = fmt::format("{}: {}.", label, way_name(way));
        if (way.figures)
            table.rows.push_back(row_of(label, *way.figures, units));
        if (way.left_home_kg > 0.0)
            remark += fmt::format(" Boats and what is used only afloat, {}, are left at home.",
                                  planner::show_mass(way.left_home_kg, units));
        if (!way.refused.empty())
            remark += fmt::format(" Not planned: {}.", way.refused);
        else if (way.figures && !way.figures->stops.empty())
            remark +=
                fmt::format(" It cannot be done: {}", words_of(way.figures->stops.front(), units));
        table.remarks.push_back(std::move(remark));
    }
    return table;
}

} // namespace tumpline::cli
