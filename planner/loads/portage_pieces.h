#pragma once

#include "planner/loads/booking.h"
#include "planner/loads/loads.h"
#include "planner/loads/portage_loads.h"

#include <vector>

namespace tumpline::planner {

/// What pieces are made of, besides the balances.
struct PieceSource {
    const Trip& trip;
    const Assumed& assumed;
    const std::vector<bool>& items_here; ///< per kit item: it comes, and was not left on the way
    const std::vector<bool>& craft_here; ///< per craft
    const Loads& loads;                  ///< who bears, wears and uses what
    const std::vector<bool>& wet;        ///< per craft
    const std::vector<bool>& item_wet;   ///< per kit item
    bool after_water; ///< boats carried whole are so with things as they are afloat
};

/// Everything to be carried over a portage, boats rolled into the packs or whole with what is used
/// in them lashed on. Whatever has the same "in" is one piece, whoever owns it, food included; food
/// without one comes in bags of at most 2 kg. What is worn is no piece. Masses add up to the
/// balances held.
[[nodiscard]] std::vector<Piece>
pieces_of(const PieceSource& source, const Booking& booking, BoatState boats);

/// What each member wears or has in hand on the portage.
[[nodiscard]] std::vector<double> worn_with(const PieceSource& source, BoatState boats);

} // namespace tumpline::planner
