#include "planner/models/catalogue.h"

#include "planner/models/cold.h"
#include "planner/models/compendium.h"
#include "planner/models/drinking.h"
#include "planner/models/elevation.h"
#include "planner/models/food.h"
#include "planner/models/ford.h"
#include "planner/models/heat.h"
#include "planner/models/load_carriage.h"
#include "planner/models/load_effect.h"
#include "planner/models/paddling.h"
#include "planner/models/resting_energy.h"
#include "planner/models/river.h"
#include "planner/models/stove_fuel.h"
#include "planner/models/terrain.h"
#include "planner/models/walking_speed.h"
#include "planner/models/waves.h"
#include "planner/models/wind.h"

#include <array>
#include <span>

namespace tumpline::planner {

std::vector<ModelEntry> model_catalogue() {
    const std::array tables = {elevation_entries(),
                               walking_speed_entries(),
                               load_effect_entries(),
                               terrain_entries(),
                               load_carriage_entries(),
                               resting_energy_entries(),
                               compendium_entries(),
                               paddling_entries(),
                               river_entries(),
                               wind_entries(),
                               waves_entries(),
                               heat_entries(),
                               cold_entries(),
                               ford_entries(),
                               drinking_entries(),
                               food_entries(),
                               stove_fuel_entries()};
    std::vector<ModelEntry> all;
    for (const std::span<const ModelEntry> table : tables)
        all.insert(all.end(), table.begin(), table.end());
    return all;
}

} // namespace tumpline::planner
