#include "planner/loads/assignment.h"

#include "planner/quantities/milligrams.h"

#include <algorithm>
#include <string>
#include <utility>
#include <vector>

namespace tumpline::planner {

namespace {

std::size_t member_named(const Trip& trip, const std::string& name) {
    const auto at = std::find_if(trip.party.begin(), trip.party.end(), [&](const Member& member) {
        return member.name == name;
    });
    return std::min(static_cast<std::size_t>(at - trip.party.begin()), trip.party.size() - 1);
}

/// Things that go on one back together.
struct Bundle {
    SharedThing thing;
    std::vector<std::size_t> items;
};

/// The party's things; those of one piece stay together.
std::vector<Bundle> bundles_of(const Trip& trip, const std::vector<bool>& brought) {
    std::vector<Bundle> bundles;
    for (std::size_t k = 0; k < trip.kit.size(); ++k) {
        const KitItem& item = trip.kit[k];
        if (!brought[k] || bound_to(trip, item))
            continue;
        const auto same = std::find_if(bundles.begin(), bundles.end(), [&](const Bundle& bundle) {
            return !item.piece.empty() && trip.kit[bundle.items.front()].piece == item.piece;
        });
        if (same == bundles.end()) {
            bundles.push_back({{static_cast<double>(item_mg(item))}, {k}});
        } else {
            same->thing.mass_mg += static_cast<double>(item_mg(item));
            same->items.push_back(k);
        }
    }
    return bundles;
}

} // namespace

std::optional<std::size_t> bound_to(const Trip& trip, const KitItem& item) {
    const std::string& holder = item.owner.empty() ? item.bearer : item.owner;
    if (holder.empty())
        return {};
    return member_named(trip, holder);
}

std::int64_t item_mg(const KitItem& item) {
    return kg_to_mg(item.mass_kg) * item.count;
}

bool packed_ashore(const Trip& trip, const std::vector<bool>& brought, std::size_t item) {
    return brought[item] && trip.kit[item].ashore == ItemUse::packed;
}

std::size_t fuel_bearer(const Loads& loads) {
    return loads.shared.bearer.back();
}

TiedItems tied_items(const Trip& trip, const std::vector<bool>& brought, std::size_t item) {
    const KitItem& spec = trip.kit[item];
    TiedItems whole{spec.piece.empty() ? spec.name : spec.piece, 0};
    for (std::size_t k = 0; k < trip.kit.size(); ++k) {
        const bool together =
            k == item || (!spec.piece.empty() && trip.kit[k].piece == spec.piece &&
                          bound_to(trip, trip.kit[k]) == bound_to(trip, spec));
        if (together && packed_ashore(trip, brought, k))
            whole.mass_mg += item_mg(trip.kit[k]);
    }
    return whole;
}

void share_things(const LoadInputs& inputs, Loads& loads) {
    if (inputs.shared) {
        loads.shared = inputs.shared->shared;
        loads.item_bearer = inputs.shared->item_bearer;
        loads.craft_bearer = inputs.shared->craft_bearer;
        loads.stage_share = inputs.shared->stage_share;
        return;
    }
    const Trip& trip = inputs.trip;
    std::vector<Bearer> bearers;
    for (const AssumedMember& member : inputs.assumed.members)
        bearers.push_back({.own_mg = inputs.water.fill_l.front() * mg_per_kg,
                           .limit_mg = member.walk_limit_kg * mg_per_kg});
    loads.item_bearer.assign(trip.kit.size(), 0);
    for (std::size_t k = 0; k < trip.kit.size(); ++k) {
        const KitItem& item = trip.kit[k];
        const std::optional<std::size_t> bound = bound_to(trip, item);
        if (!bound)
            continue;
        loads.item_bearer[k] = *bound;
        if (packed_ashore(trip, inputs.brought, k))
            bearers[loads.item_bearer[k]].own_mg += static_cast<double>(item_mg(item));
    }
    const std::vector<Bundle> bundles = bundles_of(trip, inputs.brought);
    std::vector<SharedThing> things;
    things.reserve(bundles.size() + inputs.assumed.craft.size() + 1);
    for (const Bundle& bundle : bundles)
        things.push_back(bundle.thing);
    for (const AssumedCraft& craft : inputs.assumed.craft)
        things.push_back({craft.mass_kg * mg_per_kg, craft.crew});
    const SupplyStage& first = inputs.provisions.stages.front();
    const double container_mg = first.containers * inputs.assumed.fuel.container_kg * mg_per_kg;
    things.push_back({static_cast<double>(first.fuel_mg) + container_mg}); // last: see fuel_bearer
    const double packaging = 1.0 + inputs.assumed.food.packaging;
    const auto pool_mg = [&](const SupplyStage& stage) {
        return static_cast<double>(stage.food_mg + stage.reserve_mg) * packaging;
    };
    loads.shared = share_out(bearers, things, pool_mg(first));
    for (std::size_t t = 0; t < bundles.size(); ++t)
        for (const std::size_t k : bundles[t].items)
            loads.item_bearer[k] = loads.shared.bearer[t];
    for (std::size_t c = 0; c < inputs.assumed.craft.size(); ++c)
        loads.craft_bearer.push_back(loads.shared.bearer[bundles.size() + c]);
    for (std::size_t t = 0; t < things.size(); ++t)
        bearers[loads.shared.bearer[t]].own_mg += things[t].mass_mg;
    for (const SupplyStage& stage : inputs.provisions.stages)
        loads.stage_share.push_back(level_out(bearers, pool_mg(stage)));
}

} // namespace tumpline::planner
