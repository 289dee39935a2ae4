#include "cli/words/leave_words.h"

#include "cli/words/calendar_words.h"
#include "cli/words/words.h"

#include <fmt/format.h>

#include <cmath>

namespace tumpline::cli {

namespace {

std::string date_words(geo::sys_seconds at, const Figures& shown) {
    return short_date(local_date(at, shown));
}

} // namespace

std::string appointment_words(const planner::PlanAppointment& meet, const Figures& shown) {
    return fmt::format("{} at {} on {} by {}{}",
                       meet.what,
                       meet.at,
                       date_words(meet.by, shown),
                       shown.clock(meet.by),
                       meet.margin_s > 0.0
                           ? fmt::format(", with a margin of {}", shown.duration(meet.margin_s))
                           : std::string());
}

std::string connection_meet_words(const planner::PlanConnection& one, const Figures& shown) {
    const std::string what = fmt::format("{} at {}", one.what, one.place);
    return one.taken ? fmt::format("{}, {}", what, dated_clock(*one.taken, shown)) : what;
}

std::string leave_hour(const planner::LeaveBy& leave, const Figures& shown) {
    const geo::sys_seconds at = at_latest(leave.at);
    return leave.days_later == 0 ? shown.clock(at)
                                 : fmt::format("{} on {}", shown.clock(at), date_words(at, shown));
}

std::string against_plan_words(const planner::LeaveBy& leave, const Figures& shown) {
    constexpr double a_minute_s = 60.0;
    const std::string planned = shown.clock(leave.planned);
    if (std::abs(leave.spare_s) < a_minute_s)
        return fmt::format("as planned, {}", planned);
    return fmt::format("{} {} the plan, {}",
                       shown.duration(std::abs(leave.spare_s)),
                       leave.spare_s > 0.0 ? "after" : "before",
                       planned);
}

std::string bound_words(const planner::LeaveBy& leave, const Figures& shown) {
    switch (leave.bound) {
    case planner::LeaveBound::appointment:
        return {};
    case planner::LeaveBound::dusk:
        return fmt::format("to be at {} before dusk", leave.bound_at);
    case planner::LeaveBound::midnight:
        return fmt::format("to be at {} before midnight", leave.bound_at);
    case planner::LeaveBound::night:
        return fmt::format("to have a night at {}", leave.bound_at);
    case planner::LeaveBound::wind:
        return fmt::format("to be off the water ({}) before the wind rises{}",
                           leave.bound_at,
                           leave.wind_rises ? fmt::format(" at {}", shown.clock(*leave.wind_rises))
                                            : std::string());
    }
    return {};
}

} // namespace tumpline::cli
