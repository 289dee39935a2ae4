#pragma once

#include "planner/loads/ledger.h"

#include <cstddef>
#include <cstdint>
#include <string>
#include <vector>

namespace tumpline::planner {

/// Something carried over a portage in one piece.
struct Piece {
    std::string name;
    std::size_t owner; ///< whose account in the ledger it stands in
    Part part;
    std::int64_t mass_mg;
    bool boat; ///< a craft with what is lashed to it: one person carries it, nobody else helps
};

/// One load: what one person carries at a time.
struct PortageLoad {
    std::vector<std::size_t> pieces; ///< indices
    std::int64_t mass_mg;
    std::size_t bearer;
    std::size_t relay; ///< who takes it over at half way; the bearer if nobody does
};

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
/// then moves and exchanges while they help.
[[nodiscard]] CarryPlan
make_loads(const std::vector<Piece>& pieces, const std::vector<double>& limits_kg, double carries);

} // namespace tumpline::planner
