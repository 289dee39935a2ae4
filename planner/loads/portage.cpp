#include "planner/loads/portage.h"

#include "planner/journey/pace.h"
#include "planner/loads/limits.h"
#include "planner/quantities/milligrams.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

namespace tumpline::planner {

namespace {

constexpr std::array<double, 4> all_carries{1.0, 1.5, 2.0, 3.0};

/// One way of doing it, before one is taken.
struct Candidate {
    BoatState boats;
    CarryPlan relay;
    std::vector<double> member_s;
    double moving_s;
    double change_s;
    bool within;
};

std::vector<double> portage_limits(const Assumed& assumed) {
    std::vector<double> limits;
    for (const AssumedMember& member : assumed.members)
        limits.push_back(member.portage_limit_kg);
    return limits;
}

bool within_limits(const CarryPlan& relay, const std::vector<double>& limits_kg) {
    return std::none_of(relay.loads.begin(), relay.loads.end(), [&](const PortageLoad& load) {
        return over_limit(mg_to_kg(load.mass_mg), load_limit_kg(load, limits_kg));
    });
}

/// Everyone carries their own, nothing is packed anew.
CarryPlan own_packs(const std::vector<Piece>& pieces, const std::vector<double>& limits_kg) {
    CarryPlan relay{};
    relay.carries = 1.0;
    for (std::size_t m = 0; m < limits_kg.size(); ++m) {
        PortageLoad load{{}, 0, m, m};
        for (std::size_t p = 0; p < pieces.size(); ++p) {
            if (pieces[p].owner != m)
                continue;
            load.pieces.push_back(p);
            load.mass_mg += pieces[p].mass_mg;
        }
        const double ratio = mg_to_kg(load.mass_mg) / limits_kg[m];
        if (ratio > relay.heaviest_ratio) {
            relay.heaviest_ratio = ratio;
            relay.heaviest = m;
        }
        relay.loads.push_back(std::move(load));
    }
    return relay;
}

/// Walking time of each member: loaded over the shares of the way, empty back for the next load.
std::vector<double> walking_times(const CarryPlan& relay,
                                  const PortageInputs& inputs,
                                  const std::vector<double>& worn_kg) {
    const std::size_t members = inputs.assumed.members.size();
    std::vector<double> time_s(members, 0.0);
    std::vector<double> loaded(members, 0.0);
    std::vector<AssumedMember> walkers;
    for (std::size_t m = 0; m < members; ++m)
        walkers.push_back(member_on(inputs.assumed, inputs.index, m));
    const auto carry = [&](std::size_t m, const PortageLoad& load, double share) {
        const double kg = mg_to_kg(load.mass_mg) + worn_kg[m];
        time_s[m] += share * walk_s(inputs.stretch, walkers[m], inputs.assumed.models, {kg, kg});
        loaded[m] += share;
    };
    for (const PortageLoad& load : relay.loads) {
        if (load.pieces.empty())
            continue;
        if (load.bearer == load.relay) {
            carry(load.bearer, load, 1.0);
        } else {
            carry(load.bearer, load, 0.5);
            carry(load.relay, load, 0.5);
        }
    }
    for (std::size_t m = 0; m < members; ++m) {
        if (loaded[m] == 0.0)
            carry(m, PortageLoad{}, 1.0); // someone with nothing to carry still walks over
        const double empty = std::max(0.0, loaded[m] - 1.0);
        time_s[m] += empty * walk_back_s(inputs.stretch,
                                         walkers[m],
                                         inputs.assumed.models,
                                         {worn_kg[m], worn_kg[m]});
    }
    return time_s;
}

/// One and a half asked of a single person means two: there is nobody to relay with.
bool asked_for(double carries, const TripLeg& leg, std::size_t members) {
    if (!leg.carries)
        return true;
    return carries ==
           (offers_carries(*leg.carries, members) ? *leg.carries : std::ceil(*leg.carries));
}

std::vector<Candidate> candidates(const PortageInputs& inputs) {
    const std::vector<double> limits_kg = portage_limits(inputs.assumed);
    const bool all_ways = inputs.every_way || inputs.pinned;
    std::vector<Candidate> all;
    for (const BoatState boats : {BoatState::rolled, BoatState::whole}) {
        const bool rolled = boats == BoatState::rolled;
        if (rolled ? !inputs.may_roll : !inputs.may_whole)
            continue;
        const BoatOnCarry other = rolled ? BoatOnCarry::whole : BoatOnCarry::rolled;
        if (!all_ways && inputs.leg.boat_on_carry == other &&
            (rolled ? inputs.may_whole : inputs.may_roll))
            continue; // the other is asked for, and can be had
        const std::vector<Piece>& pieces = rolled ? inputs.rolled_pieces : inputs.whole_pieces;
        for (const double carries : all_carries) {
            if (!offers_carries(carries, limits_kg.size()) ||
                (!all_ways && !asked_for(carries, inputs.leg, limits_kg.size())))
                continue;
            Candidate candidate{boats, {}, {}, 0.0, 0.0, false};
            candidate.relay = carries == 1.0 && rolled ? own_packs(pieces, limits_kg)
                                                       : make_loads(pieces, limits_kg, carries);
            candidate.member_s = walking_times(
                candidate.relay, inputs, rolled ? inputs.rolled_worn_kg : inputs.whole_worn_kg);
            candidate.moving_s =
                *std::max_element(candidate.member_s.begin(), candidate.member_s.end());
            candidate.change_s = rolled ? inputs.rolled_change_s : inputs.whole_change_s;
            candidate.within = within_limits(candidate.relay, limits_kg);
            all.push_back(std::move(candidate));
            if (!all_ways && all.back().within)
                break; // those with more lengths would not be taken
        }
    }
    return all;
}

/// Fewest lengths within the limits for one way of taking the boats; else the lightest.
const Candidate* best_of(const std::vector<Candidate>& all, const TripLeg& leg, BoatState boats) {
    const Candidate* best = nullptr;
    for (const Candidate& candidate : all) {
        if (candidate.boats != boats ||
            !asked_for(candidate.relay.carries, leg, candidate.member_s.size()))
            continue;
        if (!best || (candidate.within && !best->within) ||
            (candidate.within == best->within && !candidate.within &&
             candidate.relay.heaviest_ratio < best->relay.heaviest_ratio - 1e-9))
            best = &candidate; // candidates come by lengths: the first within the limits stays
    }
    return best;
}

const Candidate* choose(const std::vector<Candidate>& all, const TripLeg& leg) {
    const BoatOnCarry spec = leg.boat_on_carry.value_or(BoatOnCarry::automatic);
    const Candidate* rolled = best_of(all, leg, BoatState::rolled);
    const Candidate* whole = best_of(all, leg, BoatState::whole);
    if (spec == BoatOnCarry::rolled && rolled)
        return rolled;
    if (spec == BoatOnCarry::whole && whole)
        return whole;
    if (!rolled || !whole)
        return rolled ? rolled : whole;
    if (rolled->within != whole->within)
        return rolled->within ? rolled : whole;
    const double rolled_s = rolled->moving_s + rolled->change_s;
    const double whole_s = whole->moving_s + whole->change_s;
    return rolled_s < whole_s ? rolled : whole;
}

} // namespace

PortagePlan plan_portage(const PortageInputs& inputs) {
    const std::vector<Candidate> all = candidates(inputs);
    const Candidate* taken = choose(all, inputs.leg);
    for (const Candidate& candidate : all)
        if (inputs.pinned && candidate.boats == inputs.pinned->boats &&
            candidate.relay.carries == inputs.pinned->carries)
            taken = &candidate;
    PortagePlan plan;
    plan.boats = taken->boats;
    plan.relay = taken->relay;
    plan.pieces = taken->boats == BoatState::rolled ? inputs.rolled_pieces : inputs.whole_pieces;
    plan.worn_kg = taken->boats == BoatState::rolled ? inputs.rolled_worn_kg : inputs.whole_worn_kg;
    plan.member_s = taken->member_s;
    plan.moving_s = taken->moving_s;
    for (const Candidate& candidate : all) {
        const CarryPlan& relay = candidate.relay;
        const PortageLoad& heaviest = relay.loads[relay.heaviest];
        const double lengths = lengths_of(relay.carries);
        plan.choices.push_back({.carries = relay.carries,
                                .rolled = candidate.boats == BoatState::rolled,
                                .lengths = lengths,
                                .walked_m = lengths * inputs.stretch.length_m(),
                                .moving_s = candidate.moving_s,
                                .changeover_s = candidate.change_s,
                                .heaviest_kg = mg_to_kg(heaviest.mass_mg),
                                .heaviest_member = inputs.party[heaviest.bearer].name,
                                .heaviest_ratio = relay.heaviest_ratio,
                                .within_limits = candidate.within,
                                .chosen = &candidate == taken});
    }
    const Candidate* rolled = best_of(all, inputs.leg, BoatState::rolled);
    const Candidate* whole = best_of(all, inputs.leg, BoatState::whole);
    if (rolled && whole && inputs.stretch.length_m() > 0.0) {
        // Both times grow with the length; where they meet, the change-overs are paid back.
        const double per_m = (whole->moving_s - rolled->moving_s) / inputs.stretch.length_m();
        const double spared_s = rolled->change_s - whole->change_s;
        constexpr double longest_m = 50'000.0; // beyond it both ways cost the same: no figure
        if (per_m > 0.0 && spared_s > 0.0 && spared_s / per_m <= longest_m)
            plan.break_even_m = spared_s / per_m;
    }
    return plan;
}

} // namespace tumpline::planner
