#include "cli/book/book_parts.h"
#include "cli/words/packing_words.h"

#include <fmt/format.h>

#include <algorithm>

namespace tumpline::cli {

namespace {

/// A length at which rolled and whole boats would be even, but which no portage has, helps nobody.
constexpr double longest_told_m = 50e3;

using planner::PlanDay;
using planner::PlanLeg;

std::vector<Fields> carries(const BookSource& source, const PlanLeg& leg) {
    std::vector<Fields> rows;
    for (const planner::MemberLoad& load : leg.loads) {
        for (const planner::Carry& carry : load.carries) {
            std::vector<Fields> pieces;
            for (const planner::CarriedThing& thing : carry.pieces)
                pieces.emplace_back().text("piece", carried_words(thing));
            rows.emplace_back()
                .text("member", load.member)
                .text("carry",
                      carry.on_cart ? fmt::format("{}, cart", carry.carry)
                                    : std::to_string(carry.carry))
                .list("pieces", std::move(pieces))
                .text("share",
                      carry.share < 1.0 ? fmt::format("{} % of the way, then handed over",
                                                      planner::show_number(100.0 * carry.share, 0))
                                        : "")
                .text("pack", source.shown.mass(carry.pack_kg));
        }
    }
    return rows;
}

std::vector<Fields> choices(const BookSource& source, const PlanLeg& leg) {
    const Figures& shown = source.shown;
    std::vector<Fields> rows;
    for (const planner::CarryChoice& choice : leg.choices)
        rows.emplace_back()
            .text("carries", carries_words(source.plan, choice.carries, choice.rolled, choice.by))
            .truth("chosen", choice.chosen)
            .text("time", shown.duration(choice.moving_s + choice.changeover_s))
            .text("changeover", shown.duration(choice.changeover_s))
            .text("walked", shown.distance(choice.walked_m))
            .text("heaviest", shown.mass(choice.heaviest_kg))
            .text("member", choice.heaviest_member)
            .text("limit",
                  fmt::format("{}\u00A0%{}",
                              planner::show_number(100.0 * choice.heaviest_ratio, 0),
                              choice.within_limits ? "" : ", over it"));
    return rows;
}

/// Where the ways of doing a portage stand; a leg cut by a night has a part on each of its days.
std::string ways_id(const PlanLeg& leg) {
    return fmt::format("ways-{}-{}", leg.leg, leg.day);
}

struct LoadOnLeg {
    const PlanLeg* leg;
    const planner::CraftLoad* load;
};

/// Each boat once: where it is laden most on this day.
std::vector<LoadOnLeg> heaviest_craft_loads(const planner::Plan& plan, const PlanDay& day) {
    std::vector<LoadOnLeg> heaviest;
    for (const PlanLeg& leg : plan.legs) {
        if (leg.day != day.day)
            continue;
        for (const planner::CraftLoad& craft : leg.craft) {
            const auto seen = std::find_if(heaviest.begin(), heaviest.end(), [&](const auto& had) {
                return had.load->craft == craft.craft;
            });
            if (seen == heaviest.end())
                heaviest.push_back({&leg, &craft});
            else if (craft.load_kg > seen->load->load_kg)
                *seen = {&leg, &craft};
        }
    }
    return heaviest;
}

} // namespace

std::vector<Fields> portage_fields(const BookSource& source, const PlanDay& day) {
    const Figures& shown = source.shown;
    std::vector<Fields> rows;
    for (const PlanLeg& leg : source.plan.legs) {
        if (leg.day != day.day || leg.travel != planner::Travel::portage)
            continue;
        const auto chosen = std::find_if(leg.choices.begin(),
                                         leg.choices.end(),
                                         [](const auto& choice) { return choice.chosen; });
        std::string how = shown.portage(leg.to_m - leg.from_m);
        if (chosen != leg.choices.end())
            how += fmt::format(
                ", {}", carries_words(source.plan, chosen->carries, chosen->rolled, chosen->by));
        how += fmt::format(": each walks {}, {} moving and {} of transitions.",
                           shown.distance(leg.on_foot_m),
                           shown.duration(leg.moving_s),
                           shown.duration(leg.changeover_s));
        if (leg.break_even_m && *leg.break_even_m < longest_told_m)
            how += fmt::format(" Rolled and inflated take the same time at {}.",
                               shown.portage(*leg.break_even_m));
        rows.emplace_back()
            .text("name", leg.name)
            .text("how", how)
            .list("carries", carries(source, leg))
            .text("others", leg.choices.empty() ? std::string() : ways_id(leg));
    }
    return rows;
}

void add_carry_ways(Fields& fields, const BookSource& source) {
    std::vector<Fields> rows;
    for (const PlanLeg& leg : source.plan.legs)
        if (!leg.choices.empty())
            rows.emplace_back()
                .text("id", ways_id(leg))
                .text("name", leg.name)
                .text("day", std::to_string(leg.day))
                .text("length", source.shown.portage(leg.to_m - leg.from_m))
                .list("choices", choices(source, leg));
    fields.list("choosing", std::move(rows));
}

std::vector<Fields> craft_fields(const BookSource& source, const PlanDay& day) {
    const Figures& shown = source.shown;
    std::vector<Fields> rows;
    for (const auto& [leg, load] : heaviest_craft_loads(source.plan, day)) {
        const planner::CraftLoad& craft = *load;
        rows.emplace_back()
            .text("craft", craft.craft)
            .text("on", fmt::format("leg {}", leg->leg))
            .text("load", shown.mass(craft.load_kg))
            .text("payload",
                  fmt::format(
                      "{}{}",
                      craft.payload_kg > 0.0 ? fmt::format("of {}", shown.mass(craft.payload_kg))
                                             : "payload not given",
                      craft.freeboard_m
                          ? fmt::format("; freeboard {}",
                                        planner::show_length(*craft.freeboard_m, shown.units()))
                          : std::string()))
            .text("left", shown.mass(craft.left_kg))
            .text("right", shown.mass(craft.right_kg))
            .text("at_hand",
                  fmt::format("{}{}",
                              shown.mass(craft.at_hand_kg),
                              craft.fits_volume ? "" : " (bags too small)"));
    }
    return rows;
}

} // namespace tumpline::cli
