#include "planner/results/time_bands.h"

#include "planner/defaults/uncertainty_defaults.h"
#include "planner/models/paddling.h"
#include "planner/models/walking_speed.h"

#include <algorithm>

namespace tumpline::planner {

namespace {

TimeBand known_pace(const Trip& trip) {
    const AssumedSpread spread = assume_spread(trip.spread);
    return learned_time_band(spread.pace, spread.day_form);
}

} // namespace

TimeBand band_on_foot(const Assembly& draft) {
    const Trip& trip = draft.prepared.trip;
    const bool known = std::all_of(trip.party.begin(), trip.party.end(), [](const Member& member) {
        return member.pace || member.level_speed_mps;
    });
    return known ? known_pace(trip) : walking_time_band();
}

TimeBand band_afloat(const Assembly& draft) {
    const std::vector<AssumedCraft>& craft = draft.prepared.assumed.craft;
    const bool known =
        !craft.empty() &&
        std::none_of(craft.begin(), craft.end(), [](const auto& c) { return c.usual_speed; });
    return known ? known_pace(draft.prepared.trip) : paddling_time_band();
}

} // namespace tumpline::planner
