#include "cli/words/packing_words.h"

#include "cli/words/words.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <cstddef>

namespace tumpline::cli {

using planner::Account;
using planner::ItemUse;
using planner::PackedItem;
using planner::Stowage;

std::string thing_words(const PackedItem& item) {
    return item.count == 1 ? item.item : fmt::format("{} × {}", item.count, item.item);
}

std::string owned_words(const PackedItem& item) {
    return item.owner.empty() || item.part == planner::Part::craft
               ? thing_words(item)
               : fmt::format("{} ({})", thing_words(item), item.owner);
}

std::string carried_words(const planner::CarriedThing& thing) {
    if (thing.count < 2)
        return thing.one_end ? thing.what + " (one end)" : thing.what;
    const std::string many = fmt::format("{} × {}", thing.count, thing.what);
    return thing.owners.empty() ? many
                                : fmt::format("{} ({})", many, fmt::join(thing.owners, ", "));
}

std::string stowed_words(const planner::Plan& plan, const planner::Stowed& thing) {
    planner::CarriedThing same{thing.what, 0};
    for (const std::size_t k : thing.kit) {
        const planner::KitItem& item = plan.trip.kit.at(k);
        if (item.name != thing.what) // one of several in a container
            return thing.what;
        same.count += item.count;
        if (!item.owner.empty() &&
            std::find(same.owners.begin(), same.owners.end(), item.owner) == same.owners.end())
            same.owners.push_back(item.owner);
    }
    return carried_words(same);
}

std::string_view afloat_words(const PackedItem& item) {
    switch (item.afloat) {
    case ItemUse::worn:
        return "worn";
    case ItemUse::used:
        return "in use";
    case ItemUse::packed:
        break;
    }
    switch (item.stowage) {
    case Stowage::none:
        return "";
    case Stowage::left:
        return "left bag";
    case Stowage::right:
        return "right bag";
    case Stowage::at_hand:
        return "at hand";
    }
    return "";
}

std::string_view start_words(const PackedItem& item) {
    if (!item.at_start)
        return "";
    switch (*item.at_start) {
    case Account::pack:
        return "pack";
    case Account::worn:
        return "worn";
    case Account::in_use:
        return item.part == planner::Part::craft ? "on the water" : "in hand";
    case Account::outside:
    case Account::eaten:
    case Account::drunk:
    case Account::burnt:
    case Account::dried:
    case Account::laid_down:
        break;
    }
    return "";
}

const std::string& why_words(const PackedItem& item, planner::UnitSystem units) {
    return in_units({item.why, item.imperial}, units);
}

std::vector<std::string> volume_lines(const planner::Plan& plan, planner::UnitSystem units) {
    const auto litres = [&](double volume_l) { return planner::show_volume(volume_l, units); };
    const auto without = [](const std::vector<std::string>& names) {
        return names.empty()
                   ? std::string()
                   : fmt::format("; not counted, volume not given: {}", fmt::join(names, ", "));
    };
    std::vector<std::string> lines;
    for (const planner::PackVolume& pack : plan.volumes.packs) {
        if (pack.plan_leg.none())
            continue;
        lines.push_back(
            fmt::format("{}'s pack holds {}: {} at its fullest, day {}, leg {}{}{}",
                        pack.member,
                        litres(pack.holds_l),
                        litres(pack.needs_l),
                        pack.day,
                        plan.legs[pack.plan_leg.index()].leg,
                        pack.left_out.empty()
                            ? std::string()
                            : fmt::format("; does not go in: {}", fmt::join(pack.left_out, ", ")),
                        without(pack.unknown)));
    }
    if (const auto& container = plan.volumes.container; container && !container->nights.empty())
        lines.push_back(fmt::format(
            "{} holds {}: {} when setting off; {}{}",
            container->name,
            litres(container->holds_l),
            litres(container->nights.front().needs_l),
            !container->fits_from_day        ? std::string("all food fits on no night")
            : *container->fits_from_day == 0 ? std::string("all food fits from the start")
                                             : fmt::format("all food fits from the night after day "
                                                           "{} on",
                                                           *container->fits_from_day),
            without(container->unknown)));
    return lines;
}

} // namespace tumpline::cli
