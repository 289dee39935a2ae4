#include "planner/loads/portage.h"

#include "planner/journey/pace.h"
#include "planner/loads/limits.h"
#include "planner/quantities/milligrams.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <iterator>
#include <limits>
#include <utility>

namespace tumpline::planner {

namespace {

constexpr std::array<double, 4> all_carries{1.0, 1.5, 2.0, 3.0};

/// One way of doing it, before one is taken.
struct Candidate {
    BoatState boats;
    std::vector<Piece>* pieces; ///< of its loads
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

constexpr std::array<CarryBy, 3> all_hands{CarryBy::hands, CarryBy::two, CarryBy::cart};

/// A way of taking boats and heavy pieces.
struct Taking {
    BoatState boats;
    CarryBy by;
};

/// The pieces with the boats in either state; as the ends of those that two may carry, once asked.
class PieceSets {
  public:
    explicit PieceSets(PortageInputs& inputs)
        : one_back_{&inputs.rolled_pieces, &inputs.whole_pieces} {}

    [[nodiscard]] std::vector<Piece>& of(const Taking& taking) {
        const std::size_t set = taking.boats == BoatState::rolled ? 0 : 1;
        if (taking.by != CarryBy::two)
            return *one_back_[set];
        if (!ends_[set])
            ends_[set] = as_two_ends(*one_back_[set]);
        return *ends_[set];
    }

  private:
    std::array<std::vector<Piece>*, 2> one_back_;
    std::array<std::optional<std::vector<Piece>>, 2> ends_;
};

bool same_pieces(const std::vector<Piece>& a, const std::vector<Piece>& b) {
    return std::equal(a.begin(), a.end(), b.begin(), b.end(), [](const Piece& x, const Piece& y) {
        return x.owner == y.owner && x.name == y.name;
    });
}

/// The ways of doing a portage with the boats in one state and heavy pieces borne in one way.
class Ways {
  public:
    Ways(const PortageInputs& inputs, PieceSets& sets, const Taking& taking)
        : in_(inputs), sets_(sets), taking_(taking), rolled_(taking.boats == BoatState::rolled),
          limits_kg_(portage_limits(inputs.assumed)) {}

    /// All that there are, by lengths.
    [[nodiscard]] std::vector<Candidate> all() const {
        std::vector<Candidate> made;
        for (const double carries : all_carries)
            if (offered(carries))
                made.push_back(way(carries));
        return made;
    }

    /// Only this one, if there is such.
    [[nodiscard]] std::vector<Candidate> only(double carries) const {
        std::vector<Candidate> made;
        if (offered(carries))
            made.push_back(way(carries));
        return made;
    }

    /// Those from which the one to be taken is chosen: up to the first within the limits; if there
    /// is none, without those that cannot come nearest to them. By lengths.
    [[nodiscard]] std::vector<Candidate> to_choose_from() const {
        std::vector<Candidate> made;
        std::vector<double> hopeless;
        for (const double carries : all_carries) {
            if (!offered(carries) || !asked_for(carries, in_.leg, limits_kg_.size()))
                continue;
            if (!least(carries).may_keep_limits) {
                hopeless.push_back(carries);
                continue;
            }
            made.push_back(way(carries));
            if (made.back().within)
                return made; // those with more lengths would not be taken, nor those before it
        }
        double nearest = std::numeric_limits<double>::infinity();
        for (const Candidate& one : made)
            nearest = std::min(nearest, one.relay.heaviest_ratio);
        for (std::size_t k = hopeless.size(); k-- > 0;) { // the more lengths, the lighter
            constexpr double rounding = 1e-6;
            if (least(hopeless[k]).heaviest_ratio > nearest + rounding)
                continue;
            made.push_back(way(hopeless[k]));
            nearest = std::min(nearest, made.back().relay.heaviest_ratio);
        }
        std::sort(made.begin(), made.end(), [](const Candidate& a, const Candidate& b) {
            return a.relay.carries < b.relay.carries;
        });
        return made;
    }

  private:
    [[nodiscard]] bool offered(double carries) const {
        if (!offers_carries(carries, limits_kg_.size()) ||
            (taking_.by == CarryBy::cart && !in_.leg.cart.value_or(false)))
            return false;
        return offers(
            taking_.by, rolled_ ? in_.rolled_pieces : in_.whole_pieces, limits_kg_.size(), carries);
    }

    [[nodiscard]] LeastCarry least(double carries) const {
        return least_carry(sets_.of(taking_), limits_kg_, carries, taking_.by);
    }

