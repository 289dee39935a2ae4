#include "cli/book/book_parts.h"
#include "cli/words/leave_words.h"
#include "cli/words/words.h"

#include <fmt/format.h>

#include <algorithm>
#include <optional>
#include <string>
#include <utility>

/// By when to leave, where to go out, from where to turn round.
namespace tumpline::cli {

namespace {

using planner::PlanDay;

/// Until when one can turn round, in words.
std::string
turn_phrase(const BookSource& source, const PlanDay& day, const planner::TurnRound& turn) {
    const Figures& shown = source.shown;
    switch (turn.limit) {
    case planner::TurnLimit::dark:
        return "It is too late for that from the start.";
    case planner::TurnLimit::none:
        return "There is no dusk: from anywhere on this day.";
    case planner::TurnLimit::no_way_back:
        return fmt::format(
            "Not beyond {} on leg {}: {}{}.",
            shown.distance(turn.along_m),
            turn.leg,
            no_return_words(source.plan, turn),
            turn.at ? fmt::format(" (planned there at {})", shown.clock_on(*turn.at, day.date))
                    : std::string());
    case planner::TurnLimit::dusk:
        break;
    }
    if (!turn.at || !turn.dusk)
        return {};
    const std::string hour = shown.clock_on(at_latest(*turn.at), day.date);
    const std::string why = fmt::format("the way back takes {}, dusk there is at {}",
                                        shown.duration(turn.back_s),
                                        shown.clock_on(*turn.dusk, day.date));
    if (turn.whole_day)
        return fmt::format("By {}, even from the end of the day: {}.", hour, why);
    return fmt::format("By {}, where the plan is {} along on leg {}: {}.",
                       hour,
                       shown.distance(turn.along_m),
                       turn.leg,
                       why);
}

/// Whether a point lies on a day; where one ends it is the earlier one's.
bool is_on(const planner::ExitPoint& point, const PlanDay& day) {
    return !day.rest_day && point.along_m <= day.to_m &&
           (point.along_m > day.from_m || day.from_m == 0.0);
}

} // namespace

std::vector<Fields> exit_fields(const BookSource& source, const PlanDay& day) {
    std::vector<const planner::ExitPoint*> within;
    for (const planner::ExitPoint& point : source.plan.exits)
        if (is_on(point, day))
            within.push_back(&point);
    const std::size_t stride = std::max<std::size_t>(1, (within.size() + 2) / 3);
    std::vector<Fields> rows;
    std::string forward; // names as in the row before are not said again
    std::string back;
    for (std::size_t i = 0; i < within.size(); ++i) {
        const planner::ExitPoint& point = *within[i];
        if (i % stride != 0 && !point.no_return && i + 1 != within.size())
            continue;
        const auto time = [&](const std::optional<double>& time_s) {
            return time_s ? source.shown.duration(*time_s) : std::string("none");
        };
        const auto name = [](std::string& before, const std::string& now, bool known) {
            const std::string told = known ? now : std::string();
            return std::exchange(before, told) == told ? std::string() : told;
        };
        rows.emplace_back()
            .text("at", source.shown.distance(point.along_m))
            .truth("no_return", point.no_return)
            .text("forward", name(forward, point.forward, point.forward_s.has_value()))
            .text("forward_time", time(point.forward_s))
            .text("back", name(back, point.back, point.back_s.has_value()))
            .text("back_time", time(point.back_s));
    }
    return rows;
}

std::vector<Fields> no_return_fields(const BookSource& source, const PlanDay& day) {
    std::vector<Fields> rows;
    for (const planner::ExitPoint& point : source.plan.exits)
        if (point.no_return && is_on(point, day) && point.forward_s)
            rows.emplace_back()
                .text("at", source.shown.distance(point.along_m))
                .text("forward", point.forward)
                .text("forward_time", source.shown.duration(*point.forward_s));
    return rows;
}

std::vector<Fields> leave_fields(const BookSource& source, const PlanDay& day) {
    const Figures& shown = source.shown;
    std::vector<Fields> rows;
    const auto add = [&](const std::string& meet, const std::vector<planner::LeaveBy>& leave_by) {
        std::vector<Fields> leaves;
        for (const planner::LeaveBy& leave : leave_by)
            if (leave.day == day.day)
                leaves.emplace_back()
                    .text("place", leave.place)
                    .text("at", leave_hour(leave, shown))
                    .text("against", against_plan_words(leave, shown))
                    .text("bound", bound_words(leave, shown))
                    .truth("late", leave.spare_s < 0.0);
        if (!leaves.empty())
            rows.emplace_back().text("meet", meet).list("leave_by", std::move(leaves));
    };
    for (const planner::PlanAppointment& meet : source.plan.appointments)
        add(appointment_words(meet, shown), meet.leave_by);
    for (const planner::PlanConnection& one : source.plan.connections)
        if (one.used)
            add(connection_meet_words(one, shown), one.leave_by);
    return rows;
}

std::vector<Fields> turn_fields(const BookSource& source, const PlanDay& day) {
    std::vector<Fields> rows;
    for (const planner::TurnRound& turn : source.plan.turn_rounds)
        if (turn.day == day.day)
            rows.emplace_back()
                .text("back_to", turn.back_to)
                .truth("exit", turn.exit)
                .text("when", turn_phrase(source, day, turn));
    return rows;
}

} // namespace tumpline::cli
