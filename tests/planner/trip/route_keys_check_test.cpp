#include "planner/trip/route_keys_check.h"

#include "tests/support/small_trip_file.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace tumpline::planner {
namespace {

using testing::AllOf;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;

std::vector<std::string> route_problems(const Trip& trip) {
    Problems problems("t.json");
    References references(problems);
    check_route_keys(trip, references, problems);
    references.report();
    std::vector<std::string> texts;
    for (const geo::Problem& problem : problems.take())
        texts.push_back(to_string(problem));
    return texts;
}

Trip lake_and_carry() {
    return test::small_trip_with("/name", R"("small")");
}

TEST(RouteKeysCheck, KeysOfOneWayOfTravelAreSlipsOnAnother) {
    Trip trip = lake_and_carry();
    trip.route.legs[0].terrain = Terrain::bog; // paddled
    trip.route.legs[0].carries = 2.0;          // no portage
    trip.route.legs[1].current_mps = 1.0;      // a carry
    EXPECT_THAT(route_problems(trip),
                ElementsAre(AllOf(HasSubstr("/route/legs/0/terrain"), HasSubstr("legs on foot")),
                            AllOf(HasSubstr("/route/legs/0/carries"), HasSubstr("portages")),
                            AllOf(HasSubstr("/route/legs/1/current"), HasSubstr("legs afloat"))));
}

TEST(RouteKeysCheck, BoatsAreLedOnRiversAtAPaceOfTheirOwn) {
    Trip trip = lake_and_carry();
    TripLeg& leg = trip.route.legs[1];
    leg = {};
    leg.travel = Travel::wade;
    leg.led_mps = 0.4;
    leg.wading_m = 0.5;
    leg.current_mps = -1.0;
    EXPECT_THAT(route_problems(trip), IsEmpty());
    leg.travel = Travel::line; // nobody stands in the water
    EXPECT_THAT(route_problems(trip), ElementsAre(HasSubstr("/route/legs/1/depth")));
    leg.wading_m.reset();
    leg.water = Water::sea;
    leg.shelter = 0.5;
    leg.fetch_m = 100.0;
    EXPECT_THAT(route_problems(trip),
                ElementsAre(HasSubstr("/route/legs/1/fetch"),
                            HasSubstr("/route/legs/1/shelter"),
                            HasSubstr("/route/legs/1/water")));
    leg = {};
    leg.led_mps = 0.4;
    EXPECT_THAT(route_problems(trip), ElementsAre(HasSubstr("on a leg without \"travel\"")));
}

TEST(RouteKeysCheck, ARideIsKnownByItsTime) {
    Trip trip = lake_and_carry();
    TripLeg& ride = trip.route.legs[1];
    ride = {};
    ride.travel = Travel::ride;
    EXPECT_THAT(route_problems(trip), ElementsAre(HasSubstr("a ride without \"lasts\"")));
    ride.lasts_s = 3000.0;
    EXPECT_THAT(route_problems(trip), IsEmpty());
    ride.terrain = Terrain::bog;
    ride.river_class = 2;
    EXPECT_THAT(route_problems(trip),
                ElementsAre(HasSubstr("/route/legs/1/terrain"), HasSubstr("/route/legs/1/class")));
    ride = {};
    ride.travel = Travel::portage;
    ride.lasts_s = 3000.0;
    EXPECT_THAT(route_problems(trip), ElementsAre(HasSubstr("it on rides only")));
}

TEST(RouteKeysCheck, ClimbBelongsToALegByItsLength) {
    Trip trip = lake_and_carry();
    TripLeg& carry = trip.route.legs[1];
    carry.ascent_m = 30.0;
    EXPECT_THAT(route_problems(trip), ElementsAre(HasSubstr("\"ascent\" without \"length\"")));
    carry.length_m = 900.0;
    EXPECT_THAT(route_problems(trip), ElementsAre(HasSubstr("\"ascent\" alone")));
    carry.descent_m = 10.0;
    EXPECT_THAT(route_problems(trip), IsEmpty());
    carry.ascent_m = 1791.0; // 1801 m up and down over 900 m: more than twice
    EXPECT_THAT(route_problems(trip), ElementsAre(HasSubstr("ground of 63 degrees")));
}

TEST(RouteKeysCheck, DepthIsAFordsOnly) {
    Trip trip = lake_and_carry();
    trip.route.places[0].depth_m = 0.4;
    EXPECT_THAT(route_problems(trip), ElementsAre(HasSubstr("/route/places/0/depth")));
    trip.route.places[0].kind = PlaceKind::ford;
    EXPECT_THAT(route_problems(trip), IsEmpty());
}

TEST(RouteKeysCheck, OnlyAlternativesAreNoRoute) {
    Trip trip = lake_and_carry();
    trip.route.legs[0].instead_of = "carry";
    EXPECT_THAT(route_problems(trip), IsEmpty());
    trip.route.legs[1].instead_of = "carry";
    EXPECT_THAT(route_problems(trip), testing::Contains(HasSubstr("found alternatives only")));
}

} // namespace
} // namespace tumpline::planner
