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
    const std::vector<Piece>* pieces; ///< of its loads
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

bool shares_an_end(const std::vector<Piece>& pieces, const PortageLoad& a, const PortageLoad& b) {
    return std::any_of(a.pieces.begin(), a.pieces.end(), [&](std::size_t one) {
        return pieces[one].end_of &&
               std::any_of(b.pieces.begin(), b.pieces.end(), [&](std::size_t other) {
                   return pieces[other].end_of == pieces[one].end_of;
               });
    });
}

/// Times of the passes of a carry.
class Passes {
  public:
    Passes(const CarryPlan& relay,
           const std::vector<Piece>& pieces,
           const PortageInputs& inputs,
           const std::vector<double>& worn_kg)
        : relay_(relay), pieces_(pieces), inputs_(inputs), worn_kg_(worn_kg) {
        for (std::size_t m = 0; m < inputs.assumed.members.size(); ++m)
            walkers_.push_back(member_on(inputs.assumed, inputs.index, m));
    }

    /// Walking time of each member: loaded over the shares of the way, empty back for the next.
    [[nodiscard]] std::vector<double> walking_times() const;

  private:
    [[nodiscard]] double over_s(std::size_t member, double borne_kg) const {
        const double kg = borne_kg + worn_kg_[member];
        return walk_s(inputs_.stretch, walkers_[member], inputs_.assumed.models, {kg, kg});
    }

    /// One way over with a load, and with what is pulled behind it.
    [[nodiscard]] double pass_s(std::size_t member, const PortageLoad& load) const {
        const double pulled_kg = mg_to_kg(pulled_mg(relay_, load));
        const double drag_kg = pulled_kg * cart_drag(inputs_.stretch);
        return over_s(member, mg_to_kg(load.mass_mg) + drag_kg) *
               (pulled_kg > 0.0 ? cart_time_factor : 1.0);
    }

    /// With a piece between them two walk as the slower one would.
    [[nodiscard]] double together_s(const PortageLoad& load) const {
        double time_s = pass_s(load.bearer, load);
        double factor = 1.0;
        for (const PortageLoad& other : relay_.loads) {
            if (&other == &load || !shares_an_end(pieces_, load, other))
                continue;
            factor = two_time_factor;
            time_s = std::max(time_s, pass_s(other.bearer, other));
        }
        return factor * time_s;
    }

    const CarryPlan& relay_;
    const std::vector<Piece>& pieces_;
    const PortageInputs& inputs_;
    const std::vector<double>& worn_kg_;
    std::vector<AssumedMember> walkers_;
};

