#include "cli/text/against_text.h"

#include "cli/words/table.h"
#include "cli/words/words.h"
#include "planner/quantities/quantities.h"

#include <fmt/format.h>

#include <optional>
#include <string_view>

namespace tumpline::cli {

namespace {

std::string of_all(std::string_view where, const std::optional<double>& ratio) {
    return ratio ? fmt::format("  {}: {} of the planned time\n", where, percent(*ratio))
                 : std::string();
}

} // namespace

std::string against_text(const Compared& compared, std::size_t columns) {
    Table table({{"Day", true},
                 {"Leg", false, true},
                 {"Travel"},
                 {"Planned", true},
                 {"Recorded", true},
                 {"Of the way", true},
                 {"Of the time", true}});
    for (const planner::LegAgainst& row : compared.against.legs) {
        const planner::PlanLeg& leg = compared.plan.legs[row.plan_leg.index()];
        table.row({fmt::format("{}", leg.day),
                   leg.name,
                   std::string(word(leg.travel)),
                   planner::show_duration(row.planned_s),
                   row.recorded_s > 0.0 ? planner::show_duration(row.recorded_s) : std::string(),
                   row.recorded_s > 0.0 ? percent(row.covered) : std::string(),
                   row.ratio ? percent(*row.ratio) : std::string()});
    }
    std::string text = "\nBeside the plan, moving times\n" + table.text(2, columns);
    text += of_all("on foot", compared.against.on_foot);
    text += of_all("afloat", compared.against.afloat);
    if (compared.against.off_route_s >= planner::s_per_min)
        text += fmt::format("  off the route: {} on the move\n",
                            planner::show_duration(compared.against.off_route_s));
    if (compared.against.other_way_s >= planner::s_per_min)
        text += fmt::format("  against the plan's direction, left out: {} on the move\n",
                            planner::show_duration(compared.against.other_way_s));
    return text + "\n";
}

} // namespace tumpline::cli
