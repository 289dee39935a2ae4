#include "cli/json/plan_json_parts.h"
#include "cli/words/json_values.h"
#include "geo/light/time_zone.h"
#include "planner/quantities/quantities.h"

#include <optional>
#include <string>

namespace tumpline::cli {

namespace {

using planner::PermitDate;
using planner::PlanConnection;
using planner::PlanPermit;

Json at_or_null(const planner::Plan& plan, const std::optional<geo::sys_seconds>& at) {
    return at ? Json(geo::rfc3339(*at, plan.trip.time_zone)) : Json(nullptr);
}

Json connection_json(const planner::Plan& plan, const PlanConnection& one) {
    return {{"what", one.what},
            {"place", one.place},
            {"to_start", one.to_start},
            {"margin_s", one.margin_s},
            {"there", at_or_null(plan, one.there)},
            {"taken", at_or_null(plan, one.taken)},
            {"used", one.used},
            {"wait_s", one.wait_s},
            {"nights", one.nights},
            {"set_off_moved", one.set_off_moved},
            {"before", at_or_null(plan, one.before)},
            {"next", at_or_null(plan, one.next)},
            {"next_days", one.next_days},
            {"next_food_kg", one.next_food_kg},
            {"leave_by", leave_by_json(plan, one.leave_by)}};
}

Json booking_json(const PermitDate& one) {
    return {{"day", one.day},
            {"date", planner::show_date(one.date)},
            {"open", one.open},
            {"a_day_later", planner::show_date(one.a_day_later)},
            {"later_open", one.later_open}};
}

Json permit_json(const PlanPermit& one) {
    return {{"for", one.where},
            {"nights", one.nights},
            {"people", one.people},
            {"most_people", one.most_people ? Json(*one.most_people) : Json(nullptr)},
            {"first_date", one.dates ? Json(planner::show_date(one.dates->first)) : Json(nullptr)},
            {"last_date", one.dates ? Json(planner::show_date(one.dates->last)) : Json(nullptr)},
            {"note", name_or_null(one.note)},
            {"bookings", array_of(one.bookings, booking_json)}};
}

} // namespace

Json connections_json(const planner::Plan& plan) {
    return array_of(plan.connections,
                    [&](const PlanConnection& one) { return connection_json(plan, one); });
}

Json permits_json(const planner::Plan& plan) {
    return array_of(plan.permits, permit_json);
}

} // namespace tumpline::cli
