#include "cli/book/book_parts.h"
#include "cli/words/words.h"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

namespace tumpline::cli {

namespace {

using planner::ItemUse;
using planner::KitItem;
using planner::Plan;

bool comes(const Plan& plan, const KitItem& item) {
    if (item.bring)
        return *item.bring;
    return item.when.empty() ||
           std::none_of(plan.stays_home.begin(), plan.stays_home.end(), [&](const auto& home) {
               return home.item == item.name;
           });
}

std::string note(const Plan& plan, const KitItem& item, planner::UnitSystem units) {
    std::vector<std::string> words;
    if (item.afloat != item.ashore || item.afloat != ItemUse::packed)
        switch (item.afloat) {
        case ItemUse::packed:
            words.emplace_back("afloat in the bags");
            break;
        case ItemUse::worn:
            words.emplace_back("afloat worn");
            break;
        case ItemUse::used:
            words.emplace_back("afloat in use");
            break;
        }
    if (item.at_hand)
        words.emplace_back("afloat at hand");
    if (item.gets_wet)
        words.emplace_back("heavier when wet");
    if (!item.when.empty())
        for (const planner::Comes& reason : plan.comes)
            if (reason.item == item.name && !reason.why.empty()) {
                words.push_back(in_units({reason.why, reason.imperial}, units));
                break;
            }
    return joined(words);
}

Fields item_row(std::string_view item, const std::string& remark, const std::string& mass) {
    Fields row;
    row.text("item", item).text("note", remark).text("mass", mass);
    return row;
}

Fields kit_row(const BookSource& source, const KitItem& item) {
    const std::string name =
        item.count == 1 ? item.name : fmt::format("{} × {}", item.count, item.name);
    return item_row(
        name, note(source.plan, item, source.shown.system()), source.shown.mass(item.all_kg()));
}

/// A list of groups of which the empty ones are left out.
class Groups {
  public:
    void add(std::string_view title, std::vector<Fields> items) {
        if (!items.empty())
            groups_.emplace_back().text("title", title).list("items", std::move(items));
    }

    [[nodiscard]] std::vector<Fields> take() { return std::move(groups_); }

