#include "cli/export/plan_csv.h"

#include "cli/export/csv.h"
#include "cli/words/words.h"
#include "geo/light/time_zone.h"
#include "planner/quantities/quantities.h"

#include <fmt/format.h>

#include <vector>

namespace tumpline::cli {

namespace {

std::vector<std::string> headings(const planner::Plan& plan) {
    std::vector<std::string> fields = {
        "leg",       "part",     "day",          "date",          "name",
        "travel",    "from_m",   "to_m",         "distance_m",    "ascent_m",
        "descent_m", "moving_s", "moving_low_s", "moving_high_s", "changeover_s",
        "rest_s",    "start",    "end",          "lengths",       "on_foot_m"};
    for (const planner::Member& member : plan.trip.party)
        for (const char* figure : {"pack_start_kg", "pack_end_kg", "pack_max_kg"})
            fields.push_back(csv_text(fmt::format("{} {}", member.name, figure)));
    return fields;
}

std::vector<std::string> fields(const planner::Plan& plan, const planner::PlanLeg& leg) {
    std::string date;
    for (const planner::PlanDay& day : plan.days)
        if (day.day == leg.day)
            date = planner::show_date(day.date);
    std::vector<std::string> fields = {fmt::format("{}", leg.leg),
                                       leg.part == 0 ? std::string() : fmt::format("{}", leg.part),
                                       fmt::format("{}", leg.day),
                                       date,
                                       csv_text(leg.name),
                                       std::string(word(leg.travel))};
    for (const double figure : {leg.from_m,
                                leg.to_m,
                                leg.to_m - leg.from_m,
                                leg.ascent_m,
                                leg.descent_m,
                                leg.moving_s,
                                leg.moving_low_s,
                                leg.moving_high_s,
                                leg.changeover_s,
                                leg.rest_s})
        fields.push_back(csv_number(figure));
    fields.push_back(geo::rfc3339(leg.start, plan.trip.time_zone));
    fields.push_back(geo::rfc3339(leg.end, plan.trip.time_zone));
    fields.push_back(csv_number(leg.lengths));
    fields.push_back(csv_number(leg.on_foot_m));
    for (const planner::MemberLoad& load : leg.loads)
        for (const double figure : {load.pack_start_kg, load.pack_end_kg, load.pack_max_kg})
            fields.push_back(csv_number(figure));
    return fields;
}

} // namespace

std::string plan_csv(const planner::Plan& plan) {
    std::string table = csv_record(headings(plan));
    for (const planner::PlanLeg& leg : plan.legs)
        table += csv_record(fields(plan, leg));
    return table;
}

} // namespace tumpline::cli
