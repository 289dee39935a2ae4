#include "planner/results/time_bands.h"

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

} // namespace tumpline::planner
