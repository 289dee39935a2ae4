#include "planner/loads/kit_masses.h"

#include "planner/quantities/milligrams.h"

namespace tumpline::planner {

std::int64_t item_mg(const KitItem& item) {
    return kg_to_mg(item.all_kg());
}

std::int64_t item_water_mg(const Assumed& assumed, std::size_t item) {
    return kg_to_mg(assumed.item_wet_kg[item]);
}

std::int64_t item_mg(const Trip& trip, const Assumed& assumed, std::size_t item, Wetness wetness) {
    return item_mg(trip.kit[item]) +
           (wetness == Wetness::wet ? item_water_mg(assumed, item) : std::int64_t{0});
}

std::int64_t craft_water_mg(const AssumedCraft& craft) {
    return kg_to_mg(craft.wet_kg);
}

std::int64_t craft_mg(const AssumedCraft& craft, Wetness wetness) {
    return kg_to_mg(craft.mass_kg) +
           (wetness == Wetness::wet ? craft_water_mg(craft) : std::int64_t{0});
}

} // namespace tumpline::planner
