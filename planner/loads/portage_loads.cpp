#include "planner/loads/portage_loads.h"

#include "planner/loads/limits.h"
#include "planner/loads/minimax_sharing.h"
#include "planner/quantities/milligrams.h"

#include <algorithm>
#include <numeric>
#include <utility>

namespace tumpline::planner {

namespace {

/// Members by their limits.
std::vector<std::size_t> strongest_first(const std::vector<double>& limits_kg) {
    std::vector<std::size_t> order(limits_kg.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
        return limits_kg[a] > limits_kg[b];
    });
    return order;
}

/// Empty loads with their bearers: each member's own, then the ones that are fetched.
std::vector<PortageLoad> empty_loads(const std::vector<double>& limits_kg, double carries) {
    const std::size_t members = limits_kg.size();
    std::vector<PortageLoad> loads;
    const int whole = static_cast<int>(carries);
    for (int turn = 0; turn < whole; ++turn)
        for (std::size_t m = 0; m < members; ++m)
            loads.push_back({{}, 0, m, m, turn});
    if (carries > whole) { // the half: pairs relay one more load, the strongest with the next
        const std::vector<std::size_t> order = strongest_first(limits_kg);
        for (std::size_t k = 0; k + 1 < members; k += 2)
            loads.push_back({{}, 0, order[k], order[k + 1], whole});
    }
    return loads;
}

/// What rolls on each cart in each turn, behind the strongest; the cart itself in the first.
void add_carts(std::vector<PortageLoad>& loads,
               const std::vector<Piece>& pieces,
               const std::vector<double>& limits_kg,
               double carries) {
    const std::vector<std::size_t> order = strongest_first(limits_kg);
    std::size_t pullers = 0;
    for (const Piece& piece : pieces) {
        if (piece.cart_payload_kg <= 0.0 || pullers == order.size())
            continue;
        const std::size_t puller = order[pullers++];
        for (int turn = 0; turn < static_cast<int>(carries); ++turn)
            loads.push_back({{},
                             0,
                             puller,
                             puller,
                             turn,
                             piece.cart_payload_kg + (turn == 0 ? mg_to_kg(piece.mass_mg) : 0.0)});
    }
}

std::vector<PortageLoad> loads_to_fill(const std::vector<Piece>& pieces,
                                       const std::vector<double>& limits_kg,
                                       double carries,
                                       CarryBy by) {
    std::vector<PortageLoad> loads = empty_loads(limits_kg, carries);
    if (by == CarryBy::cart)
        add_carts(loads, pieces, limits_kg, carries);
    return loads;
}

/// Relative to its own limit; on a back, unless a cart bears more than it takes.
std::size_t heaviest_of(const std::vector<PortageLoad>& loads,
                        const std::vector<double>& load_limits_kg) {
    std::size_t worst = 0; // of the first member, on the back
    double worst_ratio = mg_to_kg(loads[0].mass_mg) / load_limits_kg[0];
    for (std::size_t l = 1; l < loads.size(); ++l) {
        const double mass_kg = mg_to_kg(loads[l].mass_mg);
        if (mass_kg / load_limits_kg[l] <= worst_ratio ||
            (loads[l].rolls() && !over_limit(mass_kg, load_limits_kg[l])))
            continue;
        worst = l;
        worst_ratio = mass_kg / load_limits_kg[l];
    }
    return worst;
}

/// Whether own things keep to loads that their owner alone carries.
enum class OwnThings { stay, wander };

bool is_home(const PortageLoad& load, const Piece& piece) {
    return !piece.whose || load.rolls() ||
           (load.bearer == *piece.whose && load.relay == *piece.whose);
}

/// The loads of a portage while pieces are put into them.
class Filling {
  public:
    Filling(const std::vector<Piece>& pieces,
            const std::vector<double>& limits_kg,
            std::vector<PortageLoad> empty)
        : pieces_(pieces), loads_(std::move(empty)) {
        for (const PortageLoad& load : loads_)
            limits_kg_.push_back(load_limit_kg(load, limits_kg));
        fix_ends(limits_kg);
        fix_carts();
    }

