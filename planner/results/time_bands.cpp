#include "planner/results/time_bands.h"

#include "planner/defaults/led_boats.h"
#include "planner/defaults/uncertainty_defaults.h"
#include "planner/models/paddling.h"
#include "planner/models/walking_speed.h"

namespace tumpline::planner {

namespace {

TimeBand known_pace(const Trip& trip) {
    const AssumedSpread spread = assume_spread(trip.spread);
    return learned_time_band(spread.on_foot.slower, spread.day_form);
}

} // namespace

TimeBand band_on_foot(const Assembly& draft) {
    const Trip& trip = draft.prepared.trip;
    return pace_known(trip, draft.prepared.assumed).on_foot ? known_pace(trip)
                                                            : walking_time_band();
}

TimeBand band_afloat(const Assembly& draft) {
    const Trip& trip = draft.prepared.trip;
    return pace_known(trip, draft.prepared.assumed).afloat ? known_pace(trip)
                                                           : paddling_time_band();
}

TimeBand band_led(const Assembly& draft, std::size_t leg) {
    const RouteLeg& route_leg = draft.prepared.route.legs[leg];
    if (route_leg.spec.led_mps)
        return band_on_foot(draft);
    const double pace_mps = usual_led_mps(route_leg.travel);
    const LedRange range = led_range(route_leg.travel);
    return {.low = pace_mps / range.fast_mps,
            .high = pace_mps / range.slow_mps,
            .basis = "the paces that the trade speaks of; common practice, no source"};
}

} // namespace tumpline::planner
