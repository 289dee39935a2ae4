#pragma once

#include "planner/loads/loads.h"

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace tumpline::planner {

/// Whether an item comes and is in a pack ashore.
[[nodiscard]] bool
packed_ashore(const Trip& trip, const std::vector<bool>& brought, std::size_t item);

/// Whose an item is: its owner, or whom it must stay with; empty: the party's.
[[nodiscard]] std::optional<std::size_t> bound_to(const Trip& trip, const KitItem& item);

/// Everything that comes, in the order of the trip file; the food's container last if nothing else
/// is in it.
[[nodiscard]] std::vector<TiedItems> tie_items(const Trip& trip, const std::vector<bool>& brought);

/// Who bears the party's things, the boats and the fuel, and how the food of each stage is split:
/// fills `tied`, `shared`, `item_bearer`, `item_user`, `craft_bearer` and `stage_share` of `loads`,
/// from what the water of the first morning and each member's own things leave of the limits; as
/// before where the inputs say that things stay with their bearers.
void share_things(const LoadInputs& inputs, Loads& loads);

/// Who bears the fuel.
[[nodiscard]] std::size_t fuel_bearer(const Loads& loads);

} // namespace tumpline::planner
