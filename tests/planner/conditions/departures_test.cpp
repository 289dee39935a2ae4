#include "planner/conditions/departures.h"

#include "planner/trip/timetable.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <chrono>
#include <string>
#include <vector>

namespace tumpline::planner {
namespace {

using namespace std::chrono_literals;
using std::chrono::sys_days;
using testing::ElementsAre;

std::vector<TimetableHour> timetable(const std::vector<std::string>& texts) {
    std::vector<TimetableHour> hours;
    for (const std::string& text : texts)
        hours.push_back(read_timetable_hour(text).hour.value());
    return hours;
}

constexpr sys_days monday{2027y / 6 / 7};

TEST(TimetableDepartures, AreThoseWithinTheSpanInOrderEachOnce) {
    const auto times = timetable({"We 09:10", "Mo 17:40", "Mo,We 09:10", "2027-06-08 08:00"});
    EXPECT_THAT(departures(times, {monday + 9h + 10min, monday + 48h + 9h + 10min}, "UTC"),
                ElementsAre(monday + 9h + 10min,
                            monday + 17h + 40min,
                            monday + 24h + 8h,
                            monday + 48h + 9h + 10min));
    EXPECT_THAT(departures(times, {monday + 17h + 41min, monday + 30h}, "UTC"), testing::IsEmpty());
    EXPECT_EQ(first_departure(times, {monday + 17h + 41min, monday + 72h}, "UTC"),
              monday + 24h + 8h);
    EXPECT_FALSE(first_departure(times, {monday + 17h + 41min, monday + 31h}, "UTC"));
}

TEST(TimetableDepartures, AreLocalAndKeepToTheClocks) {
    // In Oslo clocks go from 02:00 to 03:00 on 28 March 2027, 01:00 UTC: 02:30 is that moment.
    const sys_days change{2027y / 3 / 28};
    EXPECT_THAT(departures(timetable({"02:30"}), {change, change + 23h}, "Europe/Oslo"),
                ElementsAre(change + 1h));
    // The day before 02:30 is 01:30 UTC, the day after 00:30.
    EXPECT_THAT(departures(timetable({"02:30"}), {change - 24h, change}, "Europe/Oslo"),
                ElementsAre(change - 24h + 1h + 30min));
    EXPECT_EQ(midnight_of(Date(2027y / 3 / 29), "Europe/Oslo"), change + 22h);
}

Connection taxi(const std::vector<std::string>& arrives, std::chrono::seconds margin) {
    return {.what = "taxi",
            .place = "A",
            .to_start = true,
            .times = timetable(arrives),
            .margin = margin};
}

TEST(ArrivalAtStart, IsTheLastOneThatLeavesItsMargin) {
    const std::vector<std::string> arrives{"05:00", "05:40", "07:10"};
    const auto at = [&](std::chrono::seconds margin) {
        return arrival_at_start(taxi(arrives, margin), Date(monday), monday + 6h, "UTC").value();
    };
    EXPECT_EQ(at(15min).at, monday + 5h + 40min); // 05:55 is before 06:00
    EXPECT_EQ(at(20min).at, monday + 5h + 40min); // just
    EXPECT_EQ(at(21min).at, monday + 5h);
    EXPECT_FALSE(at(21min).moves_set_off);
    EXPECT_EQ(at(61min).at, monday + 5h); // 06:01: the first one, and later than asked
    EXPECT_TRUE(at(61min).moves_set_off);
}

TEST(ArrivalAtStart, IsOnTheDayOfTheStart) {
    EXPECT_FALSE(arrival_at_start(taxi({"Tu 05:00"}, 0s), Date(monday), monday + 6h, "UTC"));
    EXPECT_TRUE(arrival_at_start(taxi({"Mo 23:59"}, 0s), Date(monday), monday + 6h, "UTC"));
}

} // namespace
} // namespace tumpline::planner
