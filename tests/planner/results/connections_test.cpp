#include "planner/results/connections.h"

#include "planner/make_plan.h"
#include "planner/trip/timetable.h"
#include "tests/support/level_trip.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <chrono>
#include <string>
#include <vector>

namespace tumpline::planner {
namespace {

using namespace std::chrono_literals;
using std::chrono::sys_days;

constexpr sys_days first_monday{2027y / 6 / 7};

/// Two days of 20 km, there on Tuesday at 11:33:20, and a bus and a taxi.
test::RandomTrip with_bus_and_taxi(const std::vector<std::string>& departs,
                                   const std::string& arrives) {
    test::RandomTrip made = test::level_trip({{.length_m = 20e3}, {.length_m = 20e3}},
                                             {{"Start", PlaceKind::start, 0.0},
                                              {"Camp", PlaceKind::camp, 20e3},
                                              {"Road", PlaceKind::finish, 40e3}});
    made.trip.days.nights = {"Camp"};
    made.trip.food.packaging = 0.1;
    Connection bus{.what = "bus", .place = "Road", .to_start = false, .times = {}, .margin = 45min};
    for (const std::string& text : departs)
        bus.times.push_back(read_timetable_hour(text).hour.value());
    made.trip.connections = {bus,
                             {.what = "taxi",
                              .place = "Start",
                              .to_start = true,
                              .times = {read_timetable_hour(arrives).hour.value()},
                              .margin = 20min}};
    return made;
}

TEST(Connections, TellWhatIsTakenAndWhatIfItIsMissed) {
    const test::RandomTrip made = with_bus_and_taxi({"Mo 09:10", "We,Fr 17:40"}, "05:00");
    const Plan plan = make_plan(made.trip, made.route);
    const PlanConnection& bus = plan.connections.at(0);
    EXPECT_EQ(bus.there, first_monday + 24h + 6h + 20000s);
    EXPECT_EQ(bus.taken, first_monday + 48h + 17h + 40min); // Wednesday
    EXPECT_EQ(bus.nights, 1);
    EXPECT_NEAR(bus.wait_s, 86400.0 + 22000.0, 1.0); // 11:33:20 to 17:40 is 22 000 s
    EXPECT_EQ(bus.before, first_monday + 9h + 10min);
    EXPECT_EQ(bus.next, first_monday + 96h + 17h + 40min); // Friday
    EXPECT_EQ(bus.next_days, 2);
    EXPECT_NEAR(bus.next_food_kg, 2.0 * 1.0 * 1.1, 1e-6); // 1 kg a day and its packaging
    EXPECT_TRUE(bus.used);
    EXPECT_EQ(bus.camp, false);
    ASSERT_FALSE(bus.leave_by.empty());
    EXPECT_EQ(bus.leave_by.back().place, "Camp");
    // On Wednesday 16:55 less the way of 20 000 s is 11:21:40, after the usual set-off.
    EXPECT_EQ(bus.leave_by.back().at, first_monday + 48h + 16h + 55min - 20000s);
    ASSERT_EQ(plan.days.size(), 3U);
    EXPECT_EQ(plan.days[2].waiting_for, "bus");
    EXPECT_EQ(plan.days[1].waiting_for, "");
    EXPECT_EQ(plan.days[2].arrive, *bus.taken);
    EXPECT_FALSE(plan.days[2].before_dusk_s);
    EXPECT_EQ(plan.totals.days, 3);
}

// Set off at 19:00, 20 km are there at 00:33:20 of the next date; the plan counts that as its
// second day still, so that the bus of that morning is waited for on a third.
TEST(Connections, WhoArrivesAfterMidnightWaitsOnADayOfThePlan) {
    test::RandomTrip made = with_bus_and_taxi({"We 10:00", "Fr 10:00"}, "05:00");
    made.trip.days.set_off = 19h;
    const Plan plan = make_plan(made.trip, made.route);
    const PlanConnection& bus = plan.connections.at(0);
    EXPECT_GT(bus.there, first_monday + 48h + 33min + 20s);
    EXPECT_LT(bus.there, first_monday + 48h + 3h);
    EXPECT_EQ(bus.taken, first_monday + 48h + 10h);
    ASSERT_EQ(plan.days.size(), 3U);
    EXPECT_EQ(plan.days[2].waiting_for, "bus");
    EXPECT_EQ(bus.nights, 1);
    EXPECT_EQ(bus.next_days, 2); // Wednesday to Friday
    EXPECT_TRUE(std::ranges::any_of(
        plan.cautions, [](const Caution& caution) { return caution.code == "waiting"; }));
}

TEST(Connections, ABusWithinTheMarginIsNotCountedUpon) {
    // 12:00 is 26 min 40 s after arriving, and 45 are asked for.
    const test::RandomTrip made = with_bus_and_taxi({"Tu 12:00", "Tu 18:00"}, "05:00");
    const Plan plan = make_plan(made.trip, made.route);
    EXPECT_EQ(plan.connections[0].before, first_monday + 24h + 12h);
    EXPECT_EQ(plan.connections[0].taken, first_monday + 24h + 18h);
    EXPECT_EQ(plan.connections[0].nights, 0);
    EXPECT_EQ(plan.connections[0].next_days, 7);
}

TEST(Connections, TheSetOffWaitsForTheArrival) {
    const test::RandomTrip made = with_bus_and_taxi({"17:40"}, "Mo 07:10");
    const Plan plan = make_plan(made.trip, made.route);
    EXPECT_EQ(plan.days[0].set_off, first_monday + 7h + 30min);
    EXPECT_EQ(plan.days[1].set_off, first_monday + 24h + 6h);
    const PlanConnection& taxi = plan.connections.at(1);
    EXPECT_EQ(taxi.taken, first_monday + 7h + 10min);
    EXPECT_TRUE(taxi.set_off_moved);
    EXPECT_EQ(taxi.there, plan.days[0].set_off);
    EXPECT_EQ(taxi.next, first_monday + 7 * 24h + 7h + 10min);
    const test::RandomTrip early = with_bus_and_taxi({"17:40"}, "05:40");
    const Plan in_time = make_plan(early.trip, early.route);
    EXPECT_EQ(in_time.days[0].set_off, first_monday + 6h);
    EXPECT_FALSE(in_time.connections[1].set_off_moved);
    EXPECT_EQ(in_time.connections[1].wait_s, 20.0 * 60.0);
}

TEST(Connections, TheLedgerBalancesOverDaysOfWaiting) {
    const test::RandomTrip made = with_bus_and_taxi({"Fr 17:40"}, "05:00");
    const Plan plan = make_plan(made.trip, made.route);
    ASSERT_EQ(plan.days.size(), 5U);
    for (const PlanDay& day : plan.days) {
        std::int64_t change_mg = 0;
        for (const Entry& entry : plan.ledger.entries) {
            if (entry.day != day.day)
                continue;
            if (entry.to == Account::pack)
                change_mg += entry.mass_mg;
            if (entry.from == Account::pack)
                change_mg -= entry.mass_mg;
        }
        if (day.day > 1) { // what is packed at home is booked on day 1
            EXPECT_NEAR(day.members[0].pack_end_kg - day.members[0].pack_start_kg,
                        static_cast<double>(change_mg) / 1e6,
                        1e-3)
                << day.day;
        }
        if (day.rest_day && day.day < 5) {
            EXPECT_NEAR(day.food_kg, 1.0, 1e-6);
        }
    }
}

} // namespace
} // namespace tumpline::planner
