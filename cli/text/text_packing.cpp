#include "cli/text/text_page.h"
#include "cli/words/packing_words.h"
#include "cli/words/table.h"
#include "cli/words/text_width.h"

#include <fmt/format.h>

#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace tumpline::cli {

namespace {

using planner::PackedItem;
using planner::Plan;
using planner::StartLoad;

void add_list(TextPage& page, std::size_t member) {
    const Plan& plan = page.plan();
    const StartLoad& load = plan.start_loads[member];
    page.item(start_load_words(page, load));
    Table table({{"Thing", false, true},
                 {"Whose", false, true},
                 {"Mass", true},
                 {"At the start"},
                 {"Afloat"}});
    for (const PackedItem& item : plan.items)
        if (item.bearer == member)
            table.row({thing_words(item),
                       item.owner.empty() ? std::string("party") : item.owner,
                       page.mass(item.mass_kg),
                       std::string(start_words(item)),
                       std::string(afloat_words(item))});
    for (const auto& [what, mass_kg] : {std::pair{"food", load.food_kg},
                                        std::pair{"fuel", load.fuel_kg},
                                        std::pair{"water", load.water_kg},
                                        std::pair{"waste", load.waste_kg}})
        if (mass_kg > 0.0)
            table.row({what, "", page.mass(mass_kg), "pack", ""});
    page.add(table, 4);
}

/// Whether a row belongs in a table, its heading, and what the cost is called.
struct Reasons {
    bool comes;
    std::string_view heading;
    std::string_view cost;
    std::string_view climb;
};

void add_reasons(TextPage& page, const Reasons& reasons) {
    Table table({{"Item", false, true},
                 {"Mass", true},
                 {std::string(reasons.cost), true},
                 {std::string(reasons.climb), true},
                 {"Why", false, true}});
    for (const PackedItem& item : page.plan().items)
        if (item.comes == reasons.comes && !item.why.empty())
            table.row({owned_words(item),
                       page.mass(item.mass_kg),
                       page.carried(item.carry_kg_km),
                       page.climbed(item.carry_kg_m_up),
                       why_words(item, page.units()) +
                           (item.comes && item.overridden ? " (set by \"bring\")" : "")});
    if (table.empty())
        return;
    page.heading(reasons.heading);
    page.add(table);
}

} // namespace

std::string start_load_words(const TextPage& page, const StartLoad& load) {
    std::string text =
        fmt::format("{}: {} {}",
                    load.member,
                    page.mass(load.pack_kg),
                    load.limit_kg ? fmt::format("in the pack (limit {})", page.mass(*load.limit_kg))
                                  : std::string("of own goods in the boat"));
    if (load.worn_kg > 0.0)
        text += fmt::format(", {} worn", page.mass(load.worn_kg));
    if (load.in_hand_kg > 0.0)
        text += fmt::format(", {} in hand", page.mass(load.in_hand_kg));
    return text;
}

void add_packing(TextPage& page) {
    const Plan& plan = page.plan();
    const planner::Sharing& sharing = plan.sharing;
    if (plan.start_loads.empty())
        return;
    page.heading("Packing lists, as everyone sets off");
    if (!sharing.member.empty())
        page.item(fmt::format("Where the party carries most ({}), {} bears {:.0f} % of the limit; "
                              "no sharing can do better than {:.0f} %.",
                              page.leg_place(sharing.plan_leg),
                              sharing.member,
                              100.0 * sharing.heaviest_ratio,
                              100.0 * sharing.lower_bound));
    for (std::size_t member = 0; member < plan.start_loads.size(); ++member)
        add_list(page, member);
    const std::vector<std::string> volumes = volume_lines(plan, page.units());
    if (volumes.empty())
        return;
    page.heading("What goes in");
    for (const std::string& line : volumes)
        page.item(line);
}

void add_luggage(TextPage& page) {
    Table table({{"Luggage", false, true},
                 {"Mass", true},
                 {"Pieces", true},
                 {"Heaviest", true},
                 {"Worn", true},
                 {"What", false, true}});
    for (const planner::Luggage& one : page.plan().luggage)
        table.row(
            {one.member.empty() ? std::string("all together") : one.member,
             page.mass(one.mass_kg),
             fmt::format("{}", one.pieces.size()),
             page.mass(one.heaviest_kg),
             page.mass(one.worn_kg),
             one.member.empty() ? std::string() : fmt::format("{}", fmt::join(one.pieces, ", "))});
    page.heading("Luggage on the way to the start (without drinking water)");
    page.add(table);
}

void add_stays_home(TextPage& page) {
    add_reasons(page,
                {.comes = false,
                 .heading = "Left at home",
                 .cost = "Carry cost saved",
                 .climb = "Climb cost saved"});
    add_reasons(
        page,
        {.comes = true, .heading = "Packed because", .cost = "Carry cost", .climb = "Climb cost"});
}

} // namespace tumpline::cli
