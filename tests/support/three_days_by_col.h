#pragma once

#include "tests/support/out_and_back.h"

namespace tumpline::test {

/// The same way in three days, both nights at Col: day 2 goes round. A kilogram of food a day, a
/// fifth for breakfast, half on the way, the rest for dinner; so many kilograms of it are left at
/// Col on day 2.
[[nodiscard]] inline RandomTrip three_days_by_col(double food_kg) {
    RandomTrip made = out_and_back();
    made.trip.days.nights = {"Col", "Col"};
    made.trip.food.first_meal = planner::Meal::breakfast;
    made.trip.food.last_meal = planner::Meal::dinner;
    made.trip.food.shares = {{0.2, 0.5, 0.3}};
    made.trip.leaves = {at_col({})};
    made.trip.leaves[0].day = 2;
    made.trip.leaves[0].food_kg = food_kg;
    return made;
}

/// A supply at 5 km.
inline void add_shop_half_way_round(RandomTrip& made) {
    planner::TripPlace place = made.trip.route.places.front();
    place.name = "Shop";
    place.kind = planner::PlaceKind::resupply;
    made.trip.route.places.push_back(place);
    planner::RoutePlace shop = made.route.places.front();
    shop.name = "Shop";
    shop.kind = planner::PlaceKind::resupply;
    shop.along_m = 5e3;
    shop.leg = 1;
    shop.spec = made.trip.route.places.size() - 1;
    made.route.places.insert(made.route.places.begin() + 1, shop);
}

} // namespace tumpline::test
