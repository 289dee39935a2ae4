#include "cli/text/text_page.h"
#include "cli/words/leave_words.h"
#include "cli/words/table.h"
#include "cli/words/text_width.h"
#include "cli/words/words.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <optional>
#include <string>
#include <vector>

namespace tumpline::cli {

namespace {

using planner::ExitPoint;
using planner::Plan;

/// Time to the nearer exit of a point.
std::optional<double> nearer_s(const ExitPoint& point) {
    if (point.forward_s && point.back_s)
        return std::min(*point.forward_s, *point.back_s);
    return point.forward_s ? point.forward_s : point.back_s;
}

std::string way_out(const std::string& name, const std::optional<double>& time_s) {
    return time_s ? fmt::format("{} in {}", name, planner::show_duration(*time_s))
                  : std::string("no exit");
}

void add_exit(TextPage& page, const std::string& what, const ExitPoint& point) {
    page.item(fmt::format("{}: {}; forward {}, back {}.",
                          what,
                          page.along(point.along_m),
                          way_out(point.forward, point.forward_s),
                          way_out(point.back, point.back_s)));
}

/// "+3 h 20 min" against the plan's own departure.
std::string against_plan(double spare_s) {
    constexpr double a_minute_s = 60.0;
    if (std::abs(spare_s) < a_minute_s)
        return "as planned";
    return fmt::format(
        "{}{}", spare_s > 0.0 ? "+" : "-", planner::show_duration(std::abs(spare_s)));
}

void add_leave_by(TextPage& page, const planner::PlanAppointment& meet) {
    const std::vector<planner::PlanDay>& days = page.plan().days;
    Table table({{"To meet it, leave", false, true},
                 {"Day", true},
                 {"at latest", true},
                 {"vs plan", true},
                 {"why", false, true}});
    for (const planner::LeaveBy& leave : meet.leave_by) {
        const auto day = static_cast<std::size_t>(leave.day) - 1;
        table.row({leave.place,
                   fmt::format("{}", leave.day),
                   day < days.size() ? page.clock(at_latest(leave.at), days[day].date)
                                     : page.clock(at_latest(leave.at)),
                   against_plan(leave.spare_s),
                   leave.bound == planner::LeaveBound::appointment ? std::string("on time")
                                                                   : bound_words(leave, page)});
    }
    page.add(table, 4);
    const auto any = [&](const auto& holds) {
        return std::any_of(meet.leave_by.begin(), meet.leave_by.end(), holds);
    };
    if (any([](const auto& leave) { return leave.days_later > 0; }))
        page.item("  +1 is a day later: days of rest, or in hand, are given up for it.");
    if (any([](const auto& leave) { return leave.bound != planner::LeaveBound::appointment; }))
        page.item(
            "  Daily stages are kept; leaving later needs different camps (tumpline nights).");
}

std::string turn_where(const TextPage& page, const planner::TurnRound& turn) {
    const std::vector<planner::PlanDay>& days = page.plan().days;
    switch (turn.limit) {
    case planner::TurnLimit::dark:
        return "too late from the start";
    case planner::TurnLimit::no_way_back:
        return fmt::format("{}, leg {}: {}",
                           page.along(turn.along_m),
                           turn.leg,
                           no_return_words(page.plan(), turn));
    case planner::TurnLimit::none:
        return "anywhere: there is no dusk";
    case planner::TurnLimit::dusk:
        break;
    }
    if (turn.whole_day && turn.day >= 1 && static_cast<std::size_t>(turn.day) <= days.size())
        return fmt::format("anywhere, even from {}",
                           days[static_cast<std::size_t>(turn.day) - 1].to);
    return fmt::format("{}, leg {}", page.along(turn.along_m), turn.leg);
}

} // namespace

void add_appointments(TextPage& page) {
    const Plan& plan = page.plan();
    if (plan.appointments.empty())
        return;
    page.heading("Appointments");
    for (const planner::PlanAppointment& meet : plan.appointments) {
        page.item(fmt::format("{} at {}, day {} by {}: arrive {}, margin {}, {} {}{}",
                              meet.what,
                              meet.at,
                              meet.day,
                              page.clock(meet.by),
                              page.clock(meet.arrive),
                              planner::show_duration(meet.margin_s),
                              meet.spare_s < 0.0 ? "short of it by" : "spare",
                              planner::show_duration(std::abs(meet.spare_s)),
                              meet.hard ? " (must be met)" : ""));
        add_leave_by(page, meet);
    }
}

void add_exits(TextPage& page) {
    const std::vector<ExitPoint>& exits = page.plan().exits;
    if (exits.empty())
        return;
    const auto turn = std::find_if(
        exits.begin(), exits.end(), [](const ExitPoint& point) { return point.no_return; });
    const auto furthest = std::max_element(
        exits.begin(), exits.end(), [](const ExitPoint& one, const ExitPoint& other) {
            return nearer_s(one).value_or(0.0) < nearer_s(other).value_or(0.0);
        });
    page.heading("Bail-out routes (moving and transitions, as planned, without nights)");
    if (turn != exits.end())
        add_exit(page, "Point of no return, from which forward is shorter", *turn);
    if (nearer_s(*furthest))
        add_exit(page, "Furthest from an exit", *furthest);
    else
        page.item("No place of the trip is an exit; mark those that are.");
}

void add_turn_rounds(TextPage& page) {
    const Plan& plan = page.plan();
    Table table({{"Day", true},
                 {"Back to", false, true},
                 {"Dusk there", true},
                 {"Turn around by", true},
                 {"from where", false, true},
                 {"Way back", true}});
    for (const planner::TurnRound& turn : plan.turn_rounds) {
        const auto day = static_cast<std::size_t>(turn.day) - 1;
        if (day >= plan.days.size())
            continue;
        const planner::Date date = plan.days[day].date;
        table.row({fmt::format("{}", turn.day),
                   turn.exit ? fmt::format("{} (exit)", turn.back_to) : turn.back_to,
                   turn.dusk ? page.clock(*turn.dusk, date) : std::string(),
                   turn.at ? page.clock(at_latest(*turn.at), date) : std::string(),
                   turn_where(page, turn),
                   TextPage::duration(turn.back_s)});
    }
    if (table.empty())
        return;
    page.heading("Turnaround (the latest hour from which one is back before dusk)");
    page.add(table);
}

void add_assumptions(TextPage& page) {
    const Plan& plan = page.plan();
    if (!plan.defaults.empty()) {
        page.heading("Assumed, because the trip file does not say");
        Table table({{"Key"}, {"Value"}, {"Source", false, true}});
        for (const planner::DefaultUsed& used : plan.defaults)
            table.row({used.key, used.value, used.source});
        page.add(table);
    }
    page.heading("Models");
    Table table({{"Family"}, {"Model"}, {"Source", false, true}});
    for (const planner::ModelUsed& model : plan.models)
        table.row({model.family, model.name, model.source});
    page.add(table);
    for (const planner::BandUsed& band : plan.bands)
        page.item(fmt::format("Times {} lie between {:.2f} and {:.2f} of those planned for most "
                              "parties: {}.",
                              band.family == "walking" ? "on foot" : "afloat",
                              band.low,
                              band.high,
                              band.basis));
    page.item(fmt::format(
        "Loads and times converged after {} {}; the last changed a pack by {:.1f} g "
        "and a time by {:.1f} s at most.{}",
        plan.converged.rounds,
        plan.converged.rounds == 1 ? "round" : "rounds",
        1000.0 * plan.converged.largest_change_kg,
        plan.converged.largest_change_s,
        plan.converged.settled ? ""
                               : " They did not converge: they alternated between two solutions; "
                                 "the heavier one is shown."));
}

void add_cautions_left(TextPage& page) {
    const std::vector<std::string> cautions = page.cautions_left();
    if (cautions.empty())
        return;
    page.heading("Cautions for the whole trip");
    for (const std::string& caution : cautions)
        page.item(caution);
}

} // namespace tumpline::cli