    void fill(OwnThings own) {
        std::vector<Bearer> bearers;
        bearers.reserve(loads_.size());
        for (const double limit_kg : limits_kg_) // nobody carries two boats at a time
            bearers.push_back({.own_mg = 0.0, .limit_mg = limit_kg * mg_per_kg, .room = 1.0});
        std::vector<SharedThing> things;
        things.reserve(pieces_.size());
        for (const Piece& piece : pieces_)
            things.push_back({.mass_mg = static_cast<double>(piece.mass_mg),
                              .may_bear = loads_for(piece, own),
                              .takes = piece.boat ? 1.0 : 0.0});
        std::vector<std::vector<std::size_t>> shares = share_by_exchanges(bearers, things);
        for (std::size_t l = 0; l < shares.size(); ++l) {
            loads_[l].pieces = std::move(shares[l]);
            loads_[l].mass_mg = 0;
            for (const std::size_t piece : loads_[l].pieces)
                loads_[l].mass_mg += pieces_[piece].mass_mg;
        }
        exchange_boats();
    }

    [[nodiscard]] double ratio(std::size_t load, std::int64_t more_mg = 0) const {
        return mg_to_kg(loads_[load].mass_mg + more_mg) / limits_kg_[load];
    }

    [[nodiscard]] std::size_t heaviest() const { return heaviest_of(loads_, limits_kg_); }

    [[nodiscard]] bool keeps_limits() const {
        for (std::size_t l = 0; l < loads_.size(); ++l)
            if (over_limit(mg_to_kg(loads_[l].mass_mg), limits_kg_[l]))
                return false;
        return true;
    }

