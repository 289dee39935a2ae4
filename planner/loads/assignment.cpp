#include "planner/loads/assignment.h"

#include "planner/loads/kit_masses.h"
#include "planner/loads/limits.h"
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

/// Who bears things of one container: whom one of them must stay with, else their one owner.
void find_holder(TiedItems& tied, const Trip& trip) {
    std::optional<std::size_t> owner;
    bool several = false;
    bool of_party = tied.holds_food;
    for (const std::size_t k : tied.items) {
        const KitItem& item = trip.kit[k];
        if (!item.bearer.empty()) {
            tied.holder = member_named(trip, item.bearer);
            return;
        }
        const std::optional<std::size_t> bound = bound_to(trip, item);
        several = several || (bound && owner && *bound != *owner);
        of_party = of_party || !bound;
        if (bound)
            owner = bound;
    }
    if (several)
        return;
    tied.holder = owner;
    tied.may_wander = owner && of_party;
}

/// What is to be shared out, the fuel last.
struct Shares {
    std::vector<Bearer> bearers;
    std::vector<const TiedItems*> tied; ///< of the first things
    std::vector<SharedThing> things;
    double pool_mg;
};

/// Food, reserve and packaging of a stage.
double stage_food_mg(const LoadInputs& inputs, const SupplyStage& stage) {
    return static_cast<double>(stage.packed_mg() + stage.reserve_mg) *
           (1.0 + inputs.assumed.food.packaging);
}

/// Of the stage with the most: a container stays with its bearer.
double most_food_mg(const LoadInputs& inputs) {
    double most = 0.0;
    for (const SupplyStage& stage : inputs.provisions.stages)
        most = std::max(most, stage_food_mg(inputs, stage));
    return most;
}

Shares shares_of(const LoadInputs& inputs, const std::vector<TiedItems>& all) {
    Shares shares;
    for (const AssumedMember& member : inputs.assumed.members)
        shares.bearers.push_back({.own_mg = inputs.water.fill_l.front() * mg_per_kg,
                                  .limit_mg = member.walk_limit_kg * mg_per_kg});
    shares.pool_mg = stage_food_mg(inputs, inputs.provisions.stages.front());
    for (const TiedItems& tied : all) {
        auto mass_mg = static_cast<double>(tied.mass_mg);
        if (tied.holds_food) {
            mass_mg += most_food_mg(inputs);
            shares.pool_mg = 0.0;
        }
        if (tied.holder && !tied.may_wander) {
            shares.bearers[*tied.holder].own_mg += mass_mg;
            continue;
        }
        shares.tied.push_back(&tied);
        shares.things.push_back({mass_mg});
    }
    for (const AssumedCraft& craft : inputs.assumed.craft)
        shares.things.push_back({craft.mass_kg * mg_per_kg, craft.crew});
    const SupplyStage& first = inputs.provisions.stages.front();
    const double container_mg = first.containers * inputs.assumed.fuel.container_kg * mg_per_kg;
    shares.things.push_back(
        {static_cast<double>(first.fuel_packed_mg()) + container_mg}); // see fuel_bearer
    return shares;
}

/// What lies in a member's own container stays there, unless that breaks a limit that another
/// sharing keeps better.
SharedOut share_keeping_own(const Shares& shares) {
    std::vector<SharedThing> kept = shares.things;
    bool any = false;
    for (std::size_t t = 0; t < shares.tied.size(); ++t)
        if (shares.tied[t]->holder) {
            kept[t].may_bear = {*shares.tied[t]->holder};
            any = true;
        }
    SharedOut with_owners = share_out(shares.bearers, kept, shares.pool_mg);
    if (!any || with_owners.heaviest_ratio <= 1.0)
        return with_owners;
    SharedOut freely = share_out(shares.bearers, shares.things, shares.pool_mg);
    return freely.heaviest_ratio < with_owners.heaviest_ratio - 1e-9 ? freely : with_owners;
}

} // namespace

