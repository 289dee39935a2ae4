#pragma once

#include "planner/loads/loads.h"

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace tumpline::planner {

/// All of an item that comes, whole milligrams.
[[nodiscard]] std::int64_t item_mg(const KitItem& item);

/// Whether an item comes and is in a pack ashore.
[[nodiscard]] bool
packed_ashore(const Trip& trip, const std::vector<bool>& brought, std::size_t item);

/// The member who must bear an item: its owner, or whom it must stay with; empty: anyone.
[[nodiscard]] std::optional<std::size_t> bound_to(const Trip& trip, const KitItem& item);

/// What goes on one back as a whole with an item in a pack ashore: all of it, and of its holder's
/// (or the party's) whatever else is of the same piece ("in").
struct TiedItems {
    std::string name;
    std::int64_t mass_mg;
};

/// The whole to which an item belongs; nothing of it counts that is not in a pack.
[[nodiscard]] TiedItems
tied_items(const Trip& trip, const std::vector<bool>& brought, std::size_t item);

/// Who bears the party's things, the boats and the fuel, and how the food of each stage is split:
/// fills `shared`, `item_bearer`, `craft_bearer` and `stage_share` of `loads`, from what the water
/// of the first morning and each member's own things leave of the limits; as before where the
/// inputs say that things stay with their bearers.
void share_things(const LoadInputs& inputs, Loads& loads);

/// Who bears the fuel.
[[nodiscard]] std::size_t fuel_bearer(const Loads& loads);

} // namespace tumpline::planner