    /// Own things go back to their owners, the heaviest first, as far as no load becomes heavier
    /// beside its limit than the heaviest is, or where all limits are kept, than the limit.
    void bring_home() {
        const double heaviest_ratio = ratio(heaviest());
        const double most = keeps_limits() ? std::max(1.0, heaviest_ratio) : heaviest_ratio;
        std::vector<std::size_t> order(pieces_.size());
        std::iota(order.begin(), order.end(), std::size_t{0});
        std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
            return pieces_[a].mass_mg > pieces_[b].mass_mg;
        });
        std::vector<std::size_t> holding(pieces_.size());
        for (std::size_t l = 0; l < loads_.size(); ++l)
            for (const std::size_t piece : loads_[l].pieces)
                holding[piece] = l;
        for (const std::size_t piece : order) {
            if (fixed_[piece])
                continue;
            PortageLoad& from = loads_[holding[piece]];
            if (is_home(from, pieces_[piece]))
                continue;
            for (const std::size_t home : loads_for(pieces_[piece], OwnThings::stay))
                if (ratio(home, pieces_[piece].mass_mg) <= most) {
                    move(piece, from, loads_[home]);
                    break;
                }
        }
    }

    [[nodiscard]] std::vector<PortageLoad> take() { return std::move(loads_); }

  private:
    /// Two boats change places where that brings one of them to whoever has it in the pack
    /// elsewhere, makes no load heavier than the heaviest by more than nobody feels, and takes none
    /// over its limit.
    void exchange_boats() {
        struct Place {
            std::size_t load;
            std::size_t* piece;
        };

        std::vector<Place> boats;
        for (std::size_t l = 0; l < loads_.size(); ++l)
            for (std::size_t& piece : loads_[l].pieces)
                if (pieces_[piece].boat && !fixed_[piece])
                    boats.push_back({l, &piece});
        if (boats.size() < 2)
            return;
        constexpr double unfelt = 0.01; // of a limit
        const double level = ratio(heaviest());
        const double most = keeps_limits() ? std::min(1.0, level + unfelt) : level;
        const auto at_home = [&](const Place& place, std::size_t piece) {
            return loads_[place.load].bearer == pieces_[piece].owner ? 1 : 0;
        };
        for (const Place& one : boats)
            for (const Place& other : boats) {
                if (at_home(one, *other.piece) + at_home(other, *one.piece) <=
                    at_home(one, *one.piece) + at_home(other, *other.piece))
                    continue;
                const std::int64_t more_mg =
                    pieces_[*other.piece].mass_mg - pieces_[*one.piece].mass_mg;
                if (ratio(one.load, more_mg) > most || ratio(other.load, -more_mg) > most)
                    continue;
                loads_[one.load].mass_mg += more_mg;
                loads_[other.load].mass_mg -= more_mg;
                std::swap(*one.piece, *other.piece);
            }
    }

    [[nodiscard]] std::size_t load_of(std::size_t member, int turn, bool rolls) const {
        const auto at = std::find_if(loads_.begin(), loads_.end(), [&](const PortageLoad& load) {
            return load.bearer == member && load.relay == member && load.turn == turn &&
                   load.rolls() == rolls;
        });
        return static_cast<std::size_t>(at - loads_.begin());
    }

    /// The two ends of a piece go in one turn: of the first piece with the strongest two, of the
    /// next with the next two.
    void fix_ends(const std::vector<double>& limits_kg) {
        fixed_.assign(pieces_.size(), {});
        const std::vector<std::size_t> order = strongest_first(limits_kg);
        std::size_t end = 0;
        for (std::size_t p = 0; p < pieces_.size() && order.size() >= 2; ++p) {
            if (!pieces_[p].end_of)
                continue;
            const std::size_t couple = end / 2;
            const std::size_t pairs = order.size() / 2;
            fixed_[p] = load_of(
                order[2 * (couple % pairs) + end % 2], static_cast<int>(couple / pairs), false);
            ++end;
        }
    }

    void fix_carts() {
        std::size_t cart = 0;
        std::vector<std::size_t> rolling;
        for (std::size_t l = 0; l < loads_.size(); ++l)
            if (loads_[l].rolls() && loads_[l].turn == 0)
                rolling.push_back(l);
        for (std::size_t p = 0; p < pieces_.size(); ++p)
            if (pieces_[p].cart_payload_kg > 0.0 && cart < rolling.size())
                fixed_[p] = rolling[cart++];
    }

    /// Those that may hold a piece; empty: any.
    [[nodiscard]] std::vector<std::size_t> loads_for(const Piece& piece, OwnThings own) const {
        std::vector<std::size_t> homes;
        if (const auto& load = fixed_[static_cast<std::size_t>(&piece - pieces_.data())])
            return {*load};
        if (own == OwnThings::stay && piece.whose)
            for (std::size_t l = 0; l < loads_.size(); ++l)
                if (is_home(loads_[l], piece))
                    homes.push_back(l);
        return homes;
    }

    void move(std::size_t piece, PortageLoad& from, PortageLoad& to) {
        from.pieces.erase(std::find(from.pieces.begin(), from.pieces.end(), piece));
        from.mass_mg -= pieces_[piece].mass_mg;
        to.pieces.push_back(piece);
        to.mass_mg += pieces_[piece].mass_mg;
    }

    const std::vector<Piece>& pieces_;
    std::vector<PortageLoad> loads_;
    std::vector<double> limits_kg_;                 ///< per load
    std::vector<std::optional<std::size_t>> fixed_; ///< per piece: its load, where it has no other
};

} // namespace

bool offers_carries(double carries, std::size_t members) {
    return carries == static_cast<int>(carries) || members >= 2;
}

double lengths_of(double carries) {
    return 2.0 * carries - 1.0;
}

std::int64_t pulled_mg(const CarryPlan& relay, const PortageLoad& load) {
    std::int64_t sum_mg = 0;
    for (const PortageLoad& other : relay.loads)
        if (other.rolls() && other.bearer == load.bearer && other.turn == load.turn)
            sum_mg += other.mass_mg;
    return load.rolls() ? 0 : sum_mg;
}

std::vector<Piece> as_two_ends(const std::vector<Piece>& pieces) {
    std::vector<Piece> ends;
    for (std::size_t p = 0; p < pieces.size(); ++p) {
        if (pieces[p].bearers < 2) {
            ends.push_back(pieces[p]);
            continue;
        }
        Piece bow = pieces[p];
        bow.end_of = p;
        Piece stern = bow;
        bow.mass_mg = stern.mass_mg = 0;
        for (std::size_t part = 0; part < bow.parts.size(); ++part) {
            bow.parts[part] = pieces[p].parts[part] / 2;
            stern.parts[part] = pieces[p].parts[part] - bow.parts[part];
            bow.mass_mg += bow.parts[part];
            stern.mass_mg += stern.parts[part];
        }
        ends.push_back(std::move(bow));
        ends.push_back(std::move(stern));
    }
    return ends;
}

