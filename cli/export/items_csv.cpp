#include "cli/export/items_csv.h"

#include "cli/export/csv.h"
#include "cli/words/text_width.h"
#include "cli/words/words.h"

#include <fmt/format.h>

#include <algorithm>

namespace tumpline::cli {

namespace {

std::string name_field(std::string_view name) {
    return csv_text(one_line(name));
}

std::string yes_or_no(bool answer) {
    return answer ? "yes" : "no";
}

/// "Tarn head, day 2 to day 4; Shelf camp, day 5, never fetched".
std::string left_on_the_way(const planner::Plan& plan, const planner::PackedItem& item) {
    std::string words;
    for (const planner::LaidThings& left : plan.left) {
        if (std::find(item.leaves.begin(), item.leaves.end(), left.leave) == item.leaves.end())
            continue;
        words += fmt::format("{}{}, day {}{}",
                             words.empty() ? "" : "; ",
                             left.at,
                             left.day,
                             left.fetch_day ? fmt::format(" to day {}", *left.fetch_day)
                                            : std::string(", never fetched"));
    }
    return words;
}

} // namespace

std::string items_csv(const planner::Plan& plan) {
    std::string table = csv_record({"item",
                                    "part",
                                    "owner",
                                    "count",
                                    "mass_kg",
                                    "comes",
                                    "why",
                                    "bearer",
                                    "at_start",
                                    "ashore",
                                    "afloat",
                                    "in",
                                    "craft",
                                    "bag",
                                    "gets_wet",
                                    "carry_kg_km",
                                    "carry_kg_m_up",
                                    "left"});
    for (const planner::PackedItem& item : plan.items)
        table += csv_record(
            {name_field(item.item),
             std::string(word(item.part)),
             name_field(item.owner),
             fmt::format("{}", item.count),
             csv_number(item.mass_kg),
             yes_or_no(item.comes),
             name_field(item.why),
             item.bearer ? name_field(plan.trip.party[*item.bearer].name) : std::string(),
             item.at_start ? std::string(word(*item.at_start)) : std::string(),
             std::string(planner::word(item.ashore)),
             std::string(planner::word(item.afloat)),
             name_field(item.container),
             item.in_craft ? name_field(plan.trip.craft[*item.in_craft].name) : std::string(),
             std::string(word(item.stowage)),
             yes_or_no(item.gets_wet),
             csv_number(item.carry_kg_km),
             csv_number(item.carry_kg_m_up),
             name_field(left_on_the_way(plan, item))});
    return table;
}

} // namespace tumpline::cli
