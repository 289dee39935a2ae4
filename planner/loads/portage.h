#pragma once

#include "planner/loads/loads.h"

#include <vector>

namespace tumpline::planner {

/// What a portage's choices are made from.
struct PortageInputs {
    const TripLeg& leg;
    const Stretch& stretch;
    std::size_t index; ///< of the stretch
    const Assumed& assumed;
    const std::vector<Member>& party;
    std::vector<Piece> rolled_pieces; ///< with the boats in the packs
    std::vector<Piece> whole_pieces;  ///< with each boat a piece of its own
    std::vector<double> rolled_worn_kg;
    std::vector<double> whole_worn_kg;
    bool may_roll;  ///< every craft rolls up
    bool may_whole; ///< the boats are inflated when the portage begins, or never roll up
    double rolled_change_s;
    double whole_change_s;
    bool every_way; ///< work out every way for the table of choices, not only up to the one taken
    std::optional<PinnedCarry> pinned; ///< taken whatever the choice would be
    const PortagePlan* kept = nullptr; ///< a carry of this kind stays in the loads that it has here
};

/// Weighs all ways of doing a portage and takes the one the trip file asks for; where it leaves the
/// choice, the fewest lengths whose heaviest load keeps within its bearer's limit, and of each
/// piece on one back, by two and on a cart the quickest, and of rolled and whole the quicker. Where
/// no way keeps within the limits, the one that comes nearest. Source: docs/carries.md.
[[nodiscard]] PortagePlan plan_portage(PortageInputs inputs);

/// What of a cart's mass its puller bears on a stretch.
[[nodiscard]] double cart_drag(const Stretch& stretch);

} // namespace tumpline::planner
