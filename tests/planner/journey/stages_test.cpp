/// Boxes of food, closed shops, lost days, and what lies in a cache.

#include "planner/make_plan.h"
#include "planner/plan.h"
#include "planner/solution/fixed_point.h"
#include "planner/solution/night_costs.h"
#include "tests/support/level_trip.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <chrono>
#include <cmath>
#include <numeric>
#include <string>

namespace tumpline::planner {
namespace {

using namespace std::chrono_literals;

/// Six days of 20 km from Monday 7 June 2027 on; a shop at the camp of day 3.
test::RandomTrip with_shop() {
    std::vector<test::LevelPlace> places;
    for (int day = 1; day <= 5; ++day)
        places.push_back({"Camp " + std::to_string(day), PlaceKind::camp, 20e3 * day});
    places.push_back({"Shop", PlaceKind::resupply, 60e3});
    test::RandomTrip made =
        test::level_trip(std::vector<test::LevelLeg>(6, {.length_m = 20e3}), places);
    for (int day = 1; day <= 5; ++day)
        made.trip.days.nights.push_back("Camp " + std::to_string(day));
    made.trip.food.reserve_days = 1.0;
    made.trip.food.shares = std::array{0.25, 0.40, 0.35};
    made.trip.food.first_meal = Meal::breakfast;
    made.trip.food.last_meal = Meal::dinner;
    return made;
}

Stage second_stage(const test::RandomTrip& made) {
    return make_plan(made.trip, made.route).stages.at(1);
}

TEST(Stages, GiveEachBoxItsRations) {
    test::RandomTrip made = with_shop();
    made.trip.food.packaging = 0.1;
    const Plan plan = make_plan(made.trip, made.route);
    ASSERT_EQ(plan.stages.size(), 2U);
    // Days 1 to 3 but for the dinner at the shop; then that dinner and three days.
    const double wanted[2][3] = {{3.0, 3.0, 2.0}, {3.0, 3.0, 4.0}};
    const double shares[3] = {0.25, 0.40, 0.35}; // of 1 kg a day
    for (std::size_t s = 0; s < 2; ++s) {
        const Stage& stage = plan.stages[s];
        ASSERT_EQ(stage.meals.size(), 3U);
        double sum_kg = 0.0;
        for (std::size_t k = 0; k < 3; ++k) {
            EXPECT_DOUBLE_EQ(stage.meals[k].rations, wanted[s][k]) << "stage " << s;
            EXPECT_NEAR(stage.meals[k].food_kg.at(0), wanted[s][k] * shares[k], 1e-9);
            sum_kg += wanted[s][k] * shares[k];
        }
        EXPECT_NEAR(stage.member_food_kg.at(0), sum_kg, 1e-9);
    }
    // One whole day in reserve, though the stage's last day is without its dinner: put in at home,
    // and still in the pack at the shop.
    EXPECT_NEAR(plan.stages[0].reserve_put_in_kg, 1.0, 1e-5);
    EXPECT_NEAR(plan.stages[1].reserve_put_in_kg, 0.0, 1e-5);
}

TEST(Stages, CountTrailFoodInPartWhereTheShopCutsADay) {
    test::RandomTrip made = with_shop();
    made.route.places.back().along_m = 65e3; // a quarter into day 4
    std::sort(made.route.places.begin(), made.route.places.end(), [](const auto& a, const auto& b) {
        return a.along_m < b.along_m;
    });
    const Plan plan = make_plan(made.trip, made.route);
    EXPECT_NEAR(plan.stages[0].meals[1].rations, 3.25, 1e-6);
    EXPECT_NEAR(plan.stages[1].meals[1].rations, 2.75, 1e-6);
}

TEST(Stages, OfRandomTripsAddUpToWhatTheLedgerPutsIn) {
    int with_supplies = 0, declared = 0;
    for (std::uint64_t seed = 1; seed <= 150; ++seed) {
        SCOPED_TRACE(testing::Message() << "seed " << seed);
        const test::RandomTrip random = test::random_trip(seed);
        const Plan plan = make_plan(random.trip, random.route);
        double all_kg = 0.0;
        for (const Stage& stage : plan.stages) {
            const double members_kg =
                std::accumulate(stage.member_food_kg.begin(), stage.member_food_kg.end(), 0.0);
            EXPECT_NEAR(members_kg + stage.reserve_put_in_kg + stage.packaging_kg,
                        stage.food_kg,
                        1e-6 * (1.0 + stage.food_kg));
            for (std::size_t m = 0; m < stage.member_food_kg.size(); ++m) {
                double meals_kg = 0.0;
                for (const StageMeal& meal : stage.meals)
                    meals_kg += meal.food_kg[m];
                EXPECT_NEAR(meals_kg, stage.member_food_kg[m], 1e-9);
            }
            all_kg += stage.food_kg;
            declared += stage.declared_kg ? 1 : 0;
            if (stage.declared_kg) {
                EXPECT_NEAR(stage.food_kg - stage.declared_short_kg, *stage.declared_kg, 1e-4);
            }
        }
        EXPECT_NEAR(all_kg, plan.totals.food_kg, 1e-3);
        with_supplies += plan.stages.size() > 1 ? 1 : 0;
    }
    EXPECT_GT(with_supplies, 20);
    EXPECT_GT(declared, 5);
}

TEST(Stages, ListTheDatesOnWhichTheShopIsClosed) {
    test::RandomTrip made = with_shop();
    made.trip.route.places.back().closed_weekdays = {4, 7}; // 10 and 13 June; reached on the 9th
    const Stage open = second_stage(made);
    EXPECT_FALSE(open.closed);
    const auto june = std::chrono::year{2027} / std::chrono::June;
    EXPECT_EQ(open.reached, Date(june / 9));
    EXPECT_EQ(open.closed_dates, std::vector<Date>({june / 10})); // the trip ends on the 12th
    made.trip.days.weather_days = 1;
    EXPECT_EQ(second_stage(made).closed_dates, std::vector<Date>({june / 10, june / 13}));
}

TEST(Stages, SayHowFarTheNextOpenDayIs) {
    test::RandomTrip made = with_shop();
    made.trip.route.places.back().closed_weekdays = {3, 4}; // reached on Wednesday
    const Stage stage = second_stage(made);
    EXPECT_TRUE(stage.closed);
    EXPECT_EQ(stage.open_later_days, 2);
    EXPECT_EQ(stage.open_earlier_days, 1);
    const Plan plan = make_plan(made.trip, made.route);
    const auto said = std::find_if(plan.cautions.begin(), plan.cautions.end(), [](const auto& one) {
        return one.code == "supply-closed";
    });
    ASSERT_NE(said, plan.cautions.end());
    EXPECT_EQ(said->level, Level::stop);
    EXPECT_NE(said->text.find("a day earlier and 2 days later"), std::string::npos) << said->text;
    made.trip.route.places.back().closed_weekdays = {1, 2, 3, 4, 5, 6, 7};
    EXPECT_FALSE(second_stage(made).open_later_days);
}

TEST(Stages, AreNotClosedWithACampBesideTheShopNorWithOneOfTwoShops) {
    test::RandomTrip made = with_shop();
    made.trip.route.places[2].closed_weekdays = {3}; // the camp of day 3
    EXPECT_FALSE(second_stage(made).closed);
    TripPlace other = made.trip.route.places.back();
    other.name = "Other shop";
    made.trip.route.places.back().closed_weekdays = {3};
    EXPECT_TRUE(second_stage(made).closed);
    RoutePlace beside = made.route.places.back();
    beside.name = other.name;
    beside.spec = made.trip.route.places.size();
    made.trip.route.places.push_back(other);
    made.route.places.push_back(beside);
    EXPECT_FALSE(second_stage(made).closed);
}

TEST(Stages, TakeFuelForADayInReserveWhereNoPlannedMealIsCooked) {
    test::RandomTrip made =
        test::level_trip(std::vector<test::LevelLeg>(2, {.length_m = 20e3}),
                         {{"Camp 1", PlaceKind::camp, 20e3}, {"Shop", PlaceKind::resupply, 20e3}});
    made.trip.days.nights = {"Camp 1"};
    made.trip.food.reserve_days = 1.0;
    made.trip.food.first_meal = Meal::trail; // breakfast was at home, dinner comes from the shop
    made.trip.fuel.boiled_l = 1.0;
    made.trip.fuel.kg_per_litre = 0.1;
    made.trip.fuel.reserve = 0.0;
    const Stage first = make_plan(made.trip, made.route).stages.at(0);
    const auto party = static_cast<double>(made.trip.party.size());
    EXPECT_NEAR(first.fuel_kg, 0.1 * party, 1e-6);
    made.trip.food.reserve_days = 0.0;
    EXPECT_NEAR(make_plan(made.trip, made.route).stages.at(0).fuel_kg, 0.0, 1e-9);
}

TEST(LostDays, EatTheReserveFirstAndThenGoHungry) {
    // A day, lost or in reserve, is the ration of 1 kg, though day 3 takes only its dinner from
    // here.
    test::RandomTrip made = with_shop();
    const Stage stage = second_stage(made);
    ASSERT_EQ(stage.lost_days.size(), 2U);
    const LostDays& one = stage.lost_days[0];
    EXPECT_EQ(one.ends_day, 7);
    EXPECT_NEAR(one.food_short_kg, 0.0, 1e-5);
    EXPECT_EQ(one.food_ends_day, 7);
    const LostDays& two = stage.lost_days[1];
    EXPECT_EQ(two.ends_day, 8);
    EXPECT_NEAR(two.food_short_kg, 1.0, 1e-5);
    EXPECT_EQ(two.food_ends_day, 7);
    EXPECT_DOUBLE_EQ(stage.lost_day_short_kg, one.food_short_kg);
}

TEST(LostDays, AreToldForEachDayInHandAndOneMore) {
    test::RandomTrip made = with_shop();
    made.trip.days.weather_days = 3;
    const std::vector<LostDays> lost = second_stage(made).lost_days;
    ASSERT_EQ(lost.size(), 4U);
    for (std::size_t k = 1; k < lost.size(); ++k)
        EXPECT_NEAR(lost[k].food_short_kg - lost[k - 1].food_short_kg, 1.0, 1e-5);
}

TEST(LostDays, AgreeWithPlanningADayOfRest) {
    // With a fixed ration a day of rest eats as much as any other: the plan with one needs as much
    // more as the lost day is said to take.
    test::RandomTrip made = with_shop();
    made.trip.food.reserve_days = 0.0;
    const auto eaten_kg = [](const Plan& plan) {
        double sum = 0.0;
        for (const PlanDay& day : plan.days)
            sum += day.food_kg;
        return sum;
    };
    const Plan plan = make_plan(made.trip, made.route);
    made.trip.days.rest_days_after = {4};
    const double more_kg = eaten_kg(make_plan(made.trip, made.route)) - eaten_kg(plan);
    EXPECT_NEAR(more_kg, 1.0, 1e-9);
    EXPECT_NEAR(plan.stages[1].lost_days[0].food_short_kg, more_kg, 1e-5);
}

bool says(const Plan& plan, const std::string& code) {
    return std::any_of(plan.cautions.begin(), plan.cautions.end(), [&](const Caution& caution) {
        return caution.code == code;
    });
}

TEST(Caches, ThatHoldTooLittleAreSpokenOf) {
    test::RandomTrip made = with_shop();
    made.trip.food.reserve_days = 0.5;
    TripPlace& cache = made.trip.route.places.back();
    cache.kind = PlaceKind::cache;
    made.route.places.back().kind = PlaceKind::cache;
    const double needs_kg = second_stage(made).food_kg;
    EXPECT_FALSE(says(make_plan(made.trip, made.route), "supply-short"));

    cache.food_mass_kg = needs_kg - 0.2; // of the reserve
    const Plan a_little = make_plan(made.trip, made.route);
    EXPECT_TRUE(says(a_little, "supply-short"));
    EXPECT_NEAR(a_little.stages[1].declared_short_kg, 0.2, 1e-6);
    EXPECT_NEAR(a_little.stages[1].food_kg, needs_kg, 1e-6); // packs as with enough

    cache.food_mass_kg = needs_kg - 2.0; // of the food itself
    const Plan much = make_plan(made.trip, made.route);
    // 3.35 kg and 0.5 kg of reserve, less 2 kg: the dinner of day 3 and the first of three days.
    EXPECT_EQ(much.stages[1].food_ends_day, 4);
    EXPECT_EQ(a_little.stages[1].food_ends_day, 6);
    const auto said = std::find_if(much.cautions.begin(), much.cautions.end(), [](const auto& one) {
        return one.code == "supply-short";
    });
    ASSERT_NE(said, much.cautions.end());
    EXPECT_NE(said->text.find("does not cover it"), std::string::npos) << said->text;
}

TEST(Caches, ThatHoldMoreAreCarriedOnAsReserve) {
    test::RandomTrip made = with_shop();
    const Stage wanted = second_stage(made);
    made.trip.route.places.back().food_mass_kg = wanted.food_kg + 1.5;
    const Plan plan = make_plan(made.trip, made.route);
    EXPECT_FALSE(says(plan, "supply-short"));
    EXPECT_NEAR(plan.stages[1].food_kg, wanted.food_kg + 1.5, 1e-6);
    const Plan before = make_plan(with_shop().trip, made.route);
    const auto pack_kg = [](const Plan& of) { return of.days.back().members[0].pack_end_kg; };
    EXPECT_NEAR(pack_kg(plan) - pack_kg(before), 1.5, 1e-6); // weighed to the end
}

} // namespace
} // namespace tumpline::planner
