#pragma once

#include "planner/route/route.h"
#include "planner/trip/trip.h"

#include <chrono>
#include <cstddef>
#include <string>
#include <vector>

namespace tumpline::test {

/// A straight leg due north at an even slope, with whatever else the trip file would say of it.
struct PlainLeg {
    planner::TripLeg spec; ///< `travel` must be there
    double length_m = 0.0;
    double slope = 0.0; ///< rise over run in the direction of travel
};

/// A trip in the open sea whose every figure can be reckoned by hand, and its route.
struct PlainTrip {
    planner::Trip trip;
    planner::Route route;
};

/// Legs end to end from 300 m above the sea, walked by Ada, 70 kg, 40 years, 1.70 m, without
/// things; a packraft of 3 kg where a leg is afloat. No wind, no rain, 15 C, days of ten hours.
[[nodiscard]] PlainTrip plain_trip(const std::vector<PlainLeg>& legs);

/// Legs with nothing but what the name says.
[[nodiscard]] PlainLeg walk(double length_m, double slope = 0.0);
[[nodiscard]] PlainLeg lake(double length_m);
[[nodiscard]] PlainLeg river(double length_m, double fall);

/// A thing of Ada's.
[[nodiscard]] planner::KitItem thing(const std::string& name, double mass_kg);

/// A thing of the party's.
[[nodiscard]] planner::KitItem party_thing(const std::string& name, double mass_kg);

/// Somebody like Ada with a name and a limit of their own, on walks and portages.
void add_member(PlainTrip& plain, const std::string& name, double limit_kg);

/// A place on the route.
void add_place(PlainTrip& plain, planner::PlaceKind kind, const std::string& name, double along_m);

/// A walk along the same line as a leg of the trip, named as its alternative.
[[nodiscard]] planner::RouteLeg on_foot_beside(const planner::RouteLeg& leg,
                                               const std::string& name);

/// Makes a leg, from 0, a portage.
void make_portage(PlainTrip& plain, std::size_t leg);

/// The texts of the cautions of this code in the trip's plan.
[[nodiscard]] std::vector<std::string> cautions_of(const PlainTrip& plain, const std::string& code);

/// Seconds as a figure.
[[nodiscard]] inline double in_seconds(std::chrono::seconds time) {
    return static_cast<double>(time.count());
}

} // namespace tumpline::test
