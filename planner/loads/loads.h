#pragma once

#include "planner/defaults/defaults.h"
#include "planner/journey/provisions.h"
#include "planner/journey/schedule.h"
#include "planner/journey/segments.h"
#include "planner/loads/laid_down.h"
#include "planner/loads/ledger.h"
#include "planner/loads/minimax_sharing.h"
#include "planner/loads/portage_loads.h"
#include "planner/quantities/leg_number.h"
#include "planner/trip/ways_of_travel.h"

#include <array>
#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

/// What is known of who bears what, as data: filled by the files beside this one.
namespace tumpline::planner {

/// What members bear on one stretch, party order. On foot: on the back (portage: the heaviest
/// carry). Afloat: their goods in the craft.
struct StretchLoads {
    std::vector<double> start_kg;
    std::vector<double> end_kg;
    std::vector<double> max_kg;
    std::vector<double> worn_kg;        ///< on the body and in hand
    std::vector<double> in_hand_kg;     ///< of it, what is used: it lies in a boat that is led
    std::vector<PartMasses> max_parts;  ///< of max_kg
    std::vector<double> all_up_kg;      ///< per craft, afloat: people, goods and craft, mean
    std::vector<std::size_t> wet_items; ///< kit items that are wet as the stretch begins

    /// What a member is in a boat as the stretch begins: the body, what it wears and holds, and the
    /// goods; of a boat that is led from outside the goods and what is held when paddling.
    [[nodiscard]] double in_boat_kg(std::size_t member, double body_kg, Travel travel) const {
        return aboard(travel) ? body_kg + start_kg[member] + worn_kg[member]
                              : start_kg[member] + in_hand_kg[member];
    }
};

/// One way of doing a portage, for the table of choices.
struct CarryChoice {
    double carries = 1.0; ///< 1, 1.5, 2, 3
    bool rolled = false;  ///< the boats in the packs
    double lengths = 1.0;
    double walked_m = 0.0; ///< by each person
    double moving_s = 0.0;
    double changeover_s = 0.0;
    double heaviest_kg = 0.0;
    std::string heaviest_member;
    double heaviest_ratio = 0.0; ///< load over its bearer's limit
    bool within_limits = true;
    bool chosen = false;
    CarryBy by = CarryBy::hands;
    double on_cart_kg = 0.0; ///< at most, with the cart itself
};

/// How a portage is done.
struct PortagePlan {
    BoatState boats = BoatState::rolled;
    CarryPlan relay;
    std::vector<Piece> pieces;
    std::vector<double> worn_kg;  ///< by member: worn or in hand while carrying
    std::vector<double> member_s; ///< each member's own walking
    double moving_s = 0.0;        ///< of the slowest
    std::vector<CarryChoice> choices;
    std::optional<double> break_even_m;
};

/// Things that go on one back together: all of an item, or whatever is of the same piece ("in"),
/// whoever owns it.
struct TiedItems {
    std::string name;
    std::int64_t mass_mg = 0;          ///< of what is in a pack ashore, without food
    std::vector<std::size_t> items;    ///< of the kit, those that come
    bool holds_food = false;           ///< the food's "in" names it
    std::optional<std::size_t> holder; ///< who bears it; empty: anyone
    /// The party's things lie among those of the holder: where a limit forces it another bears
    /// them.
    bool may_wander = false;
};

/// A meal of which some lies elsewhere.
struct StoreShort {
    int day;
    std::size_t stretch; ///< on it, before it (breakfast) or after it (dinner)
    Meal meal;
    std::int64_t needs_mg; ///< of food without packaging
    std::int64_t lacks_mg;
};

/// What one of Trip::leaves is to lay down of food, packaging included, or of fuel.
struct StoreLaid {
    std::size_t leave;
    std::int64_t wanted_mg;
    std::int64_t carried_mg; ///< to be eaten or burnt, in the packs at that moment
};

/// Where things stand when a stretch begins, for the bags and lists.
struct Loads {
    std::vector<StretchLoads> stretches;
    std::vector<std::optional<PortagePlan>> portages; ///< per stretch
    SharedOut shared;                                 ///< of stage 0
    std::vector<TiedItems> tied;                      ///< everything that comes
    std::vector<std::size_t> item_bearer;             ///< per kit item: in whose pack it is
    std::vector<std::size_t> item_user;               ///< per kit item: who wears or uses it
    std::vector<std::size_t> craft_bearer;
    std::vector<std::vector<double>> stage_share;  ///< per stage, per member
    std::vector<std::vector<double>> day_start_kg; ///< per day, per member, as packed ashore;
                                                   ///< of the first alone unless recorded
    std::vector<std::vector<double>> day_end_kg;   ///< the same; empty unless recorded
    std::vector<std::size_t> stretch_step;         ///< ledger step at which each stretch begins
    std::vector<bool> craft_wet;                   ///< per craft, at the end
    std::vector<PlanLegNumber> plan_leg;           ///< per stretch
    Ledger ledger;                                 ///< empty unless recorded
    std::vector<LaidDown> laid = {};               ///< per entry of Trip::leaves
    std::vector<StoreLaid> food_laid = {};         ///< in the order in which it is laid down
    std::vector<StoreShort> food_short = {};       ///< empty unless food is laid down
    std::vector<StoreLaid> fuel_laid = {};
    std::vector<StoreShort> fuel_short = {}; ///< empty unless fuel is laid down
};

/// A way of doing a portage that is kept although the rounds would flip it.
struct PinnedCarry {
    BoatState boats;
    double carries;
    CarryBy by = CarryBy::hands;
};

/// Everything the booking of one round needs.
struct LoadInputs {
    const Trip& trip;
    const Route& route;
    const Assumed& assumed;
    const Stretches& stretches;
    const Timeline& timeline;
    const Provisions& provisions;
    const WaterCarry& water;
    const std::vector<bool>& brought;                    ///< per kit item
    const std::vector<BoatState>& boats;                 ///< per stretch, from the round before
    const std::vector<std::optional<PinnedCarry>>& pins; ///< per stretch; empty: nothing is pinned
    bool record;                                         ///< keep the ledger's entries
    const Loads* shared;                                 ///< things stay with the bearers they have
                                                         ///< here; null: they are shared out
    const Loads* carried = nullptr; ///< what is carried over a portage stays in the loads it has
                                    ///< here; null: loads are made anew
};

} // namespace tumpline::planner
