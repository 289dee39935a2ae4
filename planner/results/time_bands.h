#pragma once

#include "planner/models/time_band.h"
#include "planner/results/assembly.h"

#include <cstddef>

namespace tumpline::planner {

/// The band beside times on foot: between people, until everybody's own pace is known.
[[nodiscard]] TimeBand band_on_foot(const Assembly& draft);

/// The band beside times afloat, until every boat's own calm speed is known.
[[nodiscard]] TimeBand band_afloat(const Assembly& draft);
/// Of a boat that is lined, waded with or poled: the range of such paces, or the band on foot about
/// a pace that the trip file gives. `leg` is an index into the route's.
[[nodiscard]] TimeBand band_led(const Assembly& draft, std::size_t leg);

} // namespace tumpline::planner
