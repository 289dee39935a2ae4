#pragma once

#include "planner/loads/ledger.h"
#include "planner/quantities/leg_number.h"
#include "planner/trip/trip.h"

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

/// What is packed at the start and who has it: one row per thing, and what each member sets off
/// with, which is the sum of the rows.
namespace tumpline::planner {

/// Where a thing lies in a boat.
enum class Stowage { none, left, right, at_hand };

/// All of one thing of the kit, or one boat.
struct PackedItem {
    Part part = Part::kit; ///< kit or craft
    std::size_t index = 0; ///< in Trip::kit or Trip::craft
    std::string item;
    std::string owner; ///< of a boat whoever sits in it alone; empty: the party's
    int count = 1;
    double mass_kg = 0.0; ///< all of the count, at the start; of what stays at home, what it weighs
    bool comes = true;
    std::string why;            ///< it comes or stays; empty: it comes without a condition
    std::string imperial;       ///< the same in imperial units; empty if it is the same
    LegNumber why_leg = {};     ///< that asks for it; none: the weather, or an override
    bool overridden = false;    ///< the trip file's `bring` decided, whatever the route says
    double carry_kg_km = 0.0;   ///< kilograms times kilometres on foot: what it costs, or saves
    double carry_kg_m_up = 0.0; ///< kilograms times metres climbed on foot
    std::optional<std::size_t> bearer;    ///< index into the party; empty: at home
    std::optional<Account> at_start;      ///< in the pack, worn or in use when setting off
    ItemUse ashore = ItemUse::packed;     ///< of a boat, when it is rolled up
    ItemUse afloat = ItemUse::packed;     ///< of a boat, in use
    std::string container;                ///< what it is packed in with others; empty: nothing
    bool gets_wet = false;                ///< heavier once it was afloat
    Stowage stowage = Stowage::none;      ///< on the first water
    std::optional<std::size_t> in_craft;  ///< index into Trip::craft, on the first water
    std::vector<std::size_t> leaves = {}; ///< of Trip::leaves, those that leave it on the way
};

/// What one member has when setting off, sums over the ledger. The things of `Plan::items` that the
/// member bears in a pack, and the food, fuel, water and waste here, sum to `pack_kg`; those worn
/// and in hand to `worn_kg` and `in_hand_kg`.
struct StartLoad {
    std::string member;
    double pack_kg = 0.0; ///< on the back; where the trip begins afloat, own goods in the boat
    double worn_kg = 0.0;
    double in_hand_kg = 0.0; ///< things of the kit in use; a boat on the water is not in hand
    double food_kg = 0.0;    ///< of `pack_kg`: packaging and reserve included
    double fuel_kg = 0.0;    ///< of `pack_kg`: its containers included
    double water_kg = 0.0;   ///< of `pack_kg`
    double waste_kg = 0.0;   ///< of `pack_kg`: the wrapping of a breakfast before setting off
    std::optional<double> limit_kg; ///< on the first leg that is no ride; empty afloat
};

} // namespace tumpline::planner
