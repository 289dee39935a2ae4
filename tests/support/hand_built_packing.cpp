#include "tests/support/hand_built_parts.h"

#include <string>
#include <vector>

namespace tumpline::test {

namespace {

using namespace planner;

/// Ada has the stove, the throw bag and the fuel, Björn the tent and the repair kit; the thigh
/// straps stay at home. Both set off on foot, so that boats lie rolled up in the packs.
std::vector<PackedItem> items(const Trip& trip) {
    std::vector<PackedItem> rows;
    for (std::size_t k = 0; k < trip.kit.size(); ++k) {
        const KitItem& thing = trip.kit[k];
        PackedItem& row = rows.emplace_back();
        row.index = k;
        row.item = thing.name;
        row.owner = thing.owner;
        row.mass_kg = thing.mass_kg;
        row.ashore = thing.ashore;
        row.afloat = thing.afloat;
        const bool adas = thing.owner == "Ada" || (thing.owner.empty() && (k == 1 || k == 2));
        row.comes = thing.name != "thigh straps";
        if (row.comes) {
            row.bearer = adas ? 0U : 1U;
            row.at_start = thing.ashore == ItemUse::worn ? Account::worn : Account::pack;
        } else {
            row.why = "no leg is of class III or harder";
        }
        row.carry_kg_km = 19.36 * thing.mass_kg;   // 19.36 km on foot
        row.carry_kg_m_up = 640.0 * thing.mass_kg; // 640 m up on them
        if (row.comes && thing.afloat == ItemUse::packed && thing.ashore == ItemUse::packed) {
            row.stowage = k % 2 == 0 ? Stowage::left : Stowage::right;
            row.in_craft = row.bearer;
        }
        if (thing.name == "dry suit") {
            row.why = "water at 9 C, below 14 C";
            row.imperial = "water at 48 F, below 57 F";
            row.why_leg = 2;
        }
    }
    for (std::size_t c = 0; c < trip.craft.size(); ++c) {
        PackedItem& row = rows.emplace_back();
        row.part = Part::craft;
        row.index = c;
        row.item = trip.craft[c].name;
        row.owner = trip.craft[c].crew.front();
        row.mass_kg = trip.craft[c].mass_kg;
        row.bearer = c;
        row.at_start = Account::pack;
        row.afloat = ItemUse::used;
        row.gets_wet = true;
    }
    return rows;
}

/// Ada: stove 0.52, throw bag 0.35, sleeping bag 1.4, clothes 2.1, paddle 0.97, life jacket 0.7 and
/// dry suit 1.4 are 7.44 kg; with boat 3.3, food 4.7, fuel 0.304 and water 2.65 kg 18.394 kg.
/// Björn: tent 1.9, repair kit 0.28, and 5.17 kg of his own are 7.35 kg; with boat 3.3, food 5.22
/// and water 2.8 kg 18.67 kg. Boots of 1.1 kg are worn by each.
std::vector<StartLoad> start_loads() {
    return {{.member = "Ada",
             .pack_kg = 18.394,
             .worn_kg = 1.1,
             .in_hand_kg = 0.0,
             .food_kg = 4.7,
             .fuel_kg = 0.304,
             .water_kg = 2.65,
             .waste_kg = 0.0,
             .limit_kg = 22.0},
            {.member = "Björn",
             .pack_kg = 18.67,
             .worn_kg = 1.1,
             .in_hand_kg = 0.0,
             .food_kg = 5.22,
             .fuel_kg = 0.0,
             .water_kg = 2.8,
             .waste_kg = 0.0,
             .limit_kg = 24.0}};
}

} // namespace

void add_hand_built_packing(planner::Plan& plan) {
    plan.items = items(plan.trip);
    plan.start_loads = start_loads();
    plan.luggage = {{.member = "Ada",
                     .mass_kg = 16.894,
                     .worn_kg = 1.1,
                     .pieces = {"pack"},
                     .heaviest_kg = 16.894}};
    plan.volumes.packs = {{.member = "Ada",
                           .holds_l = 60.0,
                           .needs_l = 57.5,
                           .day = 1,
                           .plan_leg = 1,
                           .unknown = {},
                           .left_out = {}}};
    plan.volumes.container = {
        .name = "barrel",
        .holds_l = 30.0,
        .nights = {{.day = 0, .place = "Road end", .food_kg = 9.9, .needs_l = 19.8, .fits = true}},
        .fits_from_day = 0,
        .unknown = {}};
}

} // namespace tumpline::test
