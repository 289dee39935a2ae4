#pragma once

#include "planner/loads.h"

#include <cstddef>
#include <cstdint>

namespace tumpline::planner {

/// All of an item that comes, whole milligrams.
[[nodiscard]] std::int64_t item_mg(const KitItem& item);

/// Who bears the party's things, the boats and the fuel, and how the food of each stage is split:
/// fills `shared`, `item_bearer`, `craft_bearer` and `stage_share` of `loads`, from what the water
/// of the first morning and each member's own things leave of the limits; as before where the
/// inputs say that things stay with their bearers.
void share_things(const LoadInputs& inputs, Loads& loads);

/// Who bears the fuel.
[[nodiscard]] std::size_t fuel_bearer(const Loads& loads);

} // namespace tumpline::planner
