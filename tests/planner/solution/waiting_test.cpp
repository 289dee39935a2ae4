#include "planner/solution/waiting.h"

#include "planner/make_plan.h"
#include "planner/solution/fixed_point.h"
#include "planner/trip/timetable.h"
#include "tests/support/level_trip.h"

#include <gtest/gtest.h>

#include <chrono>
#include <string>
#include <vector>

namespace tumpline::planner {
namespace {

using namespace std::chrono_literals;
using std::chrono::sys_days;

constexpr sys_days monday{2027y / 6 / 7};
constexpr auto way = 20000s; // 20 km at 1 m/s from 06:00: there at 11:33:20

/// 20 km to a dry road on a Monday, and what leaves there.
test::RandomTrip to_the_road(const std::string& departs, std::chrono::seconds margin) {
    test::RandomTrip made =
        test::level_trip({{.length_m = 20e3}},
                         {{"Start", PlaceKind::start, 0.0}, {"Road", PlaceKind::finish, 20e3}});
    made.trip.route.places[1].water = false;
    made.trip.connections = {{.what = "bus",
                              .place = "Road",
                              .to_start = false,
                              .times = {read_timetable_hour(departs).hour.value()},
                              .margin = margin}};
    made.trip.water.walking_lps = 0.5 / 3600.0;
    made.trip.water.camp_l = 3.0;
    made.trip.water.reserve_l = 0.0;
    made.trip.food.first_meal = Meal::breakfast;
    made.trip.food.last_meal = Meal::dinner;
    return made;
}

Solved settled_of(const test::RandomTrip& made) {
    return solve(prepare(made.trip, made.route), {});
}

double food_packed_kg(const Solved& settled) {
    return static_cast<double>(settled.provisions.stages[0].food_mg) / 1e6;
}

TEST(Waiting, OnTheDayOfArrivingIsNoDayMore) {
    const test::RandomTrip made = to_the_road("Mo 12:30", 30min);
    const Solved settled = settled_of(made);
    ASSERT_TRUE(settled.waiting);
    EXPECT_EQ(settled.waiting->days, 0);
    EXPECT_EQ(settled.timeline.days.size(), 1U);
    EXPECT_EQ(settled.timeline.waiting_days(), 0);
    // 12:30:00 - 11:33:20 = 56 min 40 s; 3 L a day by the hour, and 20 000 s at half a litre an
    // hour: 2.7778 + 3400 / 86400 * 3 = 2.8958
    EXPECT_NEAR(settled.timeline.waits_s.value(), 3400.0, 1.0);
    EXPECT_NEAR(settled.water.fill_l[0], 2.7778 + 0.1181, 1e-3);
    EXPECT_NEAR(food_packed_kg(settled), 1.0, 1e-6);
}

TEST(Waiting, OfNightsIsDaysWithFoodAndWater) {
    const test::RandomTrip made = to_the_road("We 17:40", 30min);
    const Solved settled = settled_of(made);
    const Timeline& timeline = settled.timeline;
    ASSERT_EQ(timeline.days.size(), 3U);
    EXPECT_EQ(timeline.waiting_days(), 2);
    EXPECT_FALSE(timeline.days[0].waiting);
    EXPECT_TRUE(timeline.days[2].waiting && timeline.days[2].rest_day);
    EXPECT_EQ(timeline.days[2].day, 3);
    EXPECT_EQ(settled.darkness.size(), 3U);
    EXPECT_NEAR(timeline.arrive_s[2], 17.0 * 3600.0 + 40.0 * 60.0, 1e-6);
    // The way 2.7778 L, two nights of 3 L, on Wednesday from 06:00 to 17:40 42 000 s of 3 L a day.
    EXPECT_NEAR(settled.water.fill_l[0], 2.7778 + 6.0 + 1.4583, 1e-3);
    EXPECT_NEAR(food_packed_kg(settled), 3.0, 1e-6); // a kilogram a day
    EXPECT_TRUE(settled.water.dry_camp[0] && settled.water.dry_camp[1]);
    EXPECT_FALSE(settled.water.dry_camp[2]);
}

TEST(Waiting, TakesWhatIsReachedWithTheMargin) {
    // There at 11:33:20: an hour's margin misses 12:30, and the next Monday is a week later.
    const test::RandomTrip made = to_the_road("Mo 12:30", 1h);
    const Solved settled = settled_of(made);
    ASSERT_TRUE(settled.waiting);
    EXPECT_EQ(settled.waiting->days, 7);
    EXPECT_EQ(settled.timeline.days.size(), 8U);
}

TEST(Waiting, OfSeveralConnectionsTakesTheEarliest) {
    test::RandomTrip made = to_the_road("We 17:40", 0s);
    made.trip.connections.push_back({.what = "train",
                                     .place = "Road",
                                     .to_start = false,
                                     .times = {read_timetable_hour("Tu 06:00").hour.value()},
                                     .margin = 0s});
    const Prepared prepared = prepare(made.trip, made.route);
    const Solved settled = solve(prepared, {});
    const auto there = end_reached(settled.timeline, prepared.assumed);
    EXPECT_EQ(there, monday + 6h + way);
    const auto leaving = first_leaving(made.trip, prepared.assumed, there);
    ASSERT_TRUE(leaving);
    EXPECT_EQ(leaving->connection, 1U);
    EXPECT_EQ(leaving->at, monday + 30h);
    EXPECT_EQ(settled.timeline.days.size(), 2U);
    EXPECT_EQ(settled.timeline.waits_s, 0.0); // at the hour at which one sets off
}

TEST(Waiting, ForWhatNeverLeavesIsNone) {
    const test::RandomTrip made = to_the_road("2027-06-06 12:30", 0s);
    const Solved settled = settled_of(made);
    EXPECT_FALSE(settled.waiting);
    EXPECT_EQ(settled.timeline.days.size(), 1U);
    EXPECT_FALSE(settled_of(to_the_road("2027-07-08 12:30", 0s)).waiting); // 31 days later
    EXPECT_TRUE(settled_of(to_the_road("2027-07-07 11:00", 0s)).waiting);  // within 30
}

TEST(Waiting, CountsInTheSearchForNights) {
    test::RandomTrip made = test::level_trip({{.length_m = 60e3}},
                                             {{"Start", PlaceKind::start, 0.0},
                                              {"A", PlaceKind::camp, 20e3},
                                              {"B", PlaceKind::camp, 30e3},
                                              {"C", PlaceKind::camp, 40e3},
                                              {"Road", PlaceKind::finish, 60e3}});
    made.trip.days.nights_auto = true;
    made.trip.days.hours = 20e3 / 3600.0;
    const auto days_of = [&] { return make_plan(made.trip, made.route).days; };
    EXPECT_EQ(days_of().size(), 3U); // by A and C, each as long as wished
    // Two days of 30 km are 2.78 h over the wish: 2 (2.78 + 0.25 x 2.78^2) = 9.4. Three days miss
    // Tuesday's bus and wait for six nights, 12.
    made.trip.connections = {{.what = "bus",
                              .place = "Road",
                              .to_start = false,
                              .times = {read_timetable_hour("Tu 18:00").hour.value()},
                              .margin = 0s}};
    const std::vector<PlanDay> with_bus = days_of();
    ASSERT_EQ(with_bus.size(), 2U);
    EXPECT_EQ(with_bus[0].to, "B");
    // On Thursday as well three days wait for one night, 2, and are better again.
    made.trip.connections[0].times.push_back(read_timetable_hour("Th 18:00").hour.value());
    EXPECT_EQ(days_of().size(), 4U);
    EXPECT_EQ(days_of()[3].waiting_for, "bus");
}

} // namespace
} // namespace tumpline::planner