bool offers(CarryBy by, const std::vector<Piece>& pieces, std::size_t members, double carries) {
    const auto turns = static_cast<std::size_t>(carries);
    switch (by) {
    case CarryBy::hands:
        return true;
    case CarryBy::two: {
        const auto pairs_of_hands = std::count_if(
            pieces.begin(), pieces.end(), [](const Piece& piece) { return piece.bearers >= 2; });
        return pairs_of_hands > 0 &&
               static_cast<std::size_t>(pairs_of_hands) <= turns * (members / 2);
    }
    case CarryBy::cart:
        return std::any_of(pieces.begin(), pieces.end(), [](const Piece& piece) {
            return piece.cart_payload_kg > 0.0;
        });
    }
    return false;
}

double load_limit_kg(const PortageLoad& load, const std::vector<double>& limits_kg) {
    if (load.rolls())
        return load.cart_payload_kg;
    return std::min(limits_kg[load.bearer], limits_kg[load.relay]);
}

LeastCarry least_carry(const std::vector<Piece>& pieces,
                       const std::vector<double>& limits_kg,
                       double carries,
                       CarryBy by) {
    double limit_kg = 0.0;
    double highest_kg = 0.0;
    const std::vector<PortageLoad> loads = loads_to_fill(pieces, limits_kg, carries, by);
    for (const PortageLoad& load : loads) {
        limit_kg += load_limit_kg(load, limits_kg);
        highest_kg = std::max(highest_kg, load_limit_kg(load, limits_kg));
    }
    std::int64_t sum_mg = 0;
    std::int64_t heaviest_mg = 0;
    for (const Piece& piece : pieces) {
        sum_mg += piece.mass_mg;
        heaviest_mg = std::max(heaviest_mg, piece.mass_mg);
    }
    const auto count = static_cast<double>(loads.size());
    constexpr double rounding_kg = 1e-9;
    return {by == CarryBy::cart // a full cart is not weighed beside backs: nothing is known of them
                ? 0.0
                : std::max(mg_to_kg(sum_mg) / limit_kg, mg_to_kg(heaviest_mg) / highest_kg),
            !over_limit(mg_to_kg(sum_mg) / count - rounding_kg, limit_kg / count) &&
                !over_limit(mg_to_kg(heaviest_mg), highest_kg)};
}

CarryPlan weigh_again(const CarryPlan& before,
                      const std::vector<Piece>& pieces,
                      const std::vector<double>& limits_kg) {
    CarryPlan again = before;
    std::vector<double> load_limits_kg;
    for (PortageLoad& load : again.loads) {
        load.mass_mg = 0;
        for (const std::size_t piece : load.pieces)
            load.mass_mg += pieces[piece].mass_mg;
        load_limits_kg.push_back(load_limit_kg(load, limits_kg));
    }
    again.heaviest = heaviest_of(again.loads, load_limits_kg);
    again.heaviest_ratio =
        mg_to_kg(again.loads[again.heaviest].mass_mg) / load_limits_kg[again.heaviest];
    return again;
}

CarryPlan make_loads(const std::vector<Piece>& pieces,
                     const std::vector<double>& limits_kg,
                     double carries,
                     CarryBy by) {
    const auto plan_of = [&](Filling&& filling) {
        CarryPlan relay{};
        relay.carries = carries;
        relay.by = by;
        relay.heaviest = filling.heaviest();
        relay.heaviest_ratio = filling.ratio(relay.heaviest);
        relay.loads = filling.take();
        return relay;
    };
    const Filling empty(pieces, limits_kg, loads_to_fill(pieces, limits_kg, carries, by));
    Filling own = empty;
    own.fill(OwnThings::stay);
    if (own.keeps_limits())
        return plan_of(std::move(own));
    Filling freely = empty;
    freely.fill(OwnThings::wander);
    if (!freely.keeps_limits() &&
        freely.ratio(freely.heaviest()) >= own.ratio(own.heaviest()) - 1e-9)
        return plan_of(std::move(own));
    freely.bring_home();
    return plan_of(std::move(freely));
}

} // namespace tumpline::planner
