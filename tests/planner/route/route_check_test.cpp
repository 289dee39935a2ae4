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

} // namespace
} // namespace tumpline::planner