  private:
    std::vector<Fields> groups_;
};

std::vector<Fields> own(const BookSource& source, const std::string& owner, ItemUse ashore) {
    std::vector<Fields> rows;
    for (const KitItem& item : source.plan.trip.kit)
        if (item.owner == owner && item.ashore == ashore && comes(source.plan, item))
            rows.push_back(kit_row(source, item));
    return rows;
}

/// The party's things that this member bears, as shared out on the leg where most is carried.
std::vector<Fields> shared(const BookSource& source, const std::string& member) {
    std::vector<Fields> rows;
    for (const planner::Sharing::Bearer& bearer : source.plan.sharing.bearers) {
        if (bearer.member != member)
            continue;
        const auto& kit = source.plan.trip.kit;
        const auto found = std::find_if(kit.begin(), kit.end(), [&](const KitItem& item) {
            return item.owner.empty() && item.name == bearer.item;
        });
        rows.push_back(
            item_row(bearer.item,
                     found == kit.end() ? "" : note(source.plan, *found, source.shown.system()),
                     source.shown.mass(bearer.mass_kg)));
    }
    return rows;
}

/// Whether a boat stands among the party's things that this member bears.
bool bears_a_boat_by_name(const Plan& plan, const std::string& member) {
    return std::any_of(
        plan.sharing.bearers.begin(), plan.sharing.bearers.end(), [&](const auto& bearer) {
            return bearer.member == member && std::any_of(plan.trip.craft.begin(),
                                                          plan.trip.craft.end(),
                                                          [&](const planner::Craft& craft) {
                                                              return craft.name == bearer.item;
                                                          });
        });
}

/// Food, fuel, water and boat as they lie in the pack where the plan's first leg is heaviest.
std::vector<Fields> provisions(const BookSource& source, std::size_t member) {
    std::vector<Fields> rows;
    if (source.plan.legs.empty() || source.plan.legs.front().loads.size() <= member)
        return rows;
    const planner::Parts& parts = source.plan.legs.front().loads[member].parts;
    const auto add = [&](const char* what, double mass_kg, const char* remark) {
        if (mass_kg > 0.0)
            rows.push_back(item_row(what, remark, source.shown.mass(mass_kg)));
    };
    if (!bears_a_boat_by_name(source.plan, source.plan.trip.party[member].name))
        add("boat", parts.craft_kg, "");
    add("food", parts.food_kg, "packaging and share of the reserve included");
    add("fuel", parts.fuel_kg, "with its container");
    add("water", parts.water_kg, "");
    return rows;
}

std::string sums(const BookSource& source, std::size_t member) {
    const Shown& shown = source.shown;
    std::vector<std::string> words;
    if (!source.plan.legs.empty() && source.plan.legs.front().loads.size() > member) {
        const planner::PlanLeg& leg = source.plan.legs.front();
        const planner::MemberLoad& load = leg.loads[member];
        const bool afloat = leg.travel == planner::Travel::paddle;
        words.push_back(fmt::format("{} at the start {}",
                                    afloat ? "Own goods in the boat" : "On the back",
                                    shown.mass(load.pack_start_kg)));
        words.push_back(fmt::format("worn or in hand {}", shown.mass(load.worn_kg)));
        if (!afloat && load.limit_kg > 0.0)
            words.push_back(fmt::format("limit {}", shown.mass(load.limit_kg)));
    }
    return joined(words);
}

Fields bag(const BookSource& source,
           std::string_view name,
           double mass_kg,
           const std::vector<planner::Stowed>& things) {
    // Things alike stand in one row, since food comes in many equal bags.
    struct Row {
        std::string what;
        std::string mass;
        int count;
    };

    std::vector<Row> rows;
    for (const planner::Stowed& thing : things) {
        const std::string each = source.shown.mass(thing.mass_kg);
        const auto alike = std::find_if(rows.begin(), rows.end(), [&](const Row& row) {
            return row.what == thing.what && row.mass == each;
        });
        if (alike == rows.end())
            rows.push_back({thing.what, each, 1});
        else
            ++alike->count;
    }
    std::vector<Fields> items;
    items.reserve(rows.size());
    for (const Row& row : rows)
        items.push_back(row.count == 1 ? item_row(row.what, "", row.mass)
                                       : item_row(fmt::format("{} × {}", row.count, row.what),
                                                  "",
                                                  fmt::format("{} each", row.mass)));
    Fields fields;
    fields.text("bag", name)
        .text("mass", source.shown.mass(mass_kg))
        .list("items", std::move(items));
    return fields;
}

std::vector<Fields> boats(const BookSource& source) {
    std::vector<Fields> rows;
    const auto first = std::find_if(source.plan.legs.begin(),
                                    source.plan.legs.end(),
                                    [](const auto& leg) { return !leg.craft.empty(); });
    if (first == source.plan.legs.end())
        return rows;
    for (const planner::CraftLoad& craft : first->craft) {
        std::vector<Fields> bags;
        bags.push_back(bag(source, "Left bag", craft.left_kg, craft.left));
        bags.push_back(bag(source, "Right bag", craft.right_kg, craft.right));
        bags.push_back(bag(source, "At hand", craft.at_hand_kg, craft.at_hand));
        rows.emplace_back()
            .text("boat", craft.craft)
            .text("level",
                  fmt::format("left {}, right {}{}",
                              source.shown.mass(craft.left_kg),
                              source.shown.mass(craft.right_kg),
                              craft.fits_volume ? "" : "; the bags are too small for it"))
            .list("bags", std::move(bags));
    }
    return rows;
}

/// What an item costs, or saves, on foot.
std::string effort(const BookSource& source, double kg_km, double kg_m_up) {
    return fmt::format("{}, {} up",
                       planner::show_carried(kg_km, source.shown.system()),
                       planner::show_climbed(kg_m_up, source.shown.system()));
}

} // namespace

void add_packing(Fields& fields, const BookSource& source) {
    const Plan& plan = source.plan;
    std::vector<Fields> lists;
    for (std::size_t i = 0; i < plan.trip.party.size(); ++i) {
        const std::string& name = plan.trip.party[i].name;
        Groups groups;
        groups.add("Worn on foot", own(source, name, ItemUse::worn));
        groups.add("In hand on foot", own(source, name, ItemUse::used));
        groups.add("In the pack", own(source, name, ItemUse::packed));
        groups.add("Of the party's things", shared(source, name));
        groups.add("Boat, food, fuel and water at the start", provisions(source, i));
        lists.emplace_back()
            .text("number", std::to_string(i + 1))
            .text("name", name)
            .text("sums", sums(source, i))
            .list("groups", groups.take());
    }
    std::vector<Fields> home;
    for (const planner::StaysHome& item : plan.stays_home)
        home.emplace_back()
            .text("item", item.item)
            .text("why", in_units({item.why, item.imperial}, source.shown.system()))
            .text("mass", source.shown.mass(item.mass_kg))
            .text("saved", effort(source, item.saved_kg_km, item.saved_kg_m_up));
    std::vector<Fields> brought;
    for (const planner::Comes& item : plan.comes)
        brought.emplace_back()
            .text("item", item.item)
            .text("why", in_units({item.why, item.imperial}, source.shown.system()))
            .truth("override", item.override_recorded)
            .text("mass", source.shown.mass(item.mass_kg))
            .text("cost", effort(source, item.cost_kg_km, item.cost_kg_m_up));
    fields.list("lists", std::move(lists))
        .list("boats", boats(source))
        .list("stays_home", std::move(home))
        .list("comes", std::move(brought));
}

} // namespace tumpline::cli
