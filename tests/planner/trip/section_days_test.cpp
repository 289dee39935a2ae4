#include "tests/support/small_trip_file.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace tumpline::planner {
namespace {

using std::chrono::hours;
using std::chrono::minutes;
using test::problems_with;
using test::small_trip_with;
using testing::ElementsAre;
using testing::HasSubstr;

TEST(SectionDays, ReadsEveryKeyIntoItsPlace) {
    const Days days = small_trip_with("/days", R"({"set_off": "07:30", "first_set_off": "10:15",
        "hours": 6.5, "hours_limit": 9, "nights": ["Birch spit"], "rest_days_after": [2, 5],
        "weather_days": 1, "rest_per_hour": "12 min", "most_days": 8, "dusk_is_limit": true,
        "halt": {"from": "12:00", "to": "16:30", "above": "35 C"},
        "in_camp_before_dark": "90 min"})")
                          .days;
    EXPECT_EQ(days.set_off, hours{7} + minutes{30});
    EXPECT_EQ(days.first_set_off, hours{10} + minutes{15});
    EXPECT_EQ(days.hours, 6.5);
    EXPECT_EQ(days.hours_limit, 9.0);
    EXPECT_FALSE(days.nights_auto);
    EXPECT_THAT(days.nights, ElementsAre("Birch spit"));
    EXPECT_THAT(days.rest_days_after, ElementsAre(2, 5));
    EXPECT_EQ(days.weather_days, 1);
    EXPECT_EQ(days.rest_per_hour, minutes{12});
    EXPECT_EQ(days.most_days, 8);
    EXPECT_EQ(days.dusk_is_limit, true);
    ASSERT_TRUE(days.halt);
    EXPECT_EQ(days.halt->from_s, 12.0 * 3600.0);
    EXPECT_EQ(days.halt->to_s, 16.5 * 3600.0);
    EXPECT_EQ(days.halt->above_c, 35.0);
    EXPECT_EQ(days.in_camp_before_dark, minutes{90});
}

TEST(SectionDays, LeavesOpenWhatIsNotSaid) {
    const Days days = small_trip_with("/days", "{}").days;
    EXPECT_FALSE(days.set_off);
    EXPECT_FALSE(days.hours);
    EXPECT_FALSE(days.weather_days);
    EXPECT_FALSE(days.halt);
    EXPECT_FALSE(days.nights_auto);
}

TEST(SectionDays, NightsMayBeChosen) {
    const Days days = small_trip_with("/days/nights", R"("auto")").days;
    EXPECT_TRUE(days.nights_auto);
    EXPECT_THAT(days.nights, ElementsAre());
    EXPECT_THAT(problems_with("/days/nights", R"("Birch spit")"),
                ElementsAre("t.json: /days/nights: found \"Birch spit\", "
                            "expected a list of names of places, or \"auto\""));
}

TEST(SectionDays, AnAppointmentKeepsItsDayHourAndMargin) {
    const Trip trip = small_trip_with("/appointments", R"([{"what": "bus", "at": "Birch spit",
        "day": 3, "by": "14:20", "margin": "45 min", "hard": true}])");
    ASSERT_EQ(trip.appointments.size(), 1U);
    const Appointment& bus = trip.appointments.front();
    EXPECT_EQ(bus.what, "bus");
    EXPECT_EQ(bus.at, "Birch spit");
    EXPECT_EQ(bus.day, 3);
    EXPECT_EQ(bus.by, hours{14} + minutes{20});
    EXPECT_EQ(bus.margin, minutes{45});
    EXPECT_TRUE(bus.hard);
    EXPECT_THAT(problems_with("/appointments", R"([{"what": "bus", "day": 3, "by": "14:20"}])"),
                ElementsAre(HasSubstr("/appointments/0: found no \"at\"")));
}

TEST(SectionDays, ChangeoversAndContactKeepTheirDurations) {
    const Changeovers changeovers =
        small_trip_with("/changeovers", R"({"boots_to_boat": "31 min", "boat_to_boots": "22 min",
            "landing": "4 min", "scout": "13 min", "break_camp": "75 min"})")
            .changeovers;
    EXPECT_EQ(changeovers.boots_to_boat, minutes{31});
    EXPECT_EQ(changeovers.boat_to_boots, minutes{22});
    EXPECT_EQ(changeovers.landing, minutes{4});
    EXPECT_EQ(changeovers.scout, minutes{13});
    EXPECT_EQ(changeovers.break_camp, minutes{75});
    const Contact contact =
        small_trip_with("/contact", R"({"alarm_after": "18 h", "text": "two\nlines"})").contact;
    EXPECT_EQ(contact.alarm_after, hours{18});
    EXPECT_EQ(contact.text, "two\nlines");
}

} // namespace
} // namespace tumpline::planner
