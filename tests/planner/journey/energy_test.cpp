#include "planner/journey/energy.h"

#include "planner/make_plan.h"
#include "planner/solution/fixed_point.h"
#include "tests/support/level_trip.h"

#include <gtest/gtest.h>

#include <chrono>
#include <cmath>

namespace tumpline::planner {
namespace {

using namespace std::chrono_literals;

constexpr double kcal_j = 4184.0;

/// Three days of 20 km at 1 m/s; 70 kg; an hour to break camp.
test::RandomTrip three_days() {
    test::RandomTrip made =
        test::level_trip(std::vector<test::LevelLeg>(3, {.length_m = 20e3}),
                         {{"Camp 1", PlaceKind::camp, 20e3}, {"Camp 2", PlaceKind::camp, 40e3}});
    made.trip.days.nights = {"Camp 1", "Camp 2"};
    made.trip.changeovers.break_camp = 1h;
    return made;
}

/// Of a day, without what is spent in moving, kcal per kg.
double still(const Plan& plan, std::size_t d) {
    return (plan.days.at(d).members.at(0).energy_j - plan.legs.at(d).loads.at(0).energy_j) /
           kcal_j / 70.0;
}

TEST(Energy, CampIsPitchedOnTheFirstDayAndBrokenOnTheLast) {
    const test::RandomTrip made = three_days();
    const Plan plan = make_plan(made.trip, made.route);
    // 24 h less 8 of sleep and 5.5556 of moving are 10.4444 h awake; camp work costs 2.5, standing
    // about 1.3, sleep 1.0 kcal per kg and hour.
    const double awake_h = 16.0 - 20e3 / 3600.0;
    EXPECT_NEAR(still(plan, 0), 8.0 + 2.5 * 1.5 + 1.3 * (awake_h - 1.5), 0.01); // evening
    EXPECT_NEAR(still(plan, 1), 8.0 + 2.5 * 2.5 + 1.3 * (awake_h - 2.5), 0.01); // both
    EXPECT_NEAR(still(plan, 2), 8.0 + 2.5 * 1.0 + 1.3 * (awake_h - 1.0), 0.01); // morning
}

TEST(Energy, OfATripOfOneDayHasNoCamp) {
    const test::RandomTrip made = test::level_trip({{.length_m = 20e3}}, {});
    const Plan plan = make_plan(made.trip, made.route);
    EXPECT_NEAR(still(plan, 0), 8.0 + 1.3 * (16.0 - 20e3 / 3600.0), 0.01);
}

TEST(Energy, WhoeverCouldBeFasterWalksAtThePaceOfTheOthers) {
    const auto spent_j = [](double pace) {
        test::RandomTrip made = three_days();
        Member second = made.trip.party[0];
        second.name = "Bea";
        second.pace = pace;
        made.trip.party.push_back(second);
        return make_plan(made.trip, made.route).legs.at(1).loads.at(1).energy_j;
    };
    EXPECT_NEAR(spent_j(1.4) / spent_j(1.0), 1.0, 1e-9);
    EXPECT_GT(std::abs(spent_j(0.8) / spent_j(1.0) - 1.0), 0.01); // the slow one sets the pace
}

TEST(Energy, OfAChildIsAtLeastThatOfAnActiveDay) {
    test::RandomTrip made = three_days();
    made.trip.party[0].body_kg = 30.0;
    made.trip.party[0].age_years = 9.0;
    made.trip.party[0].sex = Sex::male;
    made.trip.days.rest_days_after = {1};
    const Plan plan = make_plan(made.trip, made.route);
    // 310.2 + 63.3 x 30 - 0.263 x 900 = 1972.5 kcal on an ordinary day, 1.15 of it on an active
    // one.
    ASSERT_TRUE(plan.days.at(1).rest_day);
    EXPECT_GE(plan.days[1].members[0].energy_j / kcal_j, 1972.5 - 1e-6);
    EXPECT_GE(plan.days[0].members[0].energy_j / kcal_j, 1.15 * 1972.5 - 1e-6);
    EXPECT_LT(plan.days[0].members[0].energy_j / kcal_j, 4000.0);
}

} // namespace
} // namespace tumpline::planner
