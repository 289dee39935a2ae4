/// What a leader decides by, on one screen: days, packs against their limits, boats, what to buy
/// and pack, appointments. Long trips fold: every day keeps its line, legs are the worst ones.

#include "cli/text/text_page.h"
#include "cli/words/calendar_words.h"
#include "cli/words/meeting_words.h"
#include "cli/words/packing_words.h"
#include "cli/words/sections.h"
#include "cli/words/table.h"
#include "cli/words/words.h"
#include "planner/results/heaviest_craft.h"

#include <fmt/format.h>

#include <algorithm>
#include <string>
#include <utility>
#include <vector>

namespace tumpline::cli {

namespace {

using planner::Account;
using planner::PackedItem;
using planner::Plan;
using planner::PlanDay;
using planner::PlanLeg;
using planner::Stage;
using planner::Travel;

constexpr std::size_t most_legs = 10;    ///< on foot, one by one; of more only the worst
constexpr std::size_t most_abreast = 3;  ///< members side by side; of more only the worst off
constexpr std::size_t most_stages = 8;   ///< from supply to supply
constexpr std::size_t most_lists = 4;    ///< packing lists by name
constexpr std::size_t most_left_out = 6; ///< things left at home, with the reason

void add_day_lines(TextPage& page) {
    const Plan& plan = page.plan();
    if (plan.days.empty())
        return;
    page.heading("Days");
    Table table({{"Day", true},
                 {"Date"},
                 {"To", false, true},
                 {"Distance", true},
                 {"Up", true},
                 {"Moving", true},
                 {"Set off", true},
                 {"Arrive", true},
                 {"between"},
                 {"Dusk", true}});
    for (const PlanDay& day : plan.days) {
        if (day.rest_day) {
            table.row(
                {fmt::format("{}", day.day), tight_date(day.date), std::string(still_cell(day))});
            continue;
        }
        table.row({fmt::format("{}", day.day),
                   tight_date(day.date),
                   day.to,
                   page.distance(day.to_m - day.from_m),
                   day.heights_known ? page.height(day.ascent_m) : std::string("unknown"),
                   TextPage::duration(day.moving_s),
                   page.clock(day.set_off, day.date),
                   page.clock(day.arrive, day.date),
                   fmt::format("{}-{}",
                               page.clock(day.arrive_early, day.date),
                               page.clock(day.arrive_late, day.date)),
                   dusk_words(page, day)});
    }
    page.add(table);
    add_daylight(page);
}

/// The worst load of a leg on foot as a share of its bearer's limit.
double worst_ratio(const PlanLeg& leg) {
    double worst = 0.0;
    for (const planner::MemberLoad& load : leg.loads)
        if (has_limit(leg, load))
            worst = std::max(worst, load.pack_max_kg / load.limit_kg);
    return worst;
}

/// Legs on foot in their order; of many only the heaviest for their bearers.
std::vector<const PlanLeg*> legs_to_show(const Plan& plan) {
    std::vector<const PlanLeg*> legs;
    for (const PlanLeg& leg : plan.legs)
        if (planner::bears_packs(leg.travel))
            legs.push_back(&leg);
    if (legs.size() <= most_legs)
        return legs;
    std::stable_sort(legs.begin(), legs.end(), [](const PlanLeg* one, const PlanLeg* other) {
        return worst_ratio(*one) > worst_ratio(*other);
    });
    legs.resize(most_legs);
    std::sort(legs.begin(), legs.end()); // as they stand in the plan
    return legs;
}

/// "walk"; "portage, one carry, boats rolled".
std::string how(const Plan& plan, const PlanLeg& leg) {
    if (leg.travel != Travel::portage)
        return std::string(planner::word(leg.travel));
    const auto chosen = std::find_if(
        leg.choices.begin(), leg.choices.end(), [](const auto& choice) { return choice.chosen; });
    return chosen == leg.choices.end() ? std::string(planner::word(leg.travel))
                                       : fmt::format("{}, boats {}{}",
                                                     carries_phrase(chosen->carries),
                                                     boats_word(plan, chosen->rolled),
                                                     by_words(chosen->by));
}

void add_load(std::vector<std::string>& cells,
              const TextPage& page,
              const PlanLeg& leg,
              const planner::MemberLoad& load) {
    cells.push_back(page.bare_mass(load.pack_max_kg) + (over_limit(leg, load) ? "!" : ""));
    cells.push_back(has_limit(leg, load) ? percent(load.pack_max_kg / load.limit_kg)
                                         : std::string());
}

/// The heaviest load for its bearer, for parties of many.
const planner::MemberLoad& worst_load(const PlanLeg& leg) {
    return *std::max_element(
        leg.loads.begin(), leg.loads.end(), [&](const auto& one, const auto& other) {
            const auto share = [&](const planner::MemberLoad& load) {
                return has_limit(leg, load) ? load.pack_max_kg / load.limit_kg : 0.0;
            };
            return share(one) < share(other);
        });
}

void add_pack_lines(TextPage& page) {
    const Plan& plan = page.plan();
    const std::vector<const PlanLeg*> legs = legs_to_show(plan);
    const std::size_t party = plan.trip.party.size();
    if (legs.empty() || party == 0)
        return;
    const bool abreast = party <= most_abreast;
    std::vector<Column> columns{{"Leg"}, {"Day", true}, {"", false, true}, {"How", false, true}};
    std::vector<Table::Group> groups;
    for (std::size_t member = 0; member < (abreast ? party : 1); ++member) {
        if (abreast)
            groups.push_back({columns.size(), 2, plan.trip.party[member].name});
        columns.push_back({"worst", true});
        columns.push_back({"of limit", true});
    }
    if (!abreast)
        columns.push_back({"Who", false, true});
    Table table(std::move(columns));
    for (Table::Group& group : groups)
        table.group(std::move(group));
    for (const PlanLeg* leg : legs) {
        if (leg->loads.empty())
            continue;
        std::vector<std::string> cells{
            leg_number(*leg), fmt::format("{}", leg->day), leg->name, how(plan, *leg)};
        if (abreast)
            for (const planner::MemberLoad& load : leg->loads)
                add_load(cells, page, *leg, load);
        else {
            const planner::MemberLoad& load = worst_load(*leg);
            add_load(cells, page, *leg, load);
            cells.push_back(load.member);
        }
        table.row(std::move(cells));
    }
    const auto on_foot = static_cast<std::size_t>(
        std::count_if(plan.legs.begin(), plan.legs.end(), [](const PlanLeg& leg) {
            return planner::bears_packs(leg.travel);
        }));
    page.heading(fmt::format("Packs on foot in {}, at their heaviest{}",
                             page.mass_unit(),
                             on_foot > legs.size()
                                 ? fmt::format(" (the {} worst of {} legs)", legs.size(), on_foot)
                                 : std::string()));
    page.add(table);
    const bool over = std::any_of(plan.legs.begin(), plan.legs.end(), [](const PlanLeg& leg) {
        return std::any_of(leg.loads.begin(), leg.loads.end(), [&](const auto& load) {
            return over_limit(leg, load);
        });
    });
    if (over)
        page.item("! is over the bearer's limit; what could be done: --show remedies");
    if (plan.carrying.portages > 0)
        page.item(plan.carrying.sentence);
}

/// Each boat where it is heaviest.
void add_boat_lines(TextPage& page) {
    const Plan& plan = page.plan();
    const std::vector<planner::HeaviestCraft> boats = planner::heaviest_craft(plan.legs);
    if (boats.empty())
        return;
    Table table({{"Boat", false, true},
                 {"load", true},
                 {"payload", true},
                 {"of it", true},
                 {"freeboard", true},
                 {"Where", false, true}});
    for (const planner::HeaviestCraft& boat : boats) {
        const planner::CraftLoad& load = plan.legs[boat.plan_leg.index()].craft[boat.craft];
        table.row({load.craft,
                   page.mass(load.load_kg),
                   load.payload_kg > 0.0 ? page.mass(load.payload_kg) : std::string("unknown"),
                   load.payload_kg > 0.0 ? percent(load.load_kg / load.payload_kg) : std::string(),
                   load.freeboard_m ? page.length(*load.freeboard_m) : std::string(),
                   page.leg_place(boat.plan_leg)});
    }
    page.heading("Boats, at their heaviest (people, what they wear, goods)");
    page.add(table);
}

/// "6.35 kg of food (Ada 2.9 kg, Bram 3.4 kg, packaging 0.4 kg), ...".
std::string supply_line(const TextPage& page, const Stage& stage) {
    const Plan& plan = page.plan();
    std::vector<std::string> parts;
    for (std::size_t m = 0; m < stage.member_food_kg.size() && m < plan.trip.party.size(); ++m)
        if (plan.trip.party.size() > 1 && plan.trip.party.size() <= most_lists)
            parts.push_back(
                fmt::format("{} {}", plan.trip.party[m].name, page.mass(stage.member_food_kg[m])));
    if (stage.packaging_kg > 0.0)
        parts.push_back("packaging " + page.mass(stage.packaging_kg));
    if (stage.for_later_kg > 0.0)
        parts.push_back("for a later stage " + page.mass(stage.for_later_kg));
    if (stage.fetched_kg > 0.0)
        parts.push_back("less what is fetched " + page.mass(stage.fetched_kg));
    if (stage.reserve_kg > 0.0)
        parts.push_back("of it in reserve " + page.mass(stage.reserve_kg));
    std::string text = fmt::format("{} of food{}{}{}",
                                   page.mass(stage.food_kg),
                                   parts.empty() ? "" : " (",
                                   fmt::join(parts, ", "),
                                   parts.empty() ? "" : ")");
    if (stage.fuel_kg > 0.0)
        text += fmt::format(", {} of fuel in {} {}",
                            page.mass(stage.fuel_kg),
                            stage.containers,
                            stage.containers == 1 ? "container" : "containers");
    return text;
}

void add_buying(TextPage& page) {
    const Plan& plan = page.plan();
    if (plan.stages.empty())
        return;
    page.heading("To buy");
    for (std::size_t s = 0; s < std::min(plan.stages.size(), most_stages); ++s) {
        const Stage& stage = plan.stages[s];
        page.item(stage.first_day == stage.last_day
                      ? fmt::format(
                            "{}, day {}: {}", stage.from, stage.first_day, supply_line(page, stage))
                      : fmt::format("{}, days {} to {}: {}",
                                    stage.from,
                                    stage.first_day,
                                    stage.last_day,
                                    supply_line(page, stage)));
    }
    if (plan.stages.size() > most_stages)
        page.item(fmt::format("and at {} places more, {} of food in all: --show food",
                              plan.stages.size() - most_stages,
                              page.mass(plan.totals.food_kg)));
}

/// The things that one member has in one way, with their masses: "tent 1.9 kg, boots 1.1 kg".
std::string things(const TextPage& page, std::size_t member, Account at_start) {
    std::vector<std::string> texts;
    for (const PackedItem& item : page.plan().items)
        if (item.bearer == member && item.at_start == at_start)
            texts.push_back(fmt::format("{} {}",
                                        item.owner == page.plan().start_loads[member].member
                                            ? thing_words(item)
                                            : owned_words(item),
                                        page.mass(item.mass_kg)));
    return fmt::format("{}", fmt::join(texts, ", "));
}

/// Food and the like in a pack: "food 3.4 kg, water 2.7 kg".
std::string stores(const TextPage& page, const planner::StartLoad& load) {
    std::vector<std::string> texts;
    for (const auto& [what, mass_kg] : {std::pair{"food", load.food_kg},
                                        std::pair{"fuel", load.fuel_kg},
                                        std::pair{"water", load.water_kg}})
        if (mass_kg > 0.0)
            texts.push_back(fmt::format("{} {}", what, page.mass(mass_kg)));
    return fmt::format("{}", fmt::join(texts, ", "));
}

void add_member_lists(TextPage& page) {
    const Plan& plan = page.plan();
    for (std::size_t member = 0; member < plan.start_loads.size(); ++member) {
        const planner::StartLoad& load = plan.start_loads[member];
        page.item(start_load_words(page, load));
        if (plan.start_loads.size() > most_lists)
            continue;
        std::string packed = things(page, member, Account::pack);
        const std::string eaten = stores(page, load);
        if (!packed.empty() && !eaten.empty())
            packed += ", ";
        packed += eaten;
        page.hang(load.limit_kg ? "    pack: " : "    boat: ", packed);
        if (const std::string worn = things(page, member, Account::worn); !worn.empty())
            page.hang("    worn: ", worn);
        if (const std::string used = things(page, member, Account::in_use); !used.empty())
            page.hang("    in hand: ", used);
    }
    if (plan.start_loads.size() > most_lists)
        page.item("Thing by thing: --show packing");
}

void add_left_at_home(TextPage& page) {
    std::vector<std::string> left;
    for (const PackedItem& item : page.plan().items)
        if (!item.comes)
            left.push_back(
                fmt::format("{} ({})",
                            owned_words(item),
                            item.why.empty() ? "not needed" : why_words(item, page.units())));
    if (left.empty())
        return;
    const std::size_t more = left.size() - std::min(left.size(), most_left_out);
    left.resize(left.size() - more);
    page.hang(
        "  Left at home: ",
        fmt::format("{}{}",
                    fmt::join(left, "; "),
                    more > 0 ? fmt::format("; and {} more: --show kit", more) : std::string()));
}

void add_packing_lines(TextPage& page) {
    if (page.plan().start_loads.empty())
        return;
    page.heading("To pack");
    add_member_lists(page);
    add_left_at_home(page);
}

/// The latest hour to leave the last night's place, or the start, for an appointment.
std::string leave_last(const TextPage& page, const planner::PlanAppointment& meet) {
    const planner::LeaveBy* last = nullptr;
    for (const planner::LeaveBy& leave : meet.leave_by)
        if (leave.night)
            last = &leave;
    if (last == nullptr)
        return {};
    const auto day = static_cast<std::size_t>(last->day) - 1;
    return fmt::format("; leave {} on day {} by {}",
                       last->place,
                       last->day,
                       day < page.plan().days.size()
                           ? page.clock(at_latest(last->at), page.plan().days[day].date)
                           : page.clock(at_latest(last->at)));
}

void add_appointment_lines(TextPage& page) {
    if (page.plan().appointments.empty())
        return;
    page.heading("Appointments");
    for (const planner::PlanAppointment& meet : page.plan().appointments)
        page.item(fmt::format("{} at {}, day {} by {}: {}{}.",
                              meet.what,
                              meet.at,
                              meet.day,
                              page.clock(meet.by),
                              meeting_words({meet.spare_s, meet.margin_s}, page),
                              leave_last(page, meet)));
}

} // namespace

void add_more(TextPage& page, std::string_view command) {
    std::vector<std::string_view> words;
    for (const Section section : sections_of(command))
        if (section != Section::verdict &&
            (section != Section::flow || !page.plan().decisions.empty()) &&
            (section != Section::connections || !page.plan().connections.empty()) &&
            (section != Section::permits || !page.plan().permits.empty()) &&
            (section != Section::left || !page.plan().left.empty()))
            words.push_back(word(section));
    page.add("\n");
    page.line(fmt::format("More: --show {} or all.", fmt::join(words, ", ")));
}

void add_first_screen(TextPage& page) {
    add_day_lines(page);
    add_hazards(page);
    add_left(page);
    add_flow_table(page);
    add_pack_lines(page);
    add_boat_lines(page);
    add_buying(page);
    add_packing_lines(page);
    add_appointment_lines(page);
    add_connections_briefly(page);
    add_permits_briefly(page);
}

} // namespace tumpline::cli
