#include "planner/route/leg_chain.h"

#include "geo/lines/geodesic.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace tumpline::planner {
namespace {

constexpr geo::Position origin{.lat_deg = 47.0, .lon_deg = 11.0};

geo::Position along(double along_m) {
    return along_m == 0.0 ? origin : geo::destination(origin, 90.0, along_m);
}

LooseLeg loose(const std::string& name, double from_m, double to_m) {
    LooseLeg leg{.spec = {},
                 .travel = Travel::walk,
                 .name = name,
                 .traced = {.line = geo::Polyline({along(from_m), along(to_m)}), .heights = {}},
                 .direction_given = false,
                 .turned_round = false};
    leg.spec.name = name;
    return leg;
}

std::vector<bool> turned(std::vector<LooseLeg> legs) {
    turn_round(legs);
    std::vector<bool> result;
    for (const LooseLeg& leg : legs)
        result.push_back(leg.turned_round);
    return result;
}

TEST(LegChain, ALegThatFitsOnlyBackwardsIsTurned) {
    EXPECT_THAT(turned({loose("a", 0.0, 1000.0), loose("b", 3000.0, 1000.0)}),
                testing::ElementsAre(false, true));
    EXPECT_THAT(turned({loose("a", 0.0, 1000.0), loose("b", 1000.0, 3000.0)}),
                testing::ElementsAre(false, false));
}

TEST(LegChain, TheFirstLegLooksAhead) {
    EXPECT_THAT(turned({loose("a", 1000.0, 0.0), loose("b", 1000.0, 3000.0)}),
                testing::ElementsAre(true, false));
}

TEST(LegChain, WhereTheDirectionIsGivenNothingIsTurned) {
    std::vector<LooseLeg> legs = {loose("a", 0.0, 1000.0), loose("b", 3000.0, 1000.0)};
    legs[1].direction_given = true;
    EXPECT_THAT(turned(legs), testing::ElementsAre(false, false));
}

TEST(LegChain, AnAlternativeStartsWhereItsLegDoes) {
    std::vector<LooseLeg> legs = {
        loose("a", 0.0, 1000.0), loose("b", 1000.0, 3000.0), loose("round b", 3000.0, 1000.0)};
    legs[2].spec.instead_of = "b";
    EXPECT_THAT(turned(legs), testing::ElementsAre(false, false, true));
}

RouteLeg route_leg(const LooseLeg& loose) {
    return {.name = loose.name,
            .travel = loose.travel,
            .spec = loose.spec,
            .line = loose.traced.line,
            .from_m = 0.0,
            .to_m = 0.0,
            .profile = {},
            .turned_round = loose.turned_round};
}

TEST(LegChain, LegsLieEndToEnd) {
    Route route;
    lay_legs(route, {route_leg(loose("a", 0.0, 1000.0)), route_leg(loose("b", 1000.0, 3500.0))});
    ASSERT_EQ(route.legs.size(), 2U);
    EXPECT_EQ(route.legs[0].from_m, 0.0);
    EXPECT_NEAR(route.legs[0].to_m, 1000.0, 1e-6);
    EXPECT_NEAR(route.legs[1].from_m, 1000.0, 1e-6);
    EXPECT_NEAR(route.length_m, 3500.0, 1e-3); // two geodesics of one parallel's start
    EXPECT_TRUE(route.cautions.empty());
}

TEST(LegChain, AGapBeyondFiftyMetresIsSaid) {
    Route near;
    lay_legs(near, {route_leg(loose("a", 0.0, 1000.0)), route_leg(loose("b", 1049.0, 2000.0))});
    EXPECT_TRUE(near.cautions.empty());
    Route far;
    lay_legs(far, {route_leg(loose("a", 0.0, 1000.0)), route_leg(loose("b", 1300.0, 2000.0))});
    ASSERT_EQ(far.cautions.size(), 1U);
    EXPECT_EQ(far.cautions[0].code, "route-gap");
    EXPECT_EQ(far.cautions[0].leg, LegNumber{2});
    EXPECT_THAT(far.cautions[0].text, testing::HasSubstr("300 m"));
    EXPECT_NEAR(far.length_m, 1000.0 + 700.0, 1e-3); // the gap is in no leg
}

TEST(LegChain, ATurnedLegIsNamed) {
    Route route;
    RouteLeg leg = route_leg(loose("b", 0.0, 900.0));
    leg.turned_round = true;
    lay_legs(route, {leg});
    ASSERT_EQ(route.cautions.size(), 1U);
    EXPECT_EQ(route.cautions[0].code, "turned-round");
    EXPECT_THAT(route.cautions[0].text, testing::HasSubstr("\"b\""));
}

} // namespace
} // namespace tumpline::planner
