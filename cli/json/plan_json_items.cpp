#include "cli/json/plan_json_parts.h"
#include "cli/words/json_values.h"
#include "cli/words/words.h"

#include <algorithm>
#include <cstddef>
#include <string>
#include <string_view>

namespace tumpline::cli {

namespace {

using planner::PackedItem;
using planner::Plan;

Json bag_json(planner::Stowage stowage) {
    const std::string_view bag = word(stowage);
    return bag.empty() ? Json(nullptr) : Json(bag);
}

/// Rows of `left`, from 1.
Json left_rows(const Plan& plan, const PackedItem& item) {
    Json rows = Json::array();
    for (std::size_t i = 0; i < plan.left.size(); ++i)
        if (std::find(item.leaves.begin(), item.leaves.end(), plan.left[i].leave) !=
            item.leaves.end())
            rows.push_back(i + 1);
    return rows;
}

Json item_json(const Plan& plan, const PackedItem& item) {
    return {{"item", item.item},
            {"part", word(item.part)},
            {"owner", name_or_null(item.owner)},
            {"count", item.count},
            {"mass_kg", item.mass_kg},
            {"comes", item.comes},
            {"why", name_or_null(item.why)},
            {"bearer", item.bearer ? Json(plan.trip.party[*item.bearer].name) : Json(nullptr)},
            {"at_start", item.at_start ? Json(word(*item.at_start)) : Json(nullptr)},
            {"ashore", planner::word(item.ashore)},
            {"afloat", planner::word(item.afloat)},
            {"in", name_or_null(item.container)},
            {"craft", item.in_craft ? Json(plan.trip.craft[*item.in_craft].name) : Json(nullptr)},
            {"bag", bag_json(item.stowage)},
            {"gets_wet", item.gets_wet},
            {"carry_kg_km", item.carry_kg_km},
            {"carry_kg_m_up", item.carry_kg_m_up},
            {"left", left_rows(plan, item)}};
}

} // namespace

Json items_json(const Plan& plan) {
    return array_of(plan.items, [&](const PackedItem& item) { return item_json(plan, item); });
}

Json start_loads_json(const Plan& plan) {
    return array_of(plan.start_loads, [](const planner::StartLoad& load) {
        return Json{{"member", load.member},
                    {"pack_kg", load.pack_kg},
                    {"worn_kg", load.worn_kg},
                    {"in_hand_kg", load.in_hand_kg},
                    {"limit_kg", or_null(load.limit_kg)},
                    {"food_kg", load.food_kg},
                    {"fuel_kg", load.fuel_kg},
                    {"water_kg", load.water_kg},
                    {"waste_kg", load.waste_kg}};
    });
}

Json luggage_json(const Plan& plan) {
    return array_of(plan.luggage, [](const planner::Luggage& one) {
        return Json{{"member", name_or_null(one.member)},
                    {"mass_kg", one.mass_kg},
                    {"worn_kg", one.worn_kg},
                    {"pieces", one.pieces},
                    {"heaviest_kg", one.heaviest_kg}};
    });
}

Json volumes_json(const Plan& plan) {
    Json json = {{"packs", array_of(plan.volumes.packs, [](const planner::PackVolume& pack) {
                      return Json{{"member", pack.member},
                                  {"holds_l", pack.holds_l},
                                  {"needs_l", pack.needs_l},
                                  {"fits", pack.fits()},
                                  {"day", pack.day},
                                  {"plan_leg", place_or_null(pack.plan_leg)},
                                  {"left_out", pack.left_out},
                                  {"unknown", pack.unknown}};
                  })}};
    json["container"] = nullptr;
    if (const auto& container = plan.volumes.container)
        json["container"] = {{"name", container->name},
                             {"holds_l", container->holds_l},
                             {"fits_from_day", or_null(container->fits_from_day)},
                             {"nights",
                              array_of(container->nights,
                                       [](const planner::ContainerNight& night) {
                                           return Json{{"day", night.day},
                                                       {"place", night.place},
                                                       {"food_kg", night.food_kg},
                                                       {"needs_l", night.needs_l},
                                                       {"fits", night.fits}};
                                       })},
                             {"unknown", container->unknown}};
    return json;
}

Json stays_home_json(const Plan& plan) {
    Json rows = Json::array();
    for (const PackedItem& item : plan.items)
        if (!item.comes)
            rows.push_back({{"item", item.item},
                            {"owner", name_or_null(item.owner)},
                            {"mass_kg", item.mass_kg},
                            {"why", item.why},
                            {"saved_kg_km", item.carry_kg_km},
                            {"saved_kg_m_up", item.carry_kg_m_up}});
    return rows;
}

Json comes_json(const Plan& plan) {
    Json rows = Json::array();
    for (const PackedItem& item : plan.items)
        if (item.comes && !item.why.empty())
            rows.push_back({{"item", item.item},
                            {"owner", name_or_null(item.owner)},
                            {"mass_kg", item.mass_kg},
                            {"why", item.why},
                            {"leg", item.why_leg == 0 ? Json(nullptr) : Json(item.why_leg)},
                            {"cost_kg_km", item.carry_kg_km},
                            {"cost_kg_m_up", item.carry_kg_m_up},
                            {"override", item.overridden}});
    return rows;
}

Json party_bearers_json(const Plan& plan) {
    Json rows = Json::array();
    for (const PackedItem& item : plan.items)
        if (item.bearer && (item.owner.empty() || item.part == planner::Part::craft))
            rows.push_back({{"item", item.item},
                            {"mass_kg", item.mass_kg},
                            {"member", plan.trip.party[*item.bearer].name}});
    return rows;
}

} // namespace tumpline::cli
