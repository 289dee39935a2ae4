#include "planner/results/permits.h"

#include "planner/make_plan.h"
#include "tests/support/level_trip.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <chrono>

namespace tumpline::planner {
namespace {

using namespace std::chrono_literals;

/// Three days of 20 km from 7 June 2027 on, a camp after each but the last.
test::RandomTrip three_days_of_permits(const std::vector<Permit>& permits) {
    test::RandomTrip made =
        test::level_trip({{.length_m = 20e3}, {.length_m = 20e3}, {.length_m = 20e3}},
                         {{"Start", PlaceKind::start, 0.0},
                          {"First camp", PlaceKind::camp, 20e3},
                          {"Spare camp", PlaceKind::camp, 30e3},
                          {"Second camp", PlaceKind::camp, 40e3},
                          {"Gate", PlaceKind::hazard, 50e3},
                          {"Road", PlaceKind::finish, 60e3}});
    made.trip.days.nights = {"First camp", "Second camp"};
    made.trip.permits = permits;
    return made;
}

Permit permit_for(const std::string& where) {
    return {.where = where, .dates = {}, .most_people = {}, .note = {}};
}

TEST(Permits, OfACampAreItsNights) {
    Permit first = permit_for("First camp");
    first.dates = DateSpan{2027y / 6 / 1, 2027y / 6 / 7};
    first.note = "by post";
    const test::RandomTrip made = three_days_of_permits({first, permit_for("Spare camp")});
    const std::vector<PlanPermit> permits = make_plan(made.trip, made.route).permits;
    ASSERT_EQ(permits.size(), 2U);
    EXPECT_TRUE(permits[0].nights);
    EXPECT_EQ(permits[0].people, 1);
    EXPECT_EQ(permits[0].note, "by post");
    ASSERT_EQ(permits[0].bookings.size(), 1U);
    EXPECT_EQ(permits[0].bookings[0].day, 1);
    EXPECT_EQ(permits[0].bookings[0].date, Date(2027y / 6 / 7));
    EXPECT_TRUE(permits[0].bookings[0].open);
    EXPECT_EQ(permits[0].bookings[0].a_day_later, Date(2027y / 6 / 8));
    EXPECT_FALSE(permits[0].bookings[0].later_open); // the permit ends with the seventh
    EXPECT_TRUE(permits[1].bookings.empty());        // passed by, not slept at
}

TEST(Permits, OfALegOrAPlaceAreTheDaysThere) {
    const test::RandomTrip made =
        three_days_of_permits({permit_for("leg 2"), permit_for("Gate"), permit_for("Start")});
    const std::vector<PlanPermit> permits = make_plan(made.trip, made.route).permits;
    const int days[] = {2, 3, 1};
    for (std::size_t i = 0; i < 3; ++i) {
        EXPECT_FALSE(permits[i].nights);
        ASSERT_EQ(permits[i].bookings.size(), 1U) << permits[i].where;
        EXPECT_EQ(permits[i].bookings[0].day, days[i]) << permits[i].where;
        EXPECT_TRUE(permits[i].bookings[0].later_open);
    }
}

TEST(Permits, KnowTheDatesOnWhichAPlaceIsClosed) {
    test::RandomTrip made = three_days_of_permits({permit_for("Second camp")});
    made.trip.route.places[3].closed_weekdays = {3}; // the night of Tuesday the eighth is open
    const PlanPermit permit = make_plan(made.trip, made.route).permits.at(0);
    EXPECT_TRUE(permit.bookings.at(0).open);
    EXPECT_FALSE(permit.bookings.at(0).later_open);
}

} // namespace
} // namespace tumpline::planner
