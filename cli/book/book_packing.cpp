#include "cli/book/book_parts.h"
#include "cli/words/packing_words.h"
#include "cli/words/suit_words.h"
#include "cli/words/words.h"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

namespace tumpline::cli {

namespace {

using planner::Account;
using planner::ItemUse;
using planner::PackedItem;
using planner::Part;
using planner::Plan;
using planner::StartLoad;

std::string note(const PackedItem& item, planner::UnitSystem units) {
    std::vector<std::string> words;
    if (item.part == Part::kit && (item.afloat != item.ashore || item.afloat != ItemUse::packed))
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
    if (item.stowage == planner::Stowage::at_hand)
        words.emplace_back("afloat at hand");
    if (!item.container.empty())
        words.push_back(fmt::format("in {}", item.container));
    if (item.part == Part::kit && item.gets_wet)
        words.emplace_back("heavier when wet");
    if (!item.why.empty())
        words.push_back(why_words(item, units));
    return joined(words);
}

Fields item_row(std::string_view item, const std::string& remark, const std::string& mass) {
    Fields row;
    row.text("item", item).text("note", remark).text("mass", mass);
    return row;
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

/// Rows of the things that one member bears and for which `wanted` holds.
template <typename Wanted>
std::vector<Fields> rows_of(const BookSource& source, std::size_t member, const Wanted& wanted) {
    std::vector<Fields> rows;
    for (const PackedItem& item : source.plan.items) {
        if (item.bearer != member || !wanted(item))
            continue;
        const bool own = item.owner == source.plan.start_loads[member].member;
        rows.push_back(item_row(own ? thing_words(item) : owned_words(item),
                                note(item, source.shown.units()),
                                source.shown.mass(item.mass_kg)));
    }
    return rows;
}

/// The boat in the pack, food, fuel and water.
std::vector<Fields> provisions(const BookSource& source, std::size_t member) {
    std::vector<Fields> rows = rows_of(source, member, [](const PackedItem& item) {
        return item.part == Part::craft && item.at_start == Account::pack;
    });
    const StartLoad& load = source.plan.start_loads[member];
    const auto add = [&](const char* what, double mass_kg, const char* remark) {
        if (mass_kg > 0.0)
            rows.push_back(item_row(what, remark, source.shown.mass(mass_kg)));
    };
    add("food", load.food_kg, "packaging and share of the reserve included");
    add("fuel", load.fuel_kg, "with its container");
    add("water", load.water_kg, "");
    add("waste", load.waste_kg, "");
    return rows;
}

std::string sums(const BookSource& source, const StartLoad& load) {
    const Figures& shown = source.shown;
    std::vector<std::string> words;
    words.push_back(fmt::format("{} at the start {}",
                                load.limit_kg ? "In the pack" : "Own goods in the boat",
                                shown.mass(load.pack_kg)));
    if (load.worn_kg > 0.0)
        words.push_back(fmt::format("worn {}", shown.mass(load.worn_kg)));
    if (load.in_hand_kg > 0.0)
        words.push_back(fmt::format("in hand {}", shown.mass(load.in_hand_kg)));
    if (load.limit_kg)
        words.push_back(fmt::format("limit {}", shown.mass(*load.limit_kg)));
    return joined(words);
}

std::vector<Fields> groups_of(const BookSource& source, std::size_t member) {
    const std::string& name = source.plan.start_loads[member].member;
    const auto kit = [&](Account at_start) {
        return rows_of(source, member, [&](const PackedItem& item) {
            return item.part == Part::kit && item.at_start == at_start;
        });
    };
    const auto packed = [&](bool own) {
        return rows_of(source, member, [&](const PackedItem& item) {
            return item.part == Part::kit && item.at_start == Account::pack &&
                   (item.owner == name) == own;
        });
    };
    Groups groups;
    groups.add("Worn at the start", kit(Account::worn));
    groups.add("In hand at the start", kit(Account::in_use));
    groups.add("In the pack", packed(true));
    groups.add("Of the party's things", packed(false));
    groups.add("Boat, food, fuel and water at the start", provisions(source, member));
    groups.add("On the water at the start", rows_of(source, member, [](const PackedItem& item) {
                   return item.part == Part::craft && item.at_start == Account::in_use;
               }));
    return groups.take();
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
        const std::string what = stowed_words(source.plan, thing);
        const std::string each = source.shown.mass(thing.mass_kg);
        const auto alike = std::find_if(rows.begin(), rows.end(), [&](const Row& row) {
            return row.what == what && row.mass == each;
        });
        if (alike == rows.end())
            rows.push_back({what, each, 1});
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
                              craft.fits_volume ? "" : "; the bags are too small for it") +
                      (craft.ends ? "; " + ends_words(*craft.ends, source.shown) : std::string()))
            .list("bags", std::move(bags));
    }
    return rows;
}

/// What an item costs, or saves, on foot.
std::string effort(const BookSource& source, double kg_km, double kg_m_up) {
    return fmt::format("{}, {} up",
                       planner::show_carried(kg_km, source.shown.units()),
                       planner::show_climbed(kg_m_up, source.shown.units()));
}

} // namespace

void add_packing(Fields& fields, const BookSource& source) {
    const Plan& plan = source.plan;
    std::vector<Fields> lists;
    for (std::size_t i = 0; i < plan.start_loads.size(); ++i)
        lists.emplace_back()
            .text("number", std::to_string(i + 1))
            .text("name", plan.start_loads[i].member)
            .text("sums", sums(source, plan.start_loads[i]))
            .list("groups", groups_of(source, i));
    std::vector<Fields> home;
    std::vector<Fields> brought;
    for (const PackedItem& item : plan.items) {
        if (item.why.empty())
            continue;
        Fields& row = (item.comes ? brought : home).emplace_back();
        row.text("item", owned_words(item))
            .text("why", why_words(item, source.shown.units()))
            .text("mass", source.shown.mass(item.mass_kg))
            .text(item.comes ? "cost" : "saved",
                  effort(source, item.carry_kg_km, item.carry_kg_m_up));
        if (item.comes)
            row.truth("override", item.overridden);
    }
    std::vector<Fields> volumes;
    for (const std::string& line : volume_lines(plan, source.shown.units()))
        volumes.emplace_back().text("line", line);
    fields.list("volumes", std::move(volumes));
    fields.list("lists", std::move(lists))
        .list("boats", boats(source))
        .list("stays_home", std::move(home))
        .list("comes", std::move(brought));
}

} // namespace tumpline::cli