    [[nodiscard]] Candidate way(double carries) const {
        std::vector<Piece>& pieces = sets_.of(taking_);
        Candidate made{taking_.boats, &pieces, {}, {}, 0.0, 0.0, false};
        if (carries == 1.0 && rolled_ && taking_.by == CarryBy::hands)
            made.relay = own_packs(pieces, limits_kg_);
        else if (is_kept(carries))
            made.relay = weigh_again(in_.kept->relay, pieces, limits_kg_);
        else
            made.relay = make_loads(pieces, limits_kg_, carries, taking_.by);
        const Passes passes(
            made.relay, pieces, in_, rolled_ ? in_.rolled_worn_kg : in_.whole_worn_kg);
        made.member_s = passes.walking_times();
        made.moving_s = *std::max_element(made.member_s.begin(), made.member_s.end());
        made.change_s = rolled_ ? in_.rolled_change_s : in_.whole_change_s;
        made.within = within_limits(made.relay, limits_kg_);
        return made;
    }

    /// Whether the loads of before are of the same pieces, taken in the same way.
    [[nodiscard]] bool is_kept(double carries) const {
        return in_.kept && in_.kept->boats == taking_.boats && in_.kept->relay.carries == carries &&
               in_.kept->relay.by == taking_.by && same_pieces(in_.kept->pieces, sets_.of(taking_));
    }

    const PortageInputs& in_;
    PieceSets& sets_;
    Taking taking_;
    bool rolled_;
    std::vector<double> limits_kg_;
};

std::vector<Candidate> candidates(const PortageInputs& inputs, PieceSets& sets) {
    const auto can_be = [&](BoatState boats) {
        return boats == BoatState::rolled ? inputs.may_roll : inputs.may_whole;
    };
    if (inputs.pinned && !inputs.every_way && can_be(inputs.pinned->boats)) {
        std::vector<Candidate> one = Ways(inputs, sets, {inputs.pinned->boats, inputs.pinned->by})
                                         .only(inputs.pinned->carries);
        if (!one.empty())
            return one;
    }
    std::vector<Candidate> all;
    for (const BoatState boats : {BoatState::rolled, BoatState::whole}) {
        const bool rolled = boats == BoatState::rolled;
        const BoatState other = rolled ? BoatState::whole : BoatState::rolled;
        const BoatOnCarry asks_other = rolled ? BoatOnCarry::whole : BoatOnCarry::rolled;
        if (!can_be(boats) ||
            (!inputs.every_way && inputs.leg.boat_on_carry == asks_other && can_be(other)))
            continue; // or the other is asked for, and can be had
        for (const CarryBy by : all_hands) {
            const Ways ways(inputs, sets, {boats, by});
            std::vector<Candidate> some = inputs.every_way ? ways.all() : ways.to_choose_from();
            std::move(some.begin(), some.end(), std::back_inserter(all));
        }
    }
    return all;
}

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

/// The hands that the leg asks for, where they can be had with its carries and its boats.
std::optional<CarryBy> asked_hands(const std::vector<Candidate>& all, const TripLeg& leg) {
    const auto other = [&](BoatState boats) {
        return boats == BoatState::rolled ? BoatOnCarry::whole : BoatOnCarry::rolled;
    };
    const bool had = std::any_of(all.begin(), all.end(), [&](const Candidate& one) {
        return one.relay.by == leg.carry_by && leg.boat_on_carry != other(one.boats) &&
               asked_for(one.relay.carries, leg, one.member_s.size());
    });
    return had ? leg.carry_by : std::nullopt;
}

/// Of hands, two to a piece and a cart the quickest within the limits; else the lightest.
const Candidate* best_of(const std::vector<Candidate>& all, const TripLeg& leg, BoatState boats) {
    const std::optional<CarryBy> asked = asked_hands(all, leg);
    const Candidate* best = nullptr;
    for (const CarryBy by : all_hands) {
        const Candidate* one = best_of(all, leg, {boats, by});
        if (!one || (asked && by != *asked))
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

PortagePlan plan_portage(PortageInputs inputs) {
    PieceSets sets(inputs);
    std::vector<Candidate> all = candidates(inputs, sets);
    const Candidate* taken = choose(all, inputs.leg);
    for (const Candidate& candidate : all)
        if (inputs.pinned && candidate.boats == inputs.pinned->boats &&
            candidate.relay.carries == inputs.pinned->carries &&
            candidate.relay.by == inputs.pinned->by)
            taken = &candidate;
    PortagePlan plan;
    plan.boats = taken->boats;
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
    // Nothing is asked of the ways any more: what the one taken is made of goes into the plan.
    Candidate& way = all[static_cast<std::size_t>(taken - all.data())];
    plan.pieces = std::move(*way.pieces);
    plan.worn_kg =
        std::move(way.boats == BoatState::rolled ? inputs.rolled_worn_kg : inputs.whole_worn_kg);
    plan.relay = std::move(way.relay);
    plan.member_s = std::move(way.member_s);
    plan.moving_s = way.moving_s;
    return plan;
}

} // namespace tumpline::planner
