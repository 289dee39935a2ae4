#include "cli/table.h"
#include "cli/text_page.h"

#include <fmt/format.h>

#include <string>
#include <vector>

/// What one could do otherwise: remedies for packs that are too heavy, alternatives to legs.
namespace tumpline::cli {

namespace {

using planner::Remedies;

std::string days_text(const std::vector<int>& days) {
    return fmt::format("{} {}", days.size() == 1 ? "day" : "days", fmt::join(days, ", "));
}

std::string percent(double ratio) {
    return fmt::format("{:.0f} %", 100.0 * ratio);
}

/// Whether it is enough, and how heavy packs stay.
std::string effect(bool enough, double heaviest_of_limit) {
    return fmt::format("{}; heaviest pack then {} of its limit",
                       enough ? "no pack is too heavy then" : "helps, but is not enough",
                       percent(heaviest_of_limit));
}

void add_raise(TextPage& page, const planner::RaisedLimits& raise) {
    std::vector<std::string> limits;
    for (std::size_t m = 0; m < raise.limits_kg.size(); ++m)
        limits.push_back(
            fmt::format("{} {}", page.plan().trip.party[m].name, page.mass(raise.limits_kg[m])));
    page.item(fmt::format("Bear it: as if every limit were {} higher ({}). More weight is more "
                          "falls and slower help; whether a body can bear it, its owner says.",
                          percent(raise.factor - 1.0),
                          fmt::join(limits, ", ")));
}

void add_leave(TextPage& page, const planner::LeftThings& leave) {
    const std::string least =
        leave.mass_kg > 0.0
            ? fmt::format("at least {} of things must stay; ", page.mass(leave.mass_kg))
            : std::string("together the party could bear it, but not as its things divide; ");
    page.item(fmt::format("Leave things at home: {}enough would be {}{}. What can be spared the "
                          "plan cannot know.",
                          least,
                          leave.together || leave.things.size() == 1 ? "" : "any one of ",
                          fmt::join(leave.things, leave.together ? " and " : ", ")));
}

void add_supply(TextPage& page, const planner::EarlierSupply& supply) {
    page.item(fmt::format("Supply or cache at {} (night of day {}): all packs {} lighter at the "
                          "start; {}.",
                          supply.place,
                          supply.after_day,
                          page.mass(supply.lighter_kg),
                          effect(supply.enough, supply.heaviest_of_limit)));
}

void add_relay(TextPage& page, const planner::RelayedWalks& relay) {
    std::vector<std::string> places;
    for (const std::size_t leg : relay.plan_legs)
        places.push_back(page.leg_place(leg));
    page.item(fmt::format(
        "Walk it twice with half the pack ({}): {} more, each walks {} more; {}.{}",
        fmt::join(places, "; "),
        TextPage::duration(relay.more_s),
        page.distance(relay.more_on_foot_m),
        effect(relay.enough, relay.heaviest_of_limit),
        relay.dark_days.empty()
            ? std::string()
            : fmt::format(" It would be dark before the camp of {}.", days_text(relay.dark_days))));
}

std::string way_name(const planner::OtherWay& way) {
    return fmt::format("{} instead of {}{}",
                       fmt::join(way.by, ", "),
                       fmt::join(way.instead_of, ", "),
                       way.without_boats ? ", without boats" : "");
}

} // namespace

void add_remedies(TextPage& page) {
    const Remedies& remedies = page.plan().remedies;
    if (remedies.overloaded.empty())
        return;
    page.heading("Packs over their limits, and what could be done");
    for (const planner::Overloaded& one : remedies.overloaded)
        page.item(fmt::format("{} on {}: up to {}, {} over the limit of {} ({}).",
                              one.member,
                              days_text(one.days),
                              page.mass(one.worst_kg),
                              page.mass(one.over_kg),
                              page.mass(one.limit_kg),
                              page.leg_place(one.plan_leg)));
    if (remedies.supply)
        add_supply(page, *remedies.supply);
    if (remedies.leave)
        add_leave(page, *remedies.leave);
    if (remedies.relay)
        add_relay(page, *remedies.relay);
    if (remedies.raise)
        add_raise(page, *remedies.raise);
}

void add_other_ways(TextPage& page) {
    const planner::OtherWays& others = page.plan().other_ways;
    if (others.ways.empty())
        return;
    page.heading("The whole trip by other ways");
    Table table({{"Way", false, true},
                 {"Length", true},
                 {"On foot", true},
                 {"Up", true},
                 {"Under way", true},
                 {"Days", true},
                 {"Energy", true},
                 {"Heaviest", true},
                 {"Of limit", true},
                 {"Borne", true}});
    const auto row = [&](const std::string& name, const planner::WayFigures& figures) {
        table.row(
            {name,
             page.distance(figures.distance_m),
             page.distance(figures.on_foot_m),
             page.height(figures.ascent_m),
             TextPage::duration(figures.under_way_s),
             std::to_string(figures.days),
             page.energy(figures.energy_j),
             page.mass(figures.heaviest_kg),
             figures.heaviest_of_limit > 0.0 ? percent(figures.heaviest_of_limit) : std::string(),
             page.carried(figures.carried_kg_km)});
    };
    row("as planned", others.planned);
    char letter = 'A';
    std::vector<std::string> remarks;
    for (const planner::OtherWay& way : others.ways) {
        const std::string label(1, letter++);
        std::string remark = fmt::format("{}: {}.", label, way_name(way));
        if (way.figures)
            row(label, *way.figures);
        if (way.left_home_kg > 0.0)
            remark += fmt::format(" Boats and what is used only afloat, {}, stay at home.",
                                  page.mass(way.left_home_kg));
        if (!way.refused.empty())
            remark += fmt::format(" Not planned: {}.", way.refused);
        else if (way.figures && !way.figures->stops.empty())
            remark += fmt::format(" It cannot be carried out as it stands: {}",
                                  way.figures->stops.front());
        remarks.push_back(remark);
    }
    page.add(table.text());
    for (const std::string& remark : remarks)
        page.item(remark);
    page.item("Borne is every pack times its way on foot, of the whole party.");
}

} // namespace tumpline::cli
