#pragma once

#include "planner/defaults/defaults.h"
#include "planner/journey/schedule.h"
#include "planner/trip/trip.h"

#include <cstddef>
#include <optional>

/// Waiting at the end of the route for what takes the party away: days of the plan.
namespace tumpline::planner {

/// The departure that a party takes.
struct Leaving {
    std::size_t connection; ///< index into Trip::connections
    geo::sys_seconds at;
};

/// Whether the trip names any connection from the end of its route.
[[nodiscard]] bool leaves_by_connection(const Trip& trip);

/// When a party is at the end of its route.
[[nodiscard]] geo::sys_seconds end_reached(const Timeline& timeline, const Assumed& assumed);

/// The first departure of any connection that a party there at that time reaches with its margin;
/// none within `longest_wait_days`.
[[nodiscard]] std::optional<Leaving>
first_leaving(const Trip& trip, const Assumed& assumed, geo::sys_seconds there);

/// Nights from a day of the trip (from 1) to the day of an hour.
[[nodiscard]] int nights_until(const Assumed& assumed, int day, geo::sys_seconds at);

/// How a party waits: so many days more, and then up to an hour of the last of them.
struct Waiting {
    std::size_t connection = 0; ///< for which, index into Trip::connections
    int days = 0;
    double until_s = 0.0; ///< after midnight of the last day, by its setting off
};

[[nodiscard]] std::optional<Waiting>
waiting_at_end(const Trip& trip, const Assumed& assumed, const Timeline& timeline);

/// Puts the days of waiting behind the last arrival, and the hours of the last day on the clock.
/// The first day of waiting is the one after the arrival.
void add_waiting(Timeline& timeline, const Waiting& waiting, const Assumed& assumed);

} // namespace tumpline::planner
