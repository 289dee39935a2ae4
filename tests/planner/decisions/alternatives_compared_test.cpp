/// The trip by its alternatives, against the trip that one would write without them.

#include "planner/decisions/alternatives_compared.h"

#include "geo/lines/geodesic.h"
#include "planner/decisions/choices.h"
#include "planner/make_plan.h"
#include "planner/plan.h"
#include "planner/route/alternatives.h"
#include "planner/route/route_build.h"
#include "planner/trip/trip_file.h"
#include "tests/support/plain_trip.h"
#include "tests/support/source_tree.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <string>

namespace tumpline::planner {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;

test::PlainTrip with_a_lake() {
    test::PlainTrip plain =
        test::plain_trip({test::walk(4900.0), test::lake(2900.0), test::walk(3900.0)});
    KitItem paddle = test::thing("paddle", 1.0);
    paddle.afloat = ItemUse::used;
    plain.trip.kit = {test::thing("sack", 8.0), paddle};
    plain.route.alternatives = {test::on_foot_beside(plain.route.legs[1], "shore")};
    return plain;
}

TEST(OtherWays, WithoutWaterAreTheTripThatOneWouldPlanWithoutABoat) {
    test::PlainTrip plain = with_a_lake();
    const Plan plan =
        make_plan_with_choices(plain.trip, plain.route, other_routes(plain.trip, plain.route, {}));
    ASSERT_EQ(plan.other_ways.ways.size(), 1U);
    const OtherWay& round = plan.other_ways.ways.front();
    EXPECT_THAT(round.instead_of, ElementsAre("leg 2"));
    EXPECT_THAT(round.by, ElementsAre("shore"));
    EXPECT_TRUE(round.without_boats);
    EXPECT_DOUBLE_EQ(round.left_home_kg, 3.0 + 1.0);
    ASSERT_TRUE(round.figures);

    test::PlainTrip alone =
        test::plain_trip({test::walk(4900.0), test::walk(2900.0), test::walk(3900.0)});
    alone.trip.kit = {test::thing("sack", 8.0)};
    const WayFigures wanted = way_figures(make_plan(alone.trip, alone.route));
    EXPECT_NEAR(round.figures->distance_m, 11.7e3, 1.0);
    EXPECT_NEAR(round.figures->on_foot_m, 11.7e3, 1.0);
    EXPECT_EQ(round.figures->paddle_m, 0.0);
    EXPECT_NEAR(round.figures->under_way_s, wanted.under_way_s, 0.5);
    EXPECT_NEAR(round.figures->energy_j, wanted.energy_j, 1.0);
    EXPECT_NEAR(round.figures->heaviest_kg, wanted.heaviest_kg, 1e-6);
    EXPECT_NEAR(round.figures->carried_kg_km, wanted.carried_kg_km, 1e-3);
    // As planned, boat and paddle ride in the pack on 8.8 of the 11.7 km.
    EXPECT_NEAR(plan.other_ways.planned.on_foot_m, 8.8e3, 1.0);
    EXPECT_NEAR(plan.other_ways.planned.heaviest_kg - round.figures->heaviest_kg, 4.0, 0.5);
}

TEST(OtherWays, KeepTheBoatWhereOtherWaterIsLeftAndComeAllTogetherLast) {
    test::PlainTrip plain = test::plain_trip(
        {test::lake(2000.0), test::walk(3000.0), test::lake(2500.0), test::walk(1000.0)});
    plain.route.alternatives = {test::on_foot_beside(plain.route.legs[0], "north shore"),
                                test::on_foot_beside(plain.route.legs[2], "south shore")};
    const std::vector<OtherRoute> others = other_routes(plain.trip, plain.route, {});
    ASSERT_EQ(others.size(), 3U);
    EXPECT_FALSE(others[0].without_boats);
    EXPECT_EQ(others[0].trip.craft.size(), 1U);
    EXPECT_FALSE(others[1].without_boats);
    EXPECT_TRUE(others[2].without_boats);
    EXPECT_THAT(others[2].by, ElementsAre("north shore", "south shore"));
    EXPECT_TRUE(others[2].trip.craft.empty());
    for (const OtherRoute& other : others)
        EXPECT_NEAR(other.route.length_m, plain.route.length_m, 1e-6);
}

TEST(OtherWays, OfTwoPiecesAreOneWayIfTheyMeet) {
    test::PlainTrip plain = with_a_lake();
    const RouteLeg& lake = plain.route.legs[1];
    RouteLeg first = test::on_foot_beside(lake, "to the cape");
    RouteLeg second = test::on_foot_beside(lake, "from the cape");
    const geo::Position cape = lake.line.at(1200.0);
    first.line = geo::Polyline({lake.line.points().front(), cape});
    second.line = geo::Polyline({cape, lake.line.points().back()});
    first.profile.length_m = first.line.length_m();
    second.profile.length_m = second.line.length_m();
    plain.route.alternatives = {first, second};
    const std::vector<OtherRoute> others = other_routes(plain.trip, plain.route, {});
    ASSERT_EQ(others.size(), 1U);
    EXPECT_THAT(others[0].by, ElementsAre("to the cape", "from the cape"));
    EXPECT_EQ(others[0].route.legs.size(), 4U);
}

TEST(OtherWays, SayWhichNightTheyLeaveAside) {
    test::PlainTrip plain = with_a_lake();
    const RouteLeg& lake = plain.route.legs[1];
    // The detour swings 2 km out; the night is on the water's line.
    RouteLeg detour = test::on_foot_beside(lake, "far shore");
    detour.line = geo::Polyline({lake.line.points().front(),
                                 geo::destination(lake.line.at(1500.0), 90.0, 2000.0),
                                 lake.line.points().back()});
    detour.profile.length_m = detour.line.length_m();
    plain.route.alternatives = {detour};
    TripPlace spit;
    spit.name = "Spit";
    spit.at = lake.line.at(1500.0);
    plain.trip.route.places = {spit};
    plain.trip.days.nights = {"Spit"};
    KnownPlaces places;
    places.of_trip = {{"Spit", *spit.at}};
    places.snap(plain.route, plain.trip.route.places);
    const Plan plan = make_plan_with_choices(
        plain.trip, plain.route, other_routes(plain.trip, plain.route, places));
    ASSERT_EQ(plan.other_ways.ways.size(), 1U);
    EXPECT_THAT(plan.other_ways.ways.front().refused, HasSubstr("\"Spit\""));
    EXPECT_FALSE(plan.other_ways.ways.front().figures);
}

TEST(OtherWays, OfTheSaddleGoRoundTheTarn) {
    const Trip trip = read_trip(test::root / "sample-routes" / "saddle" / "trip.json");
    const BuiltRoute built = build_routes(trip);
    const Plan plan = make_plan_with_choices(trip, built.route, built.others);
    ASSERT_EQ(plan.other_ways.ways.size(), 1U);
    const OtherWay& round = plan.other_ways.ways.front();
    EXPECT_FALSE(round.without_boats) << "two rivers are left to paddle";
    ASSERT_TRUE(round.figures) << round.refused;
    EXPECT_NEAR(plan.other_ways.planned.paddle_m - round.figures->paddle_m, 6400.0, 5.0);
    EXPECT_GT(round.figures->energy_j, plan.other_ways.planned.energy_j);
    EXPECT_GT(round.figures->carried_kg_km, plan.other_ways.planned.carried_kg_km);
}

} // namespace
} // namespace tumpline::planner
