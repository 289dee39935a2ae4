#pragma once

#include "planner/defaults/defaults.h"
#include "planner/trip/trip.h"

#include <cstddef>
#include <cstdint>

/// What things and boats weigh, in whole milligrams: all of a count, and the water that clings to
/// what was used on the water until it has dried. The one home of these masses.
namespace tumpline::planner {

enum class Wetness { dry, wet };

/// All of an item, dry.
[[nodiscard]] std::int64_t item_mg(const KitItem& item);

/// The water that clings to all of a kit item once it is wet.
[[nodiscard]] std::int64_t item_water_mg(const Assumed& assumed, std::size_t item);

/// All of a kit item as it is.
[[nodiscard]] std::int64_t
item_mg(const Trip& trip, const Assumed& assumed, std::size_t item, Wetness wetness);

/// The water that clings to a boat once it is wet.
[[nodiscard]] std::int64_t craft_water_mg(const AssumedCraft& craft);

/// A boat as it is.
[[nodiscard]] std::int64_t craft_mg(const AssumedCraft& craft, Wetness wetness);

[[nodiscard]] constexpr Wetness wetness(bool wet) {
    return wet ? Wetness::wet : Wetness::dry;
}

} // namespace tumpline::planner
