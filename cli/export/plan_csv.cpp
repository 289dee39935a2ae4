#include "cli/export/plan_csv.h"

#include "cli/export/csv.h"
#include "cli/words/leg_fields.h"
#include "planner/quantities/quantities.h"

#include <fmt/format.h>

#include <string_view>
#include <variant>
#include <vector>

namespace tumpline::cli {

namespace {

/// A figure of a leg as a field.
std::string csv_field(const FieldValue& value) {
    struct Show {
        std::string operator()(std::monostate /*nothing*/) const { return {}; }

        std::string operator()(std::int64_t count) const { return fmt::format("{}", count); }

        std::string operator()(double figure) const { return csv_number(figure); }

        std::string operator()(const std::string& text) const { return csv_text(text); }
    };

    return std::visit(Show{}, value);
}

/// The date stands beside the day.
constexpr std::string_view before_date = "day";

std::vector<std::string> headings(const planner::Plan& plan) {
    std::vector<std::string> fields;
    for (const LegField& field : leg_fields(plan, {})) {
        fields.emplace_back(field.key);
        if (field.key == before_date)
            fields.emplace_back("date");
    }
    for (const planner::Member& member : plan.trip.party)
        for (const LegField& field : pack_fields({}))
            fields.push_back(csv_text(fmt::format("{} {}", member.name, field.key)));
    return fields;
}

std::vector<std::string> fields(const planner::Plan& plan, const planner::PlanLeg& leg) {
    std::string date;
    for (const planner::PlanDay& day : plan.days)
        if (day.day == leg.day)
            date = planner::show_date(day.date);
    std::vector<std::string> fields;
    for (const LegField& field : leg_fields(plan, leg)) {
        fields.push_back(csv_field(field.value));
        if (field.key == before_date)
            fields.push_back(date);
    }
    for (const planner::MemberLoad& load : leg.loads)
        for (const LegField& field : pack_fields(load))
            fields.push_back(csv_field(field.value));
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
