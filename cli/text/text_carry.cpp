#include "cli/text/text_page.h"
#include "cli/words/packing_words.h"
#include "cli/words/suit_words.h"
#include "cli/words/table.h"
#include "cli/words/text_width.h"
#include "cli/words/words.h"

#include <fmt/format.h>

#include <cmath>
#include <string>
#include <utility>
#include <vector>

namespace tumpline::cli {

namespace {

using planner::PlanLeg;
using planner::Travel;

void add_choices(TextPage& page, const PlanLeg& leg) {
    Table table({{"Carries"},
                 {"Boats"},
                 {"Walked", true},
                 {"Moving", true},
                 {"Transitions", true},
                 {"Heaviest load", true},
                 {"Who", false, true},
                 {"Of limit", true},
                 {""}});
    for (const planner::CarryChoice& choice : leg.choices)
        table.row({fmt::format("{}{}", carries_word(choice.carries), by_words(choice.by)),
                   std::string(boats_word(page.plan(), choice.rolled)),
                   page.distance(choice.walked_m),
                   TextPage::duration(choice.moving_s),
                   TextPage::duration(choice.changeover_s),
                   page.mass(choice.heaviest_kg),
                   choice.heaviest_member,
                   choice.heaviest_ratio > 0.0
                       ? fmt::format("{:.0f} %", 100.0 * choice.heaviest_ratio)
                       : std::string(),
                   choice.chosen          ? "chosen"
                   : choice.within_limits ? ""
                                          : "over limit"});
    page.add(table);
    constexpr double longest_portage_m = 20000.0; // longer ones are walks
    if (leg.break_even_m && *leg.break_even_m <= longest_portage_m)
        page.item(fmt::format("Rolled and inflated take the same time over {}.",
                              page.portage(*leg.break_even_m)));
}

std::string pieces_words(const planner::Carry& carry) {
    std::vector<std::string> texts;
    for (const planner::CarriedThing& thing : carry.pieces)
        texts.push_back(carried_words(thing));
    return fmt::format("{}", fmt::join(texts, ", "));
}

void add_carries(TextPage& page, const PlanLeg& leg) {
    for (const planner::MemberLoad& load : leg.loads)
        for (const planner::Carry& carry : load.carries)
            page.item(fmt::format("{}, {} {}: {}{}{}{}",
                                  load.member,
                                  carry.on_cart ? "cart pulled with carry" : "carry",
                                  carry.carry,
                                  page.mass(carry.pack_kg),
                                  carry.share < 1.0
                                      ? fmt::format(" over {:.0f} % of the way", 100 * carry.share)
                                      : std::string(),
                                  carry.pieces.empty() ? "" : ": ",
                                  pieces_words(carry)));
}

std::string stowed(const TextPage& page, const std::vector<planner::Stowed>& things) {
    std::vector<std::string> texts;
    texts.reserve(things.size());
    for (const planner::Stowed& thing : things)
        texts.push_back(
            fmt::format("{} {}", stowed_words(page.plan(), thing), page.mass(thing.mass_kg)));
    return fmt::format("{}", fmt::join(texts, ", "));
}

void add_stowage(TextPage& page, const PlanLeg& leg) {
    for (const planner::CraftLoad& craft : leg.craft) {
        page.item(fmt::format("{}: left {}, right {}, at hand {}; load {}{}",
                              craft.craft,
                              page.mass(craft.left_kg),
                              page.mass(craft.right_kg),
                              page.mass(craft.at_hand_kg),
                              page.mass(craft.load_kg),
                              craft.payload_kg > 0.0
                                  ? fmt::format(" of {}", page.mass(craft.payload_kg))
                                  : std::string()));
        for (const auto& [side, things] : {std::pair{"left", &craft.left},
                                           std::pair{"right", &craft.right},
                                           std::pair{"at hand", &craft.at_hand}})
            if (!things->empty())
                page.hang(fmt::format("    {}: ", side), stowed(page, *things));
        if (craft.ends)
            page.hang("    ", ends_words(*craft.ends, page));
    }
}

/// The worst load of each member on a leg, by part.
void add_parts(TextPage& page, const PlanLeg& leg) {
    Table table({{std::string(page.mass_unit()), false, true},
                 {"start", true},
                 {"end", true},
                 {"worst", true},
                 {"limit", true},
                 {"worn", true},
                 {"=  kit", true},
                 {"craft", true},
                 {"food", true},
                 {"fuel", true},
                 {"water", true},
                 {"waste", true}});
    for (const planner::MemberLoad& load : leg.loads) {
        const bool over = over_limit(leg, load);
        table.row({load.member,
                   page.bare_mass(load.pack_start_kg),
                   page.bare_mass(load.pack_end_kg),
                   page.bare_mass(load.pack_max_kg) + (over ? "!" : ""),
                   has_limit(leg, load) ? page.bare_mass(load.limit_kg) : std::string(),
                   page.bare_mass(load.worn_kg),
                   page.bare_mass(load.parts.kit_kg),
                   page.bare_mass(load.parts.craft_kg),
                   page.bare_mass(load.parts.food_kg),
                   page.bare_mass(load.parts.fuel_kg),
                   page.bare_mass(load.parts.water_kg),
                   page.bare_mass(load.parts.waste_kg)});
    }
    page.add(table);
}

/// On how many portages a load is over its limit, by how much, and until when.
std::string over_text(const TextPage& page, const planner::CarryWay& way) {
    return fmt::format("over the limit on {} {}, by {} at most{}",
                       way.over_limit,
                       way.over_limit == 1 ? "portage" : "portages",
                       page.mass(way.most_over_kg),
                       way.within_from_day
                           ? fmt::format("; within it from day {}", *way.within_from_day)
                           : std::string());
}

/// What is to be said of a craft beside its figures.
std::string craft_remark(const TextPage& page, const planner::CraftLoad& craft) {
    if (craft.payload_kg > 0.0 && craft.load_kg > craft.payload_kg)
        return "over its payload";
    if (!craft.fits_volume)
        return "bags too small";
    return craft.freeboard_m ? fmt::format("freeboard {}", page.length(*craft.freeboard_m)) : "";
}

} // namespace

void add_carrying(TextPage& page) {
    const planner::CarrySummary& carrying = page.plan().carrying;
    if (carrying.portages < 2) // one has a table of its own
        return;
    page.heading(fmt::format("All {} portages together, {} one way",
                             carrying.portages,
                             page.portage(carrying.length_m)));
    page.item(carrying.sentence);
    Table table({{"Carries"},
                 {"Boats"},
                 {"Time", true},
                 {"vs plan", true},
                 {"Each walks", true},
                 {"Heaviest load", true},
                 {"Who", false, true},
                 {"Of limit", true}});
    for (const planner::CarryWay& way : carrying.ways) {
        const bool planned = !way.carries;
        const double change_s = std::abs(way.more_s);
        table.row({planned ? std::string("as planned")
                           : fmt::format("{}{}", carries_word(*way.carries), by_words(way.by)),
                   planned ? std::string() : std::string(boats_word(page.plan(), way.rolled)),
                   TextPage::duration(way.moving_s + way.changeover_s),
                   change_s < 30.0 ? std::string()
                                   : fmt::format("{}{}",
                                                 way.more_s > 0.0 ? "+" : "-",
                                                 planner::show_duration(change_s)),
                   page.distance(way.walked_m),
                   page.mass(way.heaviest_kg),
                   way.heaviest_member,
                   fmt::format("{:.0f} %", 100.0 * way.heaviest_ratio)});
        if (way.over_limit > 0)
            table.remark(over_text(page, way));
    }
    page.add(table);
}

void add_portages(TextPage& page) {
    for (const PlanLeg& leg : page.plan().legs) {
        if (leg.travel != Travel::portage)
            continue;
        page.heading(fmt::format("Portage, day {}, leg {}", leg.day, leg.leg));
        page.item(fmt::format("{}: {}, {}; each walks {}",
                              leg.name,
                              page.portage(leg.to_m - leg.from_m),
                              climbs_words(leg, page.units()),
                              page.distance(leg.on_foot_m)));
        add_choices(page, leg);
        add_carries(page, leg);
    }
}

void add_craft(TextPage& page) {
    Table table({{"Leg"},
                 {"Day", true},
                 {"Craft", false, true},
                 {"Load", true},
                 {"Payload", true},
                 {"Left", true},
                 {"Right", true},
                 {"At hand", true},
                 {"Draft increase", true},
                 {""}});
    for (const PlanLeg& leg : page.plan().legs)
        for (const planner::CraftLoad& craft : leg.craft)
            table.row({leg_number(leg),
                       fmt::format("{}", leg.day),
                       craft.craft,
                       page.mass(craft.load_kg),
                       craft.payload_kg > 0.0 ? page.mass(craft.payload_kg) : std::string(),
                       page.mass(craft.left_kg),
                       page.mass(craft.right_kg),
                       page.mass(craft.at_hand_kg),
                       craft.draft_change_m ? page.draft(*craft.draft_change_m) : std::string(),
                       craft_remark(page, craft)});
    if (table.empty())
        return;
    page.heading("Craft (load: people, what they wear, goods; left and right: the stowed bags)");
    page.add(table);
}

void add_loads(TextPage& page) {
    for (const PlanLeg& leg : page.plan().legs) {
        page.heading(fmt::format(
            "Day {}, leg {}, {}: {}", leg.day, leg.leg, word(leg.travel), one_line(leg.name)));
        add_parts(page, leg);
        add_carries(page, leg);
        add_stowage(page, leg);
        for (const std::string& caution : page.cautions(leg.day, leg.leg))
            page.item(caution);
    }
}

} // namespace tumpline::cli
