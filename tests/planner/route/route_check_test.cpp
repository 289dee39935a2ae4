#include "planner/route/route_check.h"

#include "tests/support/plain_trip.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace tumpline::planner {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;

TEST(RouteCheck, NamesNightsAndAppointmentsOffTheRoute) {
    test::PlainTrip plain = test::plain_trip({test::walk(9'000.0)});
    test::add_place(plain, PlaceKind::camp, "near", 4'000.0);
    test::add_place(plain, PlaceKind::camp, "far", 5'000.0);
    plain.route.places.back().off_m = 800.0; // beyond the 500 m of docs/route.md
    plain.trip.days.nights = {"near"};
    EXPECT_THAT(places_off_route(plain.trip, plain.route), IsEmpty());
    EXPECT_THAT(problems_on_route(plain.trip, plain.route), IsEmpty());
    plain.trip.days.nights = {"near", "far"};
    EXPECT_THAT(places_off_route(plain.trip, plain.route), ElementsAre("far"));
    const std::vector<geo::Problem> problems = problems_on_route(plain.trip, plain.route);
    ASSERT_EQ(problems.size(), 1U);
    EXPECT_THAT(problems[0].place, HasSubstr("/days/nights/1"));
    EXPECT_THAT(problems[0].found, HasSubstr("far"));
}

TEST(RouteCheck, ConnectionsRunFromTheEndsOfTheRoute) {
    test::PlainTrip plain = test::plain_trip({test::walk(9'000.0)});
    test::add_place(plain, PlaceKind::start, "Pier", 0.0);
    test::add_place(plain, PlaceKind::camp, "Middle", 4'000.0);
    test::add_place(plain, PlaceKind::finish, "Road", 8'700.0); // 300 m before the end: its stop
    const auto wrong = [&](const std::string& place, bool to_start) {
        plain.trip.connections = {
            {.what = "bus", .place = place, .to_start = to_start, .times = {}, .margin = {}}};
        return problems_on_route(plain.trip, plain.route);
    };
    EXPECT_THAT(wrong("Road", false), IsEmpty());
    EXPECT_THAT(wrong("Pier", true), IsEmpty());
    ASSERT_EQ(wrong("Middle", false).size(), 1U);
    EXPECT_EQ(wrong("Middle", false)[0].place, "/connections/0/at");
    EXPECT_THAT(wrong("Middle", false)[0].found, HasSubstr("5.0 km from the end"));
    EXPECT_THAT(wrong("Middle", false)[0].expected, HasSubstr("is not planned"));
    EXPECT_EQ(wrong("Road", true).at(0).place, "/connections/0/to");
    EXPECT_THAT(wrong("Raod", false).at(0).advice, HasSubstr("write \"Road\""));
}

} // namespace
} // namespace tumpline::planner
