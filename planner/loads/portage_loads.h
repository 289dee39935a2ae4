#pragma once

#include "planner/loads/ledger.h"

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace tumpline::planner {

/// Something carried over a portage in one piece.
struct Piece {
    std::string name;
    std::size_t owner;       ///< in whose pack it is where nothing is packed anew
    PartMasses parts{};      ///< what it is made of
    std::int64_t mass_mg{0}; ///< all of them
    bool boat{false}; ///< a craft with what is lashed to it: one person carries it, nobody helps
    std::optional<std::size_t> whose{}; ///< whose own thing it is; empty: the party's
    std::vector<std::string> lashed{};  ///< to a boat: names of things

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

/// One load: what one person carries at a time.
struct PortageLoad {
    std::vector<std::size_t> pieces; ///< indices
    std::int64_t mass_mg;
    std::size_t bearer;
    std::size_t relay; ///< who takes it over at half way; the bearer if nobody does
};

/// The lower limit of whoever carries a load.
[[nodiscard]] double load_limit_kg(const PortageLoad& load, const std::vector<double>& limits_kg);

/// A way of taking all pieces over.
struct CarryPlan {
    double carries; ///< loads per person: 1, 1.5, 2, 3
    std::vector<PortageLoad> loads;
    double heaviest_ratio; ///< of a load over its bearer's limit
    std::size_t heaviest;  ///< index into loads
};

/// Whether so many carries make sense for a party: one and a half needs two to relay.
[[nodiscard]] bool offers_carries(double carries, std::size_t members);

/// Route lengths each person walks for K loads and N carriers who relay them: 2 K/N - 1.
/// Source: docs/carries.md (derived; the trade's single, one and a half, double, triple).
[[nodiscard]] double lengths_of(double carries);

/// Makes K = carries x N loads of the pieces so that the heaviest load over its bearer's limit is
/// as small as a deterministic search finds: heaviest piece first into the lightest relative load,
/// then moves and exchanges while they help. Own things are in a load that their owner alone
/// carries, unless a limit is kept, or broken by less, where another takes them.
[[nodiscard]] CarryPlan
make_loads(const std::vector<Piece>& pieces, const std::vector<double>& limits_kg, double carries);

} // namespace tumpline::planner
