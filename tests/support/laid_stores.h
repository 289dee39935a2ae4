#pragma once

#include "planner/plan.h"
#include "tests/support/three_days_by_col.h"

#include <algorithm>
#include <cstdint>
#include <string>

namespace tumpline::test {

/// The three days by Col; 20 g of fuel for each breakfast and dinner in a container of 100 g, no
/// reserve; so many kilograms of it are left at Col on day 2.
[[nodiscard]] inline RandomTrip three_days_with_fuel(double fuel_kg) {
    RandomTrip made = three_days_by_col(1.0);
    made.trip.leaves[0].food_kg.reset();
    made.trip.leaves[0].fuel_kg = fuel_kg;
    made.trip.fuel.boiled_l = 2.0;
    made.trip.fuel.kg_per_litre = 0.02;
    made.trip.fuel.container_kg = 0.1;
    made.trip.fuel.reserve = 0.0;
    made.trip.food.reserve_days = 0.0;
    return made;
}

/// A place of a kind at a distance along the route, on that leg (index).
inline void add_place_at(RandomTrip& made,
                         planner::PlaceKind kind,
                         const std::string& name,
                         const planner::RoutePlace& where) {
    planner::TripPlace place = made.trip.route.places.front();
    place.name = name;
    place.kind = kind;
    made.trip.route.places.push_back(place);
    planner::RoutePlace one = made.route.places.front();
    one.name = name;
    one.kind = kind;
    one.along_m = where.along_m;
    one.leg = where.leg;
    one.spec = made.trip.route.places.size() - 1;
    const auto after =
        std::find_if(made.route.places.begin(),
                     made.route.places.end(),
                     [&](const planner::RoutePlace& other) { return other.along_m > one.along_m; });
    made.route.places.insert(after, one);
}

inline planner::RoutePlace along(double along_m, std::size_t leg) {
    planner::RoutePlace where;
    where.along_m = along_m;
    where.leg = planner::LegNumber::of_index(leg);
    return where;
}

inline void add_shop_at(RandomTrip& made, double along_m, std::size_t leg) {
    add_place_at(made, planner::PlaceKind::resupply, "Shop", along(along_m, leg));
}

/// What lies there just after the last entry with a reason; -1: there is none.
[[nodiscard]] inline std::int64_t lies_after_mg(const planner::Plan& plan, const std::string& why) {
    const auto& entries = plan.ledger.entries;
    const auto last = std::find_if(entries.rbegin(),
                                   entries.rend(),
                                   [&](const planner::Entry& entry) { return entry.why == why; });
    return last == entries.rend() ? -1 : plan.ledger.laid_down_mg(0, last->step + 1);
}

/// The leg between the leaving and the fetching.
[[nodiscard]] inline const planner::PlanLeg& around(const planner::Plan& plan) {
    return *std::find_if(plan.legs.begin(), plan.legs.end(), [](const planner::PlanLeg& leg) {
        return leg.leg == 2;
    });
}

/// One day out and back, 1 L drunk on its 10 km and a spring somewhere; so many litres are left at
/// Col, at 2 km, and fetched at 8 km.
[[nodiscard]] inline RandomTrip out_and_back_with_water(double water_l,
                                                        const planner::RoutePlace& spring) {
    RandomTrip made = out_and_back();
    made.trip.water.walking_lps = 1e-4; // at 1 m/s
    made.trip.water.reserve_l = 0.0;
    made.trip.leaves = {at_col({})};
    made.trip.leaves[0].water_l = water_l;
    add_place_at(made, planner::PlaceKind::water, "Spring", spring);
    return made;
}

} // namespace tumpline::test
