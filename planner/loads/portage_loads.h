#pragma once

#include "planner/loads/ledger.h"
#include "planner/trip/trip.h"

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace tumpline::planner {

/// Something carried over a portage in one piece.
struct Piece {
    std::string name;
    std::size_t owner;       ///< in whose pack it is where nothing is packed anew
    PartMasses parts{};      ///< what it is made of
    std::int64_t mass_mg{0}; ///< all of them
    bool boat{false}; ///< a craft with what is lashed to it: one person carries it, nobody helps
    std::optional<std::size_t> whose{};  ///< whose own thing it is; empty: the party's
    std::vector<std::string> lashed{};   ///< to a boat: names of things
    int bearers{1};                      ///< 2: two may carry it, one at each end
    std::optional<std::size_t> end_of{}; ///< one end of a piece that two carry: its number
    double cart_payload_kg{0.0};         ///< of a cart; 0: it is none

    void add(Part part, std::int64_t more_mg) {
        parts[static_cast<std::size_t>(part)] += more_mg;
        mass_mg += more_mg;
    }

    [[nodiscard]] bool holds(Part part) const { return parts[static_cast<std::size_t>(part)] > 0; }

    /// Fuel, water and waste go into as many packs as one likes.
    [[nodiscard]] bool divisible() const {
        return !holds(Part::kit) && !holds(Part::craft) && !holds(Part::food);
    }
};

/// One load: what one person carries at a time, or what lies on the cart that they then pull.
struct PortageLoad {
    std::vector<std::size_t> pieces; ///< indices
    std::int64_t mass_mg;
    std::size_t bearer;
    std::size_t relay;           ///< who takes it over at half way; the bearer if nobody does
    int turn{0};                 ///< loads of one turn go over together
    double cart_payload_kg{0.0}; ///< of the cart on which it lies; 0: on the back

    [[nodiscard]] bool rolls() const { return cart_payload_kg > 0.0; }
};

/// The lower limit of whoever carries a load; of one on a cart what the cart takes.
[[nodiscard]] double load_limit_kg(const PortageLoad& load, const std::vector<double>& limits_kg);

/// A way of taking all pieces over.
struct CarryPlan {
    double carries; ///< loads per person: 1, 1.5, 2, 3
    std::vector<PortageLoad> loads;
    double heaviest_ratio; ///< of a load over its bearer's limit
    std::size_t heaviest;  ///< index into loads
    CarryBy by{CarryBy::hands};
};

/// Two who carry one piece between them walk as the slower of them would, and longer by this.
/// Common practice, no source.
inline constexpr double two_time_factor = 1.25;

/// Whoever pulls a cart takes longer by this. Common practice, no source.
inline constexpr double cart_time_factor = 1.15;

/// What a cart weighs upon whoever pulls it, as if carried: a tenth of its load on the level, and
/// of the rest the share by which the way rises. Common practice, no source.
inline constexpr double cart_drag_share = 0.1;

/// What a load's bearer pulls behind, in the same turn: the mass on the cart and the cart.
[[nodiscard]] std::int64_t pulled_mg(const CarryPlan& relay, const PortageLoad& load);

/// The pieces with each that two may carry as its two ends.
[[nodiscard]] std::vector<Piece> as_two_ends(const std::vector<Piece>& pieces);

/// Whether pieces can go so over a portage: two need each other, a cart somebody who has it, and
/// every pair carries one piece a turn.
[[nodiscard]] bool
offers(CarryBy by, const std::vector<Piece>& pieces, std::size_t members, double carries);

/// Whether so many carries make sense for a party: one and a half needs two to relay.
[[nodiscard]] bool offers_carries(double carries, std::size_t members);

/// Route lengths each person walks for K loads and N carriers who relay them: 2 K/N - 1.
/// Source: docs/carries.md (derived; the trade's single, one and a half, double, triple).
[[nodiscard]] double lengths_of(double carries);

/// What no way of making so many loads can better.
struct LeastCarry {
    double heaviest_ratio; ///< of a load over its bearer's limit; 0 if nothing is known
    bool may_keep_limits;  ///< false: some load is over its limit, however the loads are made
};

/// By all pieces together beside all limits, and the heaviest piece beside the highest limit. By
/// two: of pieces as two ends.
[[nodiscard]] LeastCarry least_carry(const std::vector<Piece>& pieces,
                                     const std::vector<double>& limits_kg,
                                     double carries,
                                     CarryBy by = CarryBy::hands);

/// Loads made before, of these pieces with the masses that they have now.
[[nodiscard]] CarryPlan weigh_again(const CarryPlan& before,
                                    const std::vector<Piece>& pieces,
                                    const std::vector<double>& limits_kg);

/// Makes K = carries x N loads of the pieces so that the heaviest load over its bearer's limit is
/// as small as a deterministic search finds: heaviest piece first into the lightest relative load,
/// then moves and exchanges while they help. Own things are in a load that their owner alone
/// carries, unless a limit is kept, or broken by less, where another takes them. By two: of pieces
/// as two ends, the strongest two take the first such piece. By cart: the strongest pulls it, and
/// it bears what levels the loads best, within its payload.
[[nodiscard]] CarryPlan make_loads(const std::vector<Piece>& pieces,
                                   const std::vector<double>& limits_kg,
                                   double carries,
                                   CarryBy by = CarryBy::hands);

} // namespace tumpline::planner
