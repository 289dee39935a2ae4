#include "planner/loads/consumables.h"

#include "planner/make_plan.h"
#include "tests/support/level_trip.h"

#include <gtest/gtest.h>

#include <string>

/// Food, fuel, water and waste as they come and go. The level trip: 1 m/s, 1 kg of food a day; of
/// it breakfast 0.25, trail 0.40, dinner 0.35, and the first meal is on the way.
namespace tumpline::planner {
namespace {

using test::level_trip;

std::int64_t moved_mg(const Plan& plan, Part part, Account to, const std::string& why = {}) {
    std::int64_t sum_mg = 0;
    for (const Entry& entry : plan.ledger.entries)
        if (entry.part == part && entry.to == to && (why.empty() || entry.why == why))
            sum_mg += entry.mass_mg;
    return sum_mg;
}

/// Two days of 10 km each with a place of some kind, `Depot`, at the night between them.
test::RandomTrip over_a_depot(PlaceKind kind) {
    test::RandomTrip made =
        level_trip({{Travel::walk, 10'000.0}, {Travel::walk, 10'000.0}},
                   {{"Depot", kind, 10'000.0}, {"Camp", PlaceKind::camp, 10'000.0}});
    made.trip.days.nights = {"Camp"};
    made.trip.food.packaging = 0.10;
    return made;
}

TEST(Consumables, AreEatenMealByMealAndTheirWrappingIsKept) {
    const test::RandomTrip made = level_trip({{Travel::walk, 10'000.0}}, {});
    Trip trip = made.trip;
    trip.food.packaging = 0.10;
    const Plan plan = make_plan(trip, made.route);
    // One day from its trail food on: 0.40 on the way, 0.35 for dinner.
    EXPECT_EQ(moved_mg(plan, Part::food, Account::eaten, "trail food"), 400'000);
    EXPECT_EQ(moved_mg(plan, Part::food, Account::eaten, "dinner"), 350'000);
    // A tenth of the 0.75 kg stays as waste.
    EXPECT_EQ(moved_mg(plan, Part::waste, Account::pack), 75'000);
}

TEST(Consumables, CarryTheWasteInThePack) {
    const test::RandomTrip made = level_trip({{Travel::walk, 10'000.0}, {Travel::walk, 10'000.0}},
                                             {{"Camp", PlaceKind::camp, 10'000.0}});
    Trip trip = made.trip;
    trip.food.packaging = 0.10;
    trip.days.nights = {"Camp"};
    const Plan plan = make_plan(trip, made.route);
    // Trail 0.40, dinner 0.35, breakfast 0.25 of the first day: the wrapping of 1.0 kg.
    EXPECT_NEAR(plan.legs.at(1).loads.at(0).parts.waste_kg, 0.100, 1e-6);
}

TEST(Consumables, HandWasteInAtAShopAndNotAtACache) {
    const test::RandomTrip shop = over_a_depot(PlaceKind::resupply);
    const Plan at_shop = make_plan(shop.trip, shop.route);
    // The wrapping of the 0.40 kg eaten on the way there; dinner comes after.
    EXPECT_EQ(moved_mg(at_shop, Part::waste, Account::outside, "left at Depot"), 40'000);
    const test::RandomTrip cache = over_a_depot(PlaceKind::cache);
    const Plan at_cache = make_plan(cache.trip, cache.route);
    EXPECT_EQ(moved_mg(at_cache, Part::waste, Account::outside), 0);
    EXPECT_NEAR(at_cache.legs.at(1).loads.at(0).parts.waste_kg, 0.100, 1e-6); // trail to breakfast
    EXPECT_NEAR(at_shop.legs.at(1).loads.at(0).parts.waste_kg, 0.060, 1e-6);  // dinner, breakfast
}

TEST(Consumables, LeaveTheOldFuelWhereNewIsTaken) {
    test::RandomTrip shop = over_a_depot(PlaceKind::resupply);
    shop.trip.food.reserve_days = 1.0; // with the fuel to cook it
    const Plan plan = make_plan(shop.trip, shop.route);
    EXPECT_GT(moved_mg(plan, Part::fuel, Account::outside, "left at Depot"), 0);
    EXPECT_GT(moved_mg(plan, Part::fuel, Account::pack, "supply at Depot"), 0);
}

TEST(Consumables, DealTrailFoodByTheTimeOnTheWay) {
    // 4 and 12 km at 1 m/s: a quarter and three quarters of 0.40 kg.
    const test::RandomTrip made =
        level_trip({{Travel::walk, 4000.0}, {Travel::walk, 12'000.0}}, {});
    const Plan plan = make_plan(made.trip, made.route);
    std::vector<std::int64_t> by_leg(3, 0);
    for (const Entry& entry : plan.ledger.entries)
        if (entry.why == "trail food")
            by_leg.at(entry.plan_leg.printed()) += entry.mass_mg;
    EXPECT_NEAR(static_cast<double>(by_leg[1]), 100'000.0, 10.0);
    EXPECT_NEAR(static_cast<double>(by_leg[2]), 300'000.0, 10.0);
}

} // namespace
} // namespace tumpline::planner
