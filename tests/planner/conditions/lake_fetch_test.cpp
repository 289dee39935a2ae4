#include "planner/conditions/lake_fetch.h"

#include "geo/lines/geodesic.h"

#include <gtest/gtest.h>

#include <memory>

namespace tumpline::planner {
namespace {

constexpr geo::Position middle{61.0, 10.0};

geo::Position off(double north_m, double east_m) {
    return geo::destination(geo::destination(middle, 0.0, north_m), 90.0, east_m);
}

/// A lake of 4 km from west to east and 2 km from south to north, and a leg along its middle.
Route over_the_lake(double from_east_m, double to_east_m) {
    geo::LandFeature water;
    water.kind = geo::LayerKind::water;
    water.shape = geo::LandShape::area;
    water.parts = {{off(1000, -2000), off(1000, 2000), off(-1000, 2000), off(-1000, -2000)}};
    auto land = std::make_shared<geo::MapLayers>();
    land->features = {water};
    Route route;
    route.legs.push_back({.name = "lake",
                          .travel = Travel::paddle,
                          .spec = {},
                          .line = geo::Polyline({off(0, from_east_m), off(0, to_east_m)}),
                          .profile = {}});
    route.legs[0].to_m = to_east_m - from_east_m;
    route.land = land;
    return route;
}

TEST(LakeFetch, IsTheOpenWaterToWindwardFromTheWorstPlaceOfTheLeg) {
    const Route route = over_the_lake(-1500.0, 1500.0);
    const LegFetch north = leg_fetch(route, 1, 0.0);
    EXPECT_NEAR(north.fetch_m, 1000.0, 2.0);
    EXPECT_EQ(north.from, FetchFrom::layers);
    // Wind from the west: worst at the east end, 1.5 km + 2 km from the west shore.
    EXPECT_NEAR(leg_fetch(route, 1, 270.0).fetch_m, 3500.0, 4.0);
    // From the east: worst at the west end, likewise; from the south 1 km.
    EXPECT_NEAR(leg_fetch(route, 1, 90.0).fetch_m, 3500.0, 4.0);
    EXPECT_NEAR(leg_fetch(route, 1, 180.0).fetch_m, 1000.0, 2.0);
}

TEST(LakeFetch, AWindFromNobodyKnowsWhereIsTakenFromTheOpenSide) {
    // In steps of 15 degrees the longest from the east end lies 15 degrees off west: 3.5 km over
    // cos 15 = 3623 m, 3500 x tan 15 = 938 m to the side, before the north shore at 1 km.
    EXPECT_NEAR(leg_fetch(over_the_lake(-1500.0, 1500.0), 1, std::nullopt).fetch_m, 3623.5, 4.0);
}

TEST(LakeFetch, WhatTheTripSaysGoesBeforeTheOutline) {
    Route route = over_the_lake(-1500.0, 1500.0);
    route.legs[0].spec.fetch_m = 800.0;
    EXPECT_EQ(leg_fetch(route, 1, 270.0).fetch_m, 800.0);
    EXPECT_EQ(leg_fetch(route, 1, 270.0).from, FetchFrom::trip);
}

TEST(LakeFetch, AnOutlineThatHoldsLessThanHalfOfTheLegSaysNothing) {
    // 1.9 km of 5 km lie on the lake: from 100 m east of the middle to its east shore.
    const Route route = over_the_lake(100.0, 5100.0);
    EXPECT_EQ(leg_fetch(route, 1, 0.0).from, FetchFrom::length);
    EXPECT_EQ(leg_fetch(route, 1, 0.0).fetch_m, 5000.0);
    Route bare = over_the_lake(-1500.0, 1500.0);
    bare.land = nullptr;
    EXPECT_EQ(leg_fetch(bare, 1, 0.0).from, FetchFrom::length);
    EXPECT_EQ(leg_fetch(bare, 1, 0.0).fetch_m, 3000.0);
}

} // namespace
} // namespace tumpline::planner
