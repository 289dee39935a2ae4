#include "cli/json/plan_json_parts.h"
#include "cli/words/json_values.h"
#include "cli/words/words.h"
#include "geo/light/time_zone.h"

#include <optional>
#include <string>
#include <vector>

namespace tumpline::cli {

namespace {

using planner::Plan;

Json instant(const Plan& plan, geo::sys_seconds at) {
    return geo::rfc3339(at, plan.trip.time_zone);
}

Json instant(const Plan& plan, const std::optional<geo::sys_seconds>& at) {
    return at ? instant(plan, *at) : Json(nullptr);
}

} // namespace

Json leave_by_json(const Plan& plan, const std::vector<planner::LeaveBy>& leave_by) {
    Json array = Json::array();
    for (const planner::LeaveBy& leave : leave_by)
        array.push_back({{"place", leave.place},
                         {"day", leave.day},
                         {"along_m", leave.along_m},
                         {"at", instant(plan, leave.at)},
                         {"night", leave.night},
                         {"planned", instant(plan, leave.planned)},
                         {"spare_s", leave.spare_s},
                         {"days_later", leave.days_later},
                         {"bound", word(leave.bound)},
                         {"bound_at", leave.bound_at},
                         {"wind_rises", instant(plan, leave.wind_rises)}});
    return array;
}

Json appointments_json(const Plan& plan) {
    Json array = Json::array();
    for (const planner::PlanAppointment& meet : plan.appointments)
        array.push_back({{"what", meet.what},
                         {"at", meet.at},
                         {"day", meet.day},
                         {"by", instant(plan, meet.by)},
                         {"arrive", instant(plan, meet.arrive)},
                         {"margin_s", meet.margin_s},
                         {"spare_s", meet.spare_s},
                         {"hard", meet.hard},
                         {"leave_by", leave_by_json(plan, meet.leave_by)}});
    return array;
}

Json exits_json(const Plan& plan) {
    Json array = Json::array();
    for (const planner::ExitPoint& point : plan.exits)
        array.push_back({{"along_m", point.along_m},
                         {"forward", name_or_null(point.forward)},
                         {"back", name_or_null(point.back)},
                         {"forward_s", or_null(point.forward_s)},
                         {"back_s", or_null(point.back_s)},
                         {"no_return", point.no_return}});
    return array;
}

Json turn_rounds_json(const Plan& plan) {
    Json array = Json::array();
    for (const planner::TurnRound& turn : plan.turn_rounds)
        array.push_back({{"day", turn.day},
                         {"back_to", turn.back_to},
                         {"back_to_m", turn.back_to_m},
                         {"exit", turn.exit},
                         {"dusk", instant(plan, turn.dusk)},
                         {"limit", word(turn.limit)},
                         {"at", instant(plan, turn.at)},
                         {"along_m", turn.along_m},
                         {"leg", turn.leg},
                         {"whole_day", turn.whole_day},
                         {"back_s", turn.back_s}});
    return array;
}

} // namespace tumpline::cli
