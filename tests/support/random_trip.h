#pragma once

#include "planner/route/route.h"
#include "planner/trip/trip.h"

#include <cstdint>

namespace tumpline::test {

/// A trip and its route, made up.
struct RandomTrip {
    planner::Trip trip;
    planner::Route route;
};

/// A valid trip made from `seed`, for properties that must hold of every trip: one to eight legs on
/// foot, over portages and afloat, in any climate and at any longitude; one to five people; things
/// with owners, states and conditions; now and then resupplies, caches, dry camps, appointments.
/// The same seed gives the same trip on every machine. The figures are bounded so that most trips
/// can be carried out, but a plan may well hold cautions and stops.
[[nodiscard]] RandomTrip random_trip(std::uint64_t seed);

} // namespace tumpline::test
