#include "planner/cautions/calendar_cautions.h"

#include "planner/make_plan.h"
#include "planner/trip/timetable.h"
#include "tests/support/plain_trip.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <chrono>
#include <string>
#include <vector>

namespace tumpline::planner {
namespace {

using namespace std::chrono_literals;
using testing::AllOf;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;

Connection by_timetable(const std::string& place, bool to_start, const std::string& hour) {
    return {.what = "bus",
            .place = place,
            .to_start = to_start,
            .times = {read_timetable_hour(hour).hour.value()},
            .margin = 30min};
}

/// An hour's walk on Friday 18 June 2027 from 08:00 on.
test::PlainTrip an_hours_walk() {
    test::PlainTrip plain = test::plain_trip({test::walk(4000.0)});
    plain.trip.start = 2027y / 6 / 18;
    plain.trip.days.set_off = 8h;
    test::add_place(plain, PlaceKind::start, "Road end", 0.0);
    test::add_place(plain, PlaceKind::finish, "Quarry", 4000.0);
    return plain;
}

std::vector<std::string> said_of(const test::PlainTrip& plain, const std::string& code) {
    return test::cautions_of(plain, code);
}

TEST(CalendarCautions, NightsOfWaitingAreSaid) {
    test::PlainTrip plain = an_hours_walk();
    plain.trip.connections = {by_timetable("Quarry", false, "Fr 18:00")};
    EXPECT_THAT(said_of(plain, "waiting"), IsEmpty()); // on the same day
    plain.trip.connections = {by_timetable("Quarry", false, "Su 09:10")};
    EXPECT_THAT(said_of(plain, "waiting"),
                ElementsAre(AllOf(HasSubstr("Sun 2027-06-20 09:10: 2 nights"),
                                  HasSubstr("no camp of the trip file"))));
    EXPECT_TRUE(make_plan(plain.trip, plain.route).can_be_carried_out());
}

TEST(CalendarCautions, WithoutADepartureThePlanStops) {
    test::PlainTrip plain = an_hours_walk();
    plain.trip.connections = {by_timetable("Quarry", false, "2027-06-18 08:20")};
    EXPECT_THAT(said_of(plain, "no-departure"),
                ElementsAre(HasSubstr("the last one leaves Fri 2027-06-18 08:20")));
    EXPECT_FALSE(make_plan(plain.trip, plain.route).can_be_carried_out());
    plain.trip.connections.push_back(by_timetable("Quarry", false, "18:00"));
    EXPECT_TRUE(make_plan(plain.trip, plain.route).can_be_carried_out()); // the other one runs
}

TEST(CalendarCautions, WithoutAnArrivalOnItsDayThePlanStops) {
    test::PlainTrip plain = an_hours_walk();
    plain.trip.connections = {by_timetable("Road end", true, "Mo 07:00")};
    EXPECT_THAT(said_of(plain, "no-arrival"),
                ElementsAre(AllOf(HasSubstr("before comes Mon 2027-06-14 07:00"),
                                  HasSubstr("the next one Mon 2027-06-21 07:00"))));
    EXPECT_FALSE(make_plan(plain.trip, plain.route).can_be_carried_out());
    plain.trip.connections = {by_timetable("Road end", true, "Fr 23:45")}; // and half an hour
    EXPECT_THAT(said_of(plain, "no-arrival"), ElementsAre(HasSubstr("too late to set off")));
    plain.trip.connections = {by_timetable("Road end", true, "Fr 08:10")};
    EXPECT_THAT(said_of(plain, "no-arrival"), IsEmpty());
    EXPECT_THAT(said_of(plain, "set-off-moved"), ElementsAre(HasSubstr("sets off at 08:40")));
    plain.trip.connections = {by_timetable("Road end", true, "Fr 07:30")};
    EXPECT_THAT(said_of(plain, "set-off-moved"), IsEmpty());
}

TEST(CalendarCautions, PermitsThatCannotBeHadStopThePlan) {
    test::PlainTrip plain = an_hours_walk();
    plain.trip.permits = {{.where = "Quarry",
                           .dates = DateSpan{2027y / 6 / 1, 2027y / 6 / 17},
                           .most_people = 1,
                           .note = {}}};
    EXPECT_THAT(said_of(plain, "permit-date"),
                ElementsAre(HasSubstr("from 2027-06-01 to 2027-06-17")));
    EXPECT_THAT(said_of(plain, "permit-people"), IsEmpty());
    plain.trip.permits[0].dates->last = 2027y / 6 / 18;
    EXPECT_THAT(said_of(plain, "permit-date"), IsEmpty());
    EXPECT_TRUE(make_plan(plain.trip, plain.route).can_be_carried_out());
    test::add_member(plain, "Bram", 25.0);
    EXPECT_THAT(said_of(plain, "permit-people"), ElementsAre(HasSubstr("2 people")));
    EXPECT_FALSE(make_plan(plain.trip, plain.route).can_be_carried_out());
}

} // namespace
} // namespace tumpline::planner
