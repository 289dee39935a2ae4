#include "cli/export/export_csv.h"

#include "cli/export/csv.h"
#include "cli/export/items_csv.h"
#include "cli/export/plan_csv.h"
#include "cli/words/text_width.h"
#include "cli/words/words.h"
#include "geo/light/time_zone.h"
#include "planner/quantities/quantities.h"

#include <fmt/format.h>

#include <initializer_list>
#include <limits>
#include <optional>
#include <string_view>

namespace tumpline::cli {

namespace {

using Fields = std::vector<std::string>;

constexpr double unknown = std::numeric_limits<double>::quiet_NaN(); // an empty field

std::string text_field(std::string_view text) {
    return csv_text(one_line(text));
}

void add(Fields& fields, std::initializer_list<double> figures) {
    for (const double figure : figures)
        fields.push_back(csv_number(figure));
}

std::string part_field(const planner::PlanLeg& leg) {
    return leg.part == 0 ? std::string() : fmt::format("{}", leg.part);
}

std::string days_csv(const planner::Plan& plan) {
    Fields headings = {"day",       "date",         "rest_day",     "from",       "to",
                       "from_m",    "to_m",         "distance_m",   "walk_m",     "portage_m",
                       "paddle_m",  "ride_m",       "led_m",        "on_foot_m",  "ascent_m",
                       "descent_m", "moving_s",     "changeover_s", "rest_s",     "set_off",
                       "arrive",    "arrive_early", "arrive_late",  "sunrise",    "sunset",
                       "dusk",      "dry_camp",     "to_lat_deg",   "to_lon_deg", "food_kg",
                       "fuel_kg",   "water_l"};
    for (const planner::Member& member : plan.trip.party)
        for (const char* figure :
             {"energy_kcal", "food_kg", "water_l", "pack_start_kg", "pack_end_kg", "heaviest_kg"})
            headings.push_back(text_field(fmt::format("{} {}", member.name, figure)));
    std::string table = csv_record(headings);
    const auto clock = [&](const std::optional<geo::sys_seconds>& at) {
        return at ? geo::rfc3339(*at, plan.trip.time_zone) : std::string();
    };
    for (const planner::PlanDay& day : plan.days) {
        Fields fields = {fmt::format("{}", day.day),
                         planner::show_date(day.date),
                         day.rest_day ? "yes" : "no",
                         text_field(day.from),
                         text_field(day.to)};
        add(fields,
            {day.from_m,
             day.to_m,
             day.to_m - day.from_m,
             day.walk_m,
             day.portage_m,
             day.paddle_m,
             day.ride_m,
             day.led_m,
             day.on_foot_m,
             day.heights_known ? day.ascent_m : unknown,
             day.heights_known ? day.descent_m : unknown,
             day.moving_s,
             day.changeover_s,
             day.rest_s});
        for (const auto& at : {std::optional(day.set_off),
                               std::optional(day.arrive),
                               std::optional(day.arrive_early),
                               std::optional(day.arrive_late),
                               day.light.sun.rise,
                               day.light.sun.set,
                               day.light.twilight.set})
            fields.push_back(clock(at));
        fields.emplace_back(day.dry_camp ? "yes" : "no");
        add(fields,
            {day.camp_located ? day.camp.lat_deg : unknown,
             day.camp_located ? day.camp.lon_deg : unknown,
             day.food_kg,
             day.fuel_kg,
             day.water_l});
        for (const planner::MemberDay& member : day.members)
            add(fields,
                {member.energy_j / planner::j_per_kcal,
                 member.food_kg,
                 member.water_l,
                 member.pack_start_kg,
                 member.pack_end_kg,
                 member.heaviest_kg});
        table += csv_record(fields);
    }
    return table;
}

std::string loads_csv(const planner::Plan& plan) {
    std::string table =
        csv_record({"leg",      "part",          "day",         "name",        "travel",
                    "member",   "pack_start_kg", "pack_end_kg", "pack_max_kg", "worn_kg",
                    "limit_kg", "kit_kg",        "craft_kg",    "food_kg",     "fuel_kg",
                    "water_kg", "waste_kg",      "energy_kcal", "carries_kg",  "laid_down_kg"});
    for (const planner::PlanLeg& leg : plan.legs)
        for (const planner::MemberLoad& load : leg.loads) {
            Fields fields = {fmt::format("{}", leg.leg),
                             part_field(leg),
                             fmt::format("{}", leg.day),
                             text_field(leg.name),
                             std::string(word(leg.travel)),
                             text_field(load.member)};
            add(fields, {load.pack_start_kg, load.pack_end_kg, load.pack_max_kg, load.worn_kg});
            const bool limited = planner::bears_packs(leg.travel) && load.limit_kg > 0.0;
            fields.push_back(limited ? csv_number(load.limit_kg) : std::string());
            add(fields,
                {load.parts.kit_kg,
                 load.parts.craft_kg,
                 load.parts.food_kg,
                 load.parts.fuel_kg,
                 load.parts.water_kg,
                 load.parts.waste_kg,
                 load.energy_j / planner::j_per_kcal});
            Fields carries;
            for (const planner::Carry& carry : load.carries)
                carries.push_back(csv_number(carry.pack_kg));
            fields.push_back(fmt::format("{}", fmt::join(carries, "; ")));
            add(fields, {load.laid_down_kg});
            table += csv_record(fields);
        }
    return table;
}

std::string cautions_csv(const planner::Plan& plan) {
    std::string table = csv_record({"level", "code", "day", "leg", "text", "source"});
    for (const planner::Caution& caution : plan.cautions)
        table += csv_record({std::string(word(caution.level)),
                             caution.code,
                             caution.day ? fmt::format("{}", *caution.day) : std::string(),
                             caution.leg ? fmt::format("{}", *caution.leg) : std::string(),
                             text_field(caution.text),
                             text_field(caution.source)});
    return table;
}

} // namespace

std::vector<std::string> csv_table_names() {
    return {"days.csv", "legs.csv", "loads.csv", "items.csv", "cautions.csv"};
}

std::vector<CsvTable> export_csv(const planner::Plan& plan) {
    std::vector<CsvTable> tables;
    const std::vector<std::string> names = csv_table_names();
    for (std::string text :
         {days_csv(plan), plan_csv(plan), loads_csv(plan), items_csv(plan), cautions_csv(plan)})
        tables.push_back({names.at(tables.size()), std::move(text)});
    return tables;
}

} // namespace tumpline::cli