std::vector<double> Passes::walking_times() const {
    std::vector<double> time_s(walkers_.size(), 0.0);
    std::vector<double> loaded(walkers_.size(), 0.0);
    for (const PortageLoad& load : relay_.loads) {
        if (load.rolls() || (load.pieces.empty() && pulled_mg(relay_, load) == 0))
            continue;
        if (load.bearer == load.relay) {
            time_s[load.bearer] += together_s(load);
            loaded[load.bearer] += 1.0;
            continue;
        }
        for (const std::size_t m : {load.bearer, load.relay}) {
            time_s[m] += 0.5 * pass_s(m, load);
            loaded[m] += 0.5;
        }
    }
    for (std::size_t m = 0; m < walkers_.size(); ++m) {
        if (loaded[m] == 0.0) { // someone with nothing to carry still walks over
            time_s[m] += over_s(m, 0.0);
            loaded[m] = 1.0;
        }
        const double empty = std::max(0.0, loaded[m] - 1.0);
        time_s[m] += empty * walk_back_s(inputs_.stretch,
                                         walkers_[m],
                                         inputs_.assumed.models,
                                         {worn_kg_[m], worn_kg_[m]});
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

/// The pieces of every way, and as the ends of those that two may carry.
struct PieceSets {
    explicit PieceSets(const PortageInputs& inputs)
        : rolled(&inputs.rolled_pieces), whole(&inputs.whole_pieces),
          rolled_ends(as_two_ends(inputs.rolled_pieces)),
          whole_ends(as_two_ends(inputs.whole_pieces)) {}

    [[nodiscard]] const std::vector<Piece>& of(BoatState boats, CarryBy by) const {
        if (by == CarryBy::two)
            return boats == BoatState::rolled ? rolled_ends : whole_ends;
        return boats == BoatState::rolled ? *rolled : *whole;
    }

    const std::vector<Piece>* rolled;
    const std::vector<Piece>* whole;
    std::vector<Piece> rolled_ends;
    std::vector<Piece> whole_ends;
};

constexpr std::array<CarryBy, 3> all_hands{CarryBy::hands, CarryBy::two, CarryBy::cart};

/// Whether this portage can be done so.
bool offered(const PortageInputs& inputs, BoatState boats, CarryBy by, double carries) {
    if (by == CarryBy::cart && !inputs.leg.cart.value_or(false))
        return false;
    const bool rolled = boats == BoatState::rolled;
    return offers(by,
                  rolled ? inputs.rolled_pieces : inputs.whole_pieces,
                  inputs.assumed.members.size(),
                  carries);
}

/// Every number of carries with the boats in one state and borne in one way.
void add_candidates(std::vector<Candidate>& all,
                    const PortageInputs& inputs,
                    const PieceSets& sets,
                    BoatState boats,
                    CarryBy by) {
    const std::vector<double> limits_kg = portage_limits(inputs.assumed);
    const bool all_ways = inputs.every_way || inputs.pinned;
    const bool rolled = boats == BoatState::rolled;
    const std::vector<Piece>& pieces = sets.of(boats, by);
    for (const double carries : all_carries) {
        if (!offers_carries(carries, limits_kg.size()) || !offered(inputs, boats, by, carries) ||
            (!all_ways && !asked_for(carries, inputs.leg, limits_kg.size())))
            continue;
        Candidate candidate{boats, &pieces, {}, {}, 0.0, 0.0, false};
        candidate.relay = carries == 1.0 && rolled && by == CarryBy::hands
                              ? own_packs(pieces, limits_kg)
                              : make_loads(pieces, limits_kg, carries, by);
        const Passes passes(
            candidate.relay, pieces, inputs, rolled ? inputs.rolled_worn_kg : inputs.whole_worn_kg);
        candidate.member_s = passes.walking_times();
        candidate.moving_s =
            *std::max_element(candidate.member_s.begin(), candidate.member_s.end());
        candidate.change_s = rolled ? inputs.rolled_change_s : inputs.whole_change_s;
        candidate.within = within_limits(candidate.relay, limits_kg);
        all.push_back(std::move(candidate));
        if (!all_ways && all.back().within)
            break; // those with more lengths would not be taken
    }
}

std::vector<Candidate> candidates(const PortageInputs& inputs, const PieceSets& sets) {
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
        for (const CarryBy by : all_hands)
            add_candidates(all, inputs, sets, boats, by);
    }
    return all;
}

/// A way of taking boats and heavy pieces.
struct Taking {
    BoatState boats;
    CarryBy by;
};

/// Fewest lengths within the limits for one way of taking things; else the lightest.
const Candidate*
best_of(const std::vector<Candidate>& all, const TripLeg& leg, const Taking& taking) {
    const Candidate* best = nullptr;
    for (const Candidate& candidate : all) {
        if (candidate.boats != taking.boats || candidate.relay.by != taking.by ||
            !asked_for(candidate.relay.carries, leg, candidate.member_s.size()))
            continue;
        if (!best || (candidate.within && !best->within) ||
            (candidate.within == best->within && !candidate.within &&
             candidate.relay.heaviest_ratio < best->relay.heaviest_ratio - 1e-9))
            best = &candidate; // candidates come by lengths: the first within the limits stays
    }
    return best;
}

/// Of hands, two to a piece and a cart the quickest within the limits; else the lightest.
const Candidate* best_of(const std::vector<Candidate>& all, const TripLeg& leg, BoatState boats) {
    const Candidate* best = nullptr;
    for (const CarryBy by : all_hands) {
        const Candidate* one = best_of(all, leg, {boats, by});
        if (!one)
            continue;
        const bool better =
            !best || (one->within && !best->within) ||
            (one->within == best->within &&
             (one->within ? one->moving_s < best->moving_s - 1e-9
                          : one->relay.heaviest_ratio < best->relay.heaviest_ratio - 1e-9));
        if (better)
            best = one;
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

double cart_drag(const Stretch& stretch) {
    const double length_m = stretch.length_m();
    return cart_drag_share + (length_m > 0.0 ? stretch.ascent_m / length_m : 0.0);
}

PortagePlan plan_portage(const PortageInputs& inputs) {
    const PieceSets sets(inputs);
    const std::vector<Candidate> all = candidates(inputs, sets);
    const Candidate* taken = choose(all, inputs.leg);
    for (const Candidate& candidate : all)
        if (inputs.pinned && candidate.boats == inputs.pinned->boats &&
            candidate.relay.carries == inputs.pinned->carries &&
            candidate.relay.by == inputs.pinned->by)
            taken = &candidate;
    PortagePlan plan;
    plan.boats = taken->boats;
    plan.relay = taken->relay;
    plan.pieces = *taken->pieces;
    plan.worn_kg = taken->boats == BoatState::rolled ? inputs.rolled_worn_kg : inputs.whole_worn_kg;
    plan.member_s = taken->member_s;
    plan.moving_s = taken->moving_s;
    for (const Candidate& candidate : all) {
        const CarryPlan& relay = candidate.relay;
        const PortageLoad& heaviest = relay.loads[relay.heaviest];
        const double lengths = lengths_of(relay.carries);
        std::int64_t on_cart_mg = 0;
        for (const PortageLoad& load : relay.loads)
            if (load.rolls())
                on_cart_mg = std::max(on_cart_mg, load.mass_mg);
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
                                .chosen = &candidate == taken,
                                .by = relay.by,
                                .on_cart_kg = mg_to_kg(on_cart_mg)});
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