std::optional<std::size_t> bound_to(const Trip& trip, const KitItem& item) {
    const std::string& holder = item.owner.empty() ? item.bearer : item.owner;
    if (holder.empty())
        return {};
    return member_named(trip, holder);
}

bool packed_ashore(const Trip& trip, const std::vector<bool>& brought, std::size_t item) {
    return brought[item] && trip.kit[item].ashore == ItemUse::packed;
}

std::size_t fuel_bearer(const Loads& loads) {
    return loads.shared.bearer.back();
}

std::vector<TiedItems> tie_items(const Trip& trip, const std::vector<bool>& brought) {
    std::vector<TiedItems> all;
    const auto container = [&](const std::string& name) {
        return std::find_if(all.begin(), all.end(), [&](const TiedItems& tied) {
            return tied.name == name && trip.kit[tied.items.front()].piece == name;
        });
    };
    for (std::size_t k = 0; k < trip.kit.size(); ++k) {
        if (!brought[k])
            continue;
        const KitItem& item = trip.kit[k];
        const auto same = item.piece.empty() ? all.end() : container(item.piece);
        TiedItems& tied = same != all.end() ? *same : all.emplace_back();
        tied.name = item.piece.empty() ? item.name : item.piece;
        tied.items.push_back(k);
        if (packed_ashore(trip, brought, k))
            tied.mass_mg += item_mg(item);
    }
    if (const std::string& name = trip.food.piece; !name.empty()) {
        const auto same = container(name);
        TiedItems& tied = same != all.end() ? *same : all.emplace_back();
        tied.name = name;
        tied.holds_food = true;
    }
    for (TiedItems& tied : all)
        find_holder(tied, trip);
    return all;
}

void share_things(const LoadInputs& inputs, Loads& loads) {
    if (inputs.shared) {
        loads.shared = inputs.shared->shared;
        loads.tied = inputs.shared->tied;
        loads.item_bearer = inputs.shared->item_bearer;
        loads.item_user = inputs.shared->item_user;
        loads.craft_bearer = inputs.shared->craft_bearer;
        loads.stage_share = inputs.shared->stage_share;
        return;
    }
    const Trip& trip = inputs.trip;
    loads.tied = tie_items(trip, inputs.brought);
    Shares shares = shares_of(inputs, loads.tied);
    loads.shared = share_keeping_own(shares);
    loads.item_bearer.assign(trip.kit.size(), 0);
    std::optional<std::size_t> food_bearer;
    std::size_t thing = 0;
    for (const TiedItems& tied : loads.tied) {
        const std::size_t bearer =
            tied.holder && !tied.may_wander ? *tied.holder : loads.shared.bearer[thing++];
        for (const std::size_t k : tied.items)
            loads.item_bearer[k] = bearer;
        if (tied.holds_food)
            food_bearer = bearer;
    }
    loads.item_user = loads.item_bearer;
    for (std::size_t k = 0; k < trip.kit.size(); ++k)
        loads.item_user[k] = bound_to(trip, trip.kit[k]).value_or(loads.item_bearer[k]);
    for (std::size_t c = 0; c < inputs.assumed.craft.size(); ++c)
        loads.craft_bearer.push_back(loads.shared.bearer[thing++]);
    for (std::size_t t = 0; t < shares.things.size(); ++t)
        shares.bearers[loads.shared.bearer[t]].own_mg += shares.things[t].mass_mg;
    for (const SupplyStage& stage : inputs.provisions.stages) {
        if (food_bearer) {
            loads.stage_share.emplace_back(inputs.assumed.members.size(), 0.0);
            loads.stage_share.back()[*food_bearer] = 1.0;
        } else {
            loads.stage_share.push_back(level_out(shares.bearers, stage_food_mg(inputs, stage)));
        }
    }
}

} // namespace tumpline::planner
