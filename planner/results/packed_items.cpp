#include "planner/results/packed_items.h"

#include "planner/loads/thing_booking.h"
#include "planner/quantities/milligrams.h"

#include <algorithm>
#include <cstdint>
#include <string>
#include <utility>

namespace tumpline::planner {

namespace {

/// The step before which everything is booked with which the party sets off.
std::size_t set_off_step(const Assembly& draft) {
    return draft.settled.loads.stretch_step.front();
}

/// What the ledger says of a thing when the party sets off.
struct Found {
    std::int64_t mass_mg = 0;
    std::optional<std::size_t> bearer;
    std::optional<Account> account;
};

bool holds_things(Account account) {
    return account == Account::pack || account == Account::worn || account == Account::in_use ||
           account == Account::laid_down;
}

/// Per thing of one part; a thing is in one place as a whole.
std::vector<Found> found_at_start(const Assembly& draft, Part part, std::size_t count) {
    std::vector<Found> found(count);
    const std::size_t step = set_off_step(draft);
    for (const Entry& entry : draft.settled.loads.ledger.entries) {
        if (entry.step >= step)
            break;
        if (entry.part != part || entry.item >= count)
            continue;
        Found& thing = found[entry.item];
        if (holds_things(entry.from))
            thing.mass_mg -= entry.mass_mg;
        if (holds_things(entry.to)) {
            thing.mass_mg += entry.mass_mg;
            thing.bearer = entry.member;
            if (entry.to != Account::laid_down)
                thing.account = entry.to;
        }
    }
    return found;
}

/// Where each thing of the kit lies on the first water.
struct FirstStowage {
    Stowage stowage = Stowage::none;
    std::optional<std::size_t> craft;
};

std::vector<FirstStowage> stowed_first(const std::vector<PlanLeg>& legs, std::size_t things) {
    std::vector<FirstStowage> stowed(things);
    const auto water = std::find_if(
        legs.begin(), legs.end(), [](const PlanLeg& leg) { return !leg.craft.empty(); });
    if (water == legs.end())
        return stowed;
    for (std::size_t c = 0; c < water->craft.size(); ++c) {
        const CraftLoad& craft = water->craft[c];
        for (const auto& [stowage, goods] : {std::pair{Stowage::left, &craft.left},
                                             std::pair{Stowage::right, &craft.right},
                                             std::pair{Stowage::at_hand, &craft.at_hand}})
            for (const Stowed& one : *goods)
                for (const std::size_t k : one.kit)
                    if (k < things)
                        stowed[k] = {stowage, c};
    }
    return stowed;
}

/// Way and climb on foot, the single way: what each kilogram is carried over at least. The climb is
/// that of the legs as they are printed.
struct WayOnFoot {
    double km = 0.0;
    double up_m = 0.0;
};

WayOnFoot way_on_foot(const std::vector<PlanLeg>& legs) {
    WayOnFoot way;
    for (const PlanLeg& leg : legs) {
        if (!bears_packs(leg.travel))
            continue;
        way.km += (leg.to_m - leg.from_m) / 1000.0;
        way.up_m += leg.ascent_m;
    }
    return way;
}

/// The way without what a thing is not with the party on.
WayOnFoot way_with(const Assembly& draft, const PackedItem& row, WayOnFoot way) {
    const std::vector<Stretch>& stretches = draft.prepared.stretches.stretches;
    const std::vector<LaidDown>& laid = draft.settled.loads.laid;
    for (std::size_t i = 0; !laid.empty() && i < stretches.size(); ++i)
        if (stretches[i].on_foot() && !with_party(laid, {row.part, row.index}, i)) {
            way.km -= stretches[i].length_m() / 1000.0;
            way.up_m -= stretches[i].ascent_m;
        }
    return way;
}

PackedItem kit_row(const Assembly& draft, std::size_t k, const Found& found) {
    const KitItem& thing = draft.prepared.trip.kit[k];
    const KitReason& reason = draft.prepared.kit.reasons[k];
    PackedItem row;
    row.part = Part::kit;
    row.index = k;
    row.item = thing.name;
    row.owner = thing.owner;
    row.count = thing.count;
    row.comes = draft.prepared.kit.brought[k];
    row.why = reason.why.metric;
    row.imperial = imperial_if_other(reason.why);
    row.why_leg = reason.leg;
    row.overridden = reason.overridden;
    row.ashore = thing.ashore;
    row.afloat = thing.afloat;
    row.container = thing.piece;
    row.gets_wet = draft.prepared.assumed.item_wet_kg[k] > 0.0;
    row.mass_kg = row.comes ? mg_to_kg(found.mass_mg) : thing.all_kg();
    if (row.comes) { // what weighs nothing is in no ledger
        const Loads& loads = draft.settled.loads;
        row.bearer = found.bearer.value_or(thing.ashore == ItemUse::packed ? loads.item_bearer[k]
                                                                           : loads.item_user[k]);
        row.at_start = found.account.value_or(account_of(thing.ashore));
    }
    return row;
}

PackedItem craft_row(const Assembly& draft, std::size_t c, const Found& found) {
    const Craft& craft = draft.prepared.trip.craft[c];
    PackedItem row;
    row.part = Part::craft;
    row.index = c;
    row.item = craft.name;
    row.owner = craft.crew.size() == 1 ? craft.crew.front() : std::string();
    row.mass_kg = mg_to_kg(found.mass_mg);
    row.bearer = found.bearer;
    row.at_start = found.account;
    row.afloat = ItemUse::used;
    row.gets_wet = draft.prepared.assumed.craft[c].wet_kg > 0.0;
    return row;
}

} // namespace

std::vector<PackedItem> plan_items(const Assembly& draft, const std::vector<PlanLeg>& legs) {
    const Trip& trip = draft.prepared.trip;
    std::vector<PackedItem> rows;
    rows.reserve(trip.kit.size() + trip.craft.size());
    const std::vector<Found> kit = found_at_start(draft, Part::kit, trip.kit.size());
    const std::vector<FirstStowage> stowed = stowed_first(legs, trip.kit.size());
    for (std::size_t k = 0; k < trip.kit.size(); ++k) {
        rows.push_back(kit_row(draft, k, kit[k]));
        rows.back().stowage = stowed[k].stowage;
        rows.back().in_craft = stowed[k].craft;
    }
    const std::vector<Found> craft = found_at_start(draft, Part::craft, trip.craft.size());
    for (std::size_t c = 0; c < trip.craft.size(); ++c)
        rows.push_back(craft_row(draft, c, craft[c]));
    const WayOnFoot way = way_on_foot(legs);
    const std::vector<LaidDown>& laid = draft.settled.loads.laid;
    for (PackedItem& row : rows) {
        for (std::size_t l = 0; l < laid.size(); ++l)
            if (laid[l].left_at && holds(laid[l], {row.part, row.index}))
                row.leaves.push_back(l);
        const WayOnFoot own = way_with(draft, row, way);
        row.carry_kg_km = row.mass_kg * own.km;
        row.carry_kg_m_up = row.mass_kg * own.up_m;
    }
    return rows;
}

std::vector<StartLoad> plan_start_loads(const Assembly& draft, const std::vector<PlanLeg>& legs) {
    const Trip& trip = draft.prepared.trip;
    const Ledger& ledger = draft.settled.loads.ledger;
    const std::size_t step = set_off_step(draft);
    const auto own_way = std::find_if(
        legs.begin(), legs.end(), [](const PlanLeg& leg) { return !is_ride(leg.travel); });
    const PlanLeg* const first = own_way != legs.end() ? &*own_way
                                 : legs.empty()        ? nullptr
                                                       : &legs.front();
    std::vector<StartLoad> loads;
    for (std::size_t m = 0; m < trip.party.size(); ++m) {
        const auto packed_kg = [&](Part part) {
            return mg_to_kg(ledger.balance_mg(m, Account::pack, part, step));
        };
        StartLoad load;
        load.member = trip.party[m].name;
        load.pack_kg = mg_to_kg(ledger.balance_mg(m, Account::pack, step));
        load.worn_kg = mg_to_kg(ledger.balance_mg(m, Account::worn, step));
        load.in_hand_kg = mg_to_kg(ledger.balance_mg(m, Account::in_use, Part::kit, step));
        load.food_kg = packed_kg(Part::food);
        load.fuel_kg = packed_kg(Part::fuel);
        load.water_kg = packed_kg(Part::water);
        load.waste_kg = packed_kg(Part::waste);
        if (first != nullptr && !afloat(first->travel))
            load.limit_kg = first->loads[m].limit_kg;
        loads.push_back(std::move(load));
    }
    return loads;
}

} // namespace tumpline::planner
